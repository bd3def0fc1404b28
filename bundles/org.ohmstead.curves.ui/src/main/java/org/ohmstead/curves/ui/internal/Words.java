// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.Optional;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.curves.study.NaiveScaling;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;

/** What this view calls the cases of the model. */
final class Words {
    private static final Messages TEXTS = Messages.of(Words.class);

    private Words() {}

    static String of(Mode mode) {
        return TEXTS.text("mode." + mode.name());
    }

    /** Returns the same as it stands within a sentence. */
    static String lower(Mode mode) {
        return TEXTS.text("mode.lower." + mode.name());
    }

    /** Returns what an uncertainty is called that stands beside a figure, with its factor: "expanded uncertainty (k = 2)". */
    static String uncertainty() {
        String key = Coverage.factor() == 1 ? "words.standardUncertainty" : "words.expandedUncertainty";
        return TEXTS.text(key, Coverage.words());
    }

    /** Returns what simple scaling by the square of the volts would make of a power. */
    static String naive(NaiveScaling scaling) {
        return TEXTS.text(
                "words.naive",
                Figures.fixed(scaling.fromVolts(), 1),
                Figures.fixed(scaling.naiveWatts(), 1),
                Figures.signed(scaling.naiveAboveStudyDb(), 2));
    }

    static String perWhat(Mode mode) {
        return mode == Mode.STEREO ? TEXTS.text("words.perChannel") : TEXTS.text("words.inLoad");
    }

    /** Returns the name of a kind of power: what ended the search, and with what stimulus. */
    static String powerName(PowerKind kind, EndPoint endPoint) {
        String name = name(endPoint);
        return kind == PowerKind.BURST ? TEXTS.text("words.burst", name) : name;
    }

    private static String name(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return TEXTS.text("words.distortion", Numbers.percent(limit.ratio()), of(limit.measure()));
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return TEXTS.text("words.level", Numbers.shown(level.driveDb()));
        }
        return TEXTS.text("words.clipping");
    }

    static String of(DistortionMeasure measure) {
        return switch (measure) {
            case THD_F -> "THD_F";
            case THD_R -> "THD_R";
            case THD_PLUS_NOISE_R -> "THD+N_R";
        };
    }

    static String hertz(double frequencyHz) {
        return frequencyHz >= 1000
                ? Numbers.shown(frequencyHz / 1000) + "\u00a0kHz"
                : Numbers.shown(frequencyHz) + "\u00a0Hz";
    }

    static String ohms(double loadOhms) {
        return Numbers.shown(loadOhms) + "\u00a0\u03a9";
    }

    /** Returns a load as connected: "4 Ω", "4 Ω bridged", "4 Ω, one channel". */
    static String load(PlacedLoad load) {
        return TEXTS.text("words.load." + load.mode().name(), ohms(load.loadOhms()));
    }

    static String volts(double supplyVolts) {
        return Numbers.shown(supplyVolts) + "\u00a0V";
    }

    static String of(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> TEXTS.text("verdict.MEETS");
            case FALLS_SHORT -> TEXTS.text("verdict.FALLS_SHORT");
            case UNDECIDED -> TEXTS.text("verdict.UNDECIDED");
        };
    }

    static String verdict(Optional<RatingOutcome> outcome) {
        return outcome.map(each -> of(each.verdict())).orElseGet(() -> TEXTS.text("verdict.notTested"));
    }

    /** Returns why the rule gives its verdict, and the risk of it. */
    static String explain(Optional<RatingOutcome> outcome, VerdictRule rule) {
        if (outcome.isEmpty()) {
            return TEXTS.text("verdict.noReading");
        }
        boolean met = outcome.get().verdict() == Verdict.MEETS;
        String why =
                switch (rule.kind()) {
                    case SIMPLE_ACCEPTANCE ->
                        met ? TEXTS.text("verdict.simpleMet") : TEXTS.text("verdict.simpleMissed");
                    case GUARDED_ACCEPTANCE -> guarded(outcome.get().verdict());
                    case GUARDED_REJECTION -> met ? TEXTS.text("verdict.notBelow") : guarded(Verdict.FALLS_SHORT);
                };
        return why + " " + Numbers.inSentence(VerdictWords.risk(outcome.get()));
    }

    private static String guarded(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> TEXTS.text("verdict.above");
            case FALLS_SHORT -> TEXTS.text("verdict.below");
            case UNDECIDED -> TEXTS.text("verdict.near");
        };
    }

    /** Returns the maker's wording, or what the rating says when there is none. */
    static String of(Rating rating) {
        if (!rating.wording().isBlank()) {
            return rating.wording();
        }
        String said = TEXTS.text(
                "words.rating",
                Numbers.shown(rating.powerWatts()),
                perWhat(rating.mode()),
                lower(rating.mode()),
                ohms(rating.loadOhms()),
                Numbers.percent(rating.distortionRatio()));
        return rating.kind() == PowerKind.BURST ? TEXTS.text("words.burst", said) : said;
    }

    /** Returns why there is no curve to be seen, and what to do about it. */
    static String whyNothing(ProjectDesk desk) {
        LogSnapshot log = desk.log();
        if (desk.session().isEmpty()) {
            return TEXTS.text("view.noProject");
        }
        if (log.state() == LogState.READING) {
            return TEXTS.text("view.readingLog");
        }
        if (log.state() == LogState.UNREADABLE) {
            return log.sentence();
        }
        if (log.entries().isEmpty()) {
            return TEXTS.text("view.noReadings");
        }
        return TEXTS.text("view.noCurve");
    }
}

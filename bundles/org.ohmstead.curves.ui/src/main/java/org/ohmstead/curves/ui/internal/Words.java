// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.Locale;
import java.util.Optional;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;

/** What this view calls the cases of the model. */
final class Words {
    private Words() {}

    static String of(Mode mode) {
        return switch (mode) {
            case STEREO -> "Stereo";
            case BRIDGED -> "Bridged";
            case SINGLE -> "Single";
        };
    }

    static String perWhat(Mode mode) {
        return mode == Mode.STEREO ? "per channel" : "in the load";
    }

    /** Returns the name of a kind of power: what ended the search, and with what stimulus. */
    static String powerName(PowerKind kind, EndPoint endPoint) {
        String burst = kind == PowerKind.BURST ? ", burst" : "";
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return "Distortion-limited, " + Numbers.percent(limit.ratio()) + " " + of(limit.measure()) + burst;
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return "At a drive of " + Numbers.shown(level.driveDb()) + " dB" + burst;
        }
        return "Clipping onset" + burst;
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
        return ohms(load.loadOhms())
                + switch (load.mode()) {
                    case STEREO -> "";
                    case BRIDGED -> " bridged";
                    case SINGLE -> ", one channel";
                };
    }

    static String volts(double supplyVolts) {
        return Numbers.shown(supplyVolts) + "\u00a0V";
    }

    static String of(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> "meets";
            case FALLS_SHORT -> "falls short";
            case UNDECIDED -> "undecided";
        };
    }

    static String verdict(Optional<RatingOutcome> outcome) {
        return outcome.map(each -> of(each.verdict())).orElse("not tested");
    }

    /** Returns why the rule gives its verdict, and the risk of it. */
    static String explain(Optional<RatingOutcome> outcome, VerdictRule rule) {
        if (outcome.isEmpty()) {
            return "No valid reading fits this rating.";
        }
        boolean met = outcome.get().verdict() == Verdict.MEETS;
        String why =
                switch (rule.kind()) {
                    case SIMPLE_ACCEPTANCE -> met
                            ? "The measured power is at least the rated one; its uncertainty does not count."
                            : "The measured power is below the rated one; its uncertainty does not count.";
                    case GUARDED_ACCEPTANCE -> guarded(outcome.get().verdict());
                    case GUARDED_REJECTION -> met
                            ? "The measured power is not below the rated one by more than the measurement may err."
                            : guarded(Verdict.FALLS_SHORT);
                };
        return why + " " + Numbers.inSentence(VerdictWords.risk(outcome.get()));
    }

    private static String guarded(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> "The measured power is above the rated one by more than the measurement may err.";
            case FALLS_SHORT -> "The measured power is below the rated one by more than the measurement may err.";
            case UNDECIDED -> "Measured and rated power differ by less than the measurement may err.";
        };
    }

    /** Returns the maker's wording, or what the rating says when there is none. */
    static String of(Rating rating) {
        if (!rating.wording().isBlank()) {
            return rating.wording();
        }
        return Numbers.shown(rating.powerWatts()) + " W " + perWhat(rating.mode()) + ", "
                + of(rating.mode()).toLowerCase(Locale.ROOT) + ", " + ohms(rating.loadOhms()) + ", "
                + Numbers.percent(rating.distortionRatio())
                + (rating.kind() == PowerKind.BURST ? ", burst" : "");
    }

    /** Returns why there is no curve to be seen, and what to do about it. */
    static String whyNothing(ProjectDesk desk) {
        LogSnapshot log = desk.log();
        if (desk.session().isEmpty()) {
            return "No project is open. Open one to see its power against supply, or open the demo.";
        }
        if (log.state() == LogState.READING) {
            return "Reading the test log\u2026";
        }
        if (log.state() == LogState.UNREADABLE) {
            return log.sentence();
        }
        if (log.entries().isEmpty()) {
            return "No readings yet. Replay recordings with Bench > Replay recordings\u2026, or open the demo.";
        }
        return "No valid reading reached its end point yet, so there is no curve. The test log says what each reading"
                + " found.";
    }
}

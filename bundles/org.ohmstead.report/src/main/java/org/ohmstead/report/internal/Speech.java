// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.units.text.Messages;

/** What a sheet says, in its language: texts from the message files, and numbers with the language's decimal mark. */
final class Speech {
    private static final Pattern DECIMAL_POINT = Pattern.compile("(?<=\\d)\\.(?=\\d)");
    private static final double NEARLY_CERTAIN = 0.999;

    private final Messages messages;
    private final char decimalMark;

    private Speech(Locale language) {
        messages = Messages.of(Speech.class, language);
        decimalMark = DecimalFormatSymbols.getInstance(language).getDecimalSeparator();
    }

    static Speech in(Locale language) {
        return new Speech(language);
    }

    /** Returns the code of the language, such as "en". */
    String code() {
        return messages.locale().getLanguage();
    }

    /** Returns a text; numbers among the arguments must be printed already. */
    String text(String key, Object... arguments) {
        return messages.text(key, arguments);
    }

    /** Returns whether there is a text of this name. */
    boolean has(String key) {
        return messages.has(key);
    }

    /** Returns the text for one, or that for any other count, with the count as its first argument. */
    String counted(String key, long count) {
        return messages.text(key + (count == 1 ? ".one" : ".many"), Long.toString(count));
    }

    /** Returns a printed number, which has a decimal point, with the decimal mark of the language. */
    String number(String printed) {
        return decimalMark == '.' ? printed : printed.replace('.', decimalMark);
    }

    /** Returns a sentence that another bundle made, in which a point may stand where the language has another decimal mark. */
    String foreign(String sentence) {
        return decimalMark == '.' ? sentence : DECIMAL_POINT.matcher(sentence).replaceAll(String.valueOf(decimalMark));
    }

    String fixed(double value, int places) {
        return number(Figures.fixed(value, places));
    }

    String fixed(OptionalDouble value, int places) {
        return number(Figures.fixed(value, places));
    }

    String signed(double value, int places) {
        return number(Figures.signed(value, places));
    }

    String brief(double value, int digits) {
        return number(Figures.brief(value, digits));
    }

    String significant(double value, int digits) {
        return number(Figures.significant(value, digits));
    }

    /** Returns value and expanded uncertainty, "97.3 ± 2.1". */
    String stated(double value, double expandedUncertainty) {
        return number(Rounding.of(value, expandedUncertainty).text());
    }

    String ohms(double value) {
        return number(Figures.ohms(value));
    }

    String volts(double value) {
        return number(Figures.volts(value));
    }

    String hertz(double value) {
        return number(Figures.hertz(value));
    }

    /** Returns a ratio with a percent sign. */
    String percent(double ratio, int digits) {
        return number(Figures.percent(ratio, digits)) + "\u00a0%";
    }

    /** Returns a probability in percent without a sign for it, and no more exactly than it is known. */
    String probability(double ratio) {
        if (ratio > NEARLY_CERTAIN) {
            return number(">\u00a099.9");
        }
        return ratio < 1 - NEARLY_CERTAIN ? number("<\u00a00.1") : fixed(ratio * 100, 1);
    }

    /** Returns the mode as a heading. */
    String of(Mode mode) {
        return text("mode." + mode);
    }

    /** Returns the mode within a sentence. */
    String within(Mode mode) {
        return text("mode.within." + mode);
    }

    String perWhat(Mode mode) {
        return text(mode == Mode.STEREO ? "power.perChannel" : "power.inLoad");
    }

    String of(PowerKind kind) {
        return text("kind." + kind);
    }

    String of(Verdict verdict) {
        return text("verdict." + verdict);
    }

    String of(EndPointOutcome outcome) {
        return text("outcome." + outcome);
    }

    String of(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return percent(limit.ratio(), 3) + "\u00a0" + Words.of(limit.measure());
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return text("endPoint.level", fixed(level.driveDb(), 1) + "\u00a0dB");
        }
        return text("endPoint.clipping");
    }

    String of(Stimulus stimulus) {
        String tone = hertz(stimulus.frequencyHz());
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return text(
                    "stimulus.burst",
                    tone,
                    brief(burst.onSeconds() * 1000, 4) + "\u00a0ms",
                    brief(burst.periodSeconds() * 1000, 4) + "\u00a0ms");
        }
        return text("stimulus.sine", tone);
    }

    /** Returns a stimulus with the level between bursts. */
    String whole(Stimulus stimulus) {
        return stimulus instanceof Stimulus.ToneBurst burst ? bursts("stimulus.burstWhole", burst) : of(stimulus);
    }

    /** Returns bursts as the heading of those that share it. */
    String many(Stimulus stimulus) {
        return stimulus instanceof Stimulus.ToneBurst burst ? bursts("stimulus.bursts", burst) : of(stimulus);
    }

    private String bursts(String key, Stimulus.ToneBurst burst) {
        return text(
                key,
                hertz(burst.frequencyHz()),
                brief(burst.onSeconds() * 1000, 4) + "\u00a0ms",
                brief(burst.periodSeconds() * 1000, 4) + "\u00a0ms",
                brief(burst.lowLevelDb(), 4) + "\u00a0dB");
    }

    String of(SupplyType type) {
        return text("supplyType." + type);
    }

    String of(MeterQuantity quantity) {
        return text("quantity." + quantity);
    }

    String of(Severity severity) {
        return text("severity." + severity);
    }

    /** Returns how likely a verdict is wrong. */
    String risk(RatingOutcome outcome) {
        double wrong = outcome.verdict() == Verdict.MEETS ? 1 - outcome.probabilityMet() : outcome.probabilityMet();
        return text("risk." + outcome.verdict(), probability(wrong) + "\u00a0%");
    }

    /** Returns the name of a rule with its risk. */
    String name(VerdictRule rule) {
        return text("rule." + rule.kind(), percent(rule.riskRatio(), 3));
    }

    /** Returns in a sentence when a rule calls a rating met, missed or undecided. */
    String sentence(VerdictRule rule) {
        return text("rule.sentence." + rule.kind(), percent(1 - rule.riskRatio(), 4), percent(rule.riskRatio(), 3));
    }
}

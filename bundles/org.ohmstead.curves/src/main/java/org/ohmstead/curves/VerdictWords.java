// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.Locale;
import org.ohmstead.metrology.DecisionRule;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.text.Messages;

/** What is said of the rule that ratings are judged by, and of the risk of a verdict, in the same words everywhere. */
public final class VerdictWords {
    private static final Messages TEXTS = Messages.of(VerdictWords.class);

    private static final QuantityFormat CHOSEN = QuantityFormat.digits(6);
    private static final double SMALLEST_SHOWN = 0.001;
    private static final double UNIT = 100;

    private VerdictWords() {}

    /** Returns the decision rule (JCGM 106, clause 8) that the user's choice stands for. */
    public static DecisionRule rule(VerdictRule wanted) {
        return switch (wanted.kind()) {
            case SIMPLE_ACCEPTANCE -> new DecisionRule.SimpleAcceptance();
            case GUARDED_ACCEPTANCE -> DecisionRule.acceptanceForRisk(wanted.riskRatio());
            case GUARDED_REJECTION -> DecisionRule.rejectionForRisk(wanted.riskRatio());
        };
    }

    /** Returns the name of the rule with its risk, such as "guarded acceptance, risk at most 5 %". */
    public static String name(VerdictRule wanted) {
        return switch (wanted.kind()) {
            case SIMPLE_ACCEPTANCE -> TEXTS.text("rule.simple");
            case GUARDED_ACCEPTANCE -> TEXTS.text("rule.acceptance", chosen(wanted.riskRatio()));
            case GUARDED_REJECTION -> TEXTS.text("rule.rejection", chosen(wanted.riskRatio()));
        };
    }

    /** Returns in whole sentences when the rule calls a rating met, missed or undecided. */
    public static String sentence(VerdictRule wanted) {
        String sure = chosen(1 - wanted.riskRatio());
        String risk = chosen(wanted.riskRatio());
        return switch (wanted.kind()) {
            case SIMPLE_ACCEPTANCE -> TEXTS.text("rule.simpleSentence");
            case GUARDED_ACCEPTANCE -> TEXTS.text("rule.acceptanceSentence", sure, risk);
            case GUARDED_REJECTION -> TEXTS.text("rule.rejectionSentence", sure, risk);
        };
    }

    /** Returns the risk of a verdict in a whole sentence. */
    public static String risk(RatingOutcome outcome) {
        return risk(outcome.verdict(), outcome.probabilityMet());
    }

    /**
     * Returns the risk of a verdict in a whole sentence.
     *
     * @param verdict what was said
     * @param probabilityMet probability that the rating is met, 0 to 1
     */
    public static String risk(Verdict verdict, double probabilityMet) {
        return switch (verdict) {
            case MEETS -> TEXTS.text("risk.consumers", percent(1 - probabilityMet));
            case FALLS_SHORT -> TEXTS.text("risk.producers", percent(probabilityMet));
            case UNDECIDED -> TEXTS.text("risk.none", percent(probabilityMet));
        };
    }

    /** Returns the risk of a verdict for a table's cell, such as "0.3 %", "< 0.1 %", or "" where there is no verdict. */
    public static String riskPercent(RatingOutcome outcome) {
        return switch (outcome.verdict()) {
            case MEETS -> percent(1 - outcome.probabilityMet());
            case FALLS_SHORT -> percent(outcome.probabilityMet());
            case UNDECIDED -> "";
        };
    }

    /** To a tenth of a per cent; what is next to nothing or all is said to be so. */
    private static String percent(double ratio) {
        if (ratio < SMALLEST_SHOWN) {
            return "< 0.1 %";
        }
        return ratio > 1 - SMALLEST_SHOWN ? "> 99.9 %" : String.format(Locale.ROOT, "%.1f %%", UNIT * ratio);
    }

    /** As chosen, without needless zeros. */
    private static String chosen(double ratio) {
        String text = CHOSEN.format(UNIT * ratio);
        return (text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text) + " %";
    }
}

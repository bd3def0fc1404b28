// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.Optional;

/**
 * What the results sheet says beside the results, and how ratings are judged.
 *
 * @param laboratory who publishes; may be empty
 * @param preparedBy who tested; may be empty
 * @param confidence coverage of stated intervals and the sureness a verdict needs, 0.5 to 0.9999: 0.95 is usual
 * @param remarks a paragraph of the laboratory's own; may be empty
 * @param verdictRule how ratings are judged, when somebody has chosen
 * @param layout how the sheet looks
 */
public record SheetSettings(
        String laboratory,
        String preparedBy,
        double confidence,
        String remarks,
        Optional<VerdictRule> verdictRule,
        SheetLayout layout) {
    /** Checks the ranges given above. */
    public SheetSettings {
        Checks.present(laboratory, "laboratory");
        Checks.present(preparedBy, "preparedBy");
        Checks.within(confidence, 0.5, 0.9999, "confidence");
        Checks.present(remarks, "remarks");
        Checks.present(verdictRule, "verdictRule");
        Checks.present(layout, "layout");
    }

    /** Makes settings of the usual layout. */
    public SheetSettings(
            String laboratory,
            String preparedBy,
            double confidence,
            String remarks,
            Optional<VerdictRule> verdictRule) {
        this(laboratory, preparedBy, confidence, remarks, verdictRule, SheetLayout.USUAL);
    }

    /** Makes settings in which nobody has chosen how ratings are judged. */
    public SheetSettings(String laboratory, String preparedBy, double confidence, String remarks) {
        this(laboratory, preparedBy, confidence, remarks, Optional.empty());
    }

    /** Returns how ratings are judged: as chosen, else by guarded acceptance with the risk that the confidence leaves. */
    public VerdictRule rule() {
        return verdictRule.orElseGet(() -> new VerdictRule(VerdictKind.GUARDED_ACCEPTANCE, 1 - confidence));
    }

    /** Returns these settings with another laboratory. */
    public SheetSettings withLaboratory(String newLaboratory) {
        return new SheetSettings(newLaboratory, preparedBy, confidence, remarks, verdictRule, layout);
    }

    /** Returns these settings with other words on who tested. */
    public SheetSettings withPreparedBy(String newPreparedBy) {
        return new SheetSettings(laboratory, newPreparedBy, confidence, remarks, verdictRule, layout);
    }

    /** Returns these settings with another confidence. */
    public SheetSettings withConfidence(double newConfidence) {
        return new SheetSettings(laboratory, preparedBy, newConfidence, remarks, verdictRule, layout);
    }

    /** Returns these settings with other remarks. */
    public SheetSettings withRemarks(String newRemarks) {
        return new SheetSettings(laboratory, preparedBy, confidence, newRemarks, verdictRule, layout);
    }

    /** Returns these settings with another rule for verdicts, or none. */
    public SheetSettings withVerdictRule(Optional<VerdictRule> newVerdictRule) {
        return new SheetSettings(laboratory, preparedBy, confidence, remarks, newVerdictRule, layout);
    }

    /** Returns these settings with another layout. */
    public SheetSettings withLayout(SheetLayout newLayout) {
        return new SheetSettings(laboratory, preparedBy, confidence, remarks, verdictRule, newLayout);
    }
}

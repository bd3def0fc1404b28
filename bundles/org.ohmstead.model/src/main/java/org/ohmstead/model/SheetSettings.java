// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * What the results sheet says beside the results, and how ratings are judged.
 *
 * @param laboratory who publishes; may be empty
 * @param preparedBy who tested; may be empty
 * @param confidence coverage of stated intervals and the sureness a verdict needs, 0.5 to 0.9999: 0.95 is usual
 * @param remarks a paragraph of the laboratory's own; may be empty
 */
public record SheetSettings(String laboratory, String preparedBy, double confidence, String remarks) {
    public SheetSettings {
        Checks.present(laboratory, "laboratory");
        Checks.present(preparedBy, "preparedBy");
        Checks.within(confidence, 0.5, 0.9999, "confidence");
        Checks.present(remarks, "remarks");
    }

    /** Returns these settings with another laboratory. */
    public SheetSettings withLaboratory(String newLaboratory) {
        return new SheetSettings(newLaboratory, preparedBy, confidence, remarks);
    }

    /** Returns these settings with other words on who tested. */
    public SheetSettings withPreparedBy(String newPreparedBy) {
        return new SheetSettings(laboratory, newPreparedBy, confidence, remarks);
    }

    /** Returns these settings with another confidence. */
    public SheetSettings withConfidence(double newConfidence) {
        return new SheetSettings(laboratory, preparedBy, newConfidence, remarks);
    }

    /** Returns these settings with other remarks. */
    public SheetSettings withRemarks(String newRemarks) {
        return new SheetSettings(laboratory, preparedBy, confidence, newRemarks);
    }
}

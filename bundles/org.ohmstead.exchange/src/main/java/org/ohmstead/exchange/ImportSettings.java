// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Specimen;

/**
 * What a table of readings does not say by itself.
 *
 * @param dialect of a text whose first line names none
 * @param specimen which amplifier the readings are about, where a row does not say so
 * @param operator who took them, where a row does not say so; may be empty
 * @param standardUncertaintyRatio standard uncertainty of the power over the power, above 0, where the table has no column for it
 * @param projectRevision SHA-256 of the project that the readings come into, 64 hexadecimal digits
 * @param softwareVersion version of the software that imports
 * @param limits how much is read at most
 */
public record ImportSettings(
        CsvDialect dialect,
        Optional<Specimen> specimen,
        String operator,
        OptionalDouble standardUncertaintyRatio,
        String projectRevision,
        String softwareVersion,
        TableLimits limits) {
    /** Checks the ranges given above. */
    public ImportSettings {
        Objects.requireNonNull(dialect, "dialect");
        Objects.requireNonNull(specimen, "specimen");
        Objects.requireNonNull(operator, "operator");
        Objects.requireNonNull(projectRevision, "projectRevision");
        Objects.requireNonNull(softwareVersion, "softwareVersion");
        Objects.requireNonNull(limits, "limits");
        if (standardUncertaintyRatio.isPresent()
                && !(standardUncertaintyRatio.getAsDouble() > 0 && standardUncertaintyRatio.getAsDouble() <= 1)) {
            throw new IllegalArgumentException("standardUncertaintyRatio is " + standardUncertaintyRatio.getAsDouble()
                    + "; it must lie above 0 and at most at 1");
        }
    }

    /** Returns settings for tables that say everything, in the dialect with commas. */
    public static ImportSettings of(String projectRevision, String softwareVersion) {
        return new ImportSettings(
                CsvDialect.COMMA,
                Optional.empty(),
                "",
                OptionalDouble.empty(),
                projectRevision,
                softwareVersion,
                TableLimits.USUAL);
    }
}

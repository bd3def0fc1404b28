// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;

/**
 * Everything that a results sheet shows. {@link HtmlSheet} and {@link PdfSheet} print it; nothing is measured or judged there.
 *
 * @param project amplifier, bench, loads, plan, and the laboratory's own words
 * @param readings all readings of the log in their order, the voided ones among them
 * @param curves power against supply volts
 * @param ratings what became of each of the maker's ratings
 * @param log the state of the log
 * @param softwareVersion version that made the sheet, not blank
 * @param producedAt when it was made
 * @param problems of the project
 * @param form in which the sheet is made
 */
public record ResultsSheet(
        Project project,
        List<SheetReading> readings,
        List<LoadCurve> curves,
        List<RatingResult> ratings,
        LogStamp log,
        String softwareVersion,
        Instant producedAt,
        List<Problem> problems,
        SheetForm form) {
    /** Checks that nothing is missing and copies the lists. */
    public ResultsSheet {
        Objects.requireNonNull(project, "project");
        readings = List.copyOf(readings);
        curves = List.copyOf(curves);
        ratings = List.copyOf(ratings);
        Objects.requireNonNull(log, "log");
        if (softwareVersion.isBlank()) {
            throw new IllegalArgumentException(
                    "softwareVersion is blank; it must name the version that made the sheet");
        }
        Objects.requireNonNull(producedAt, "producedAt");
        problems = List.copyOf(problems);
        Objects.requireNonNull(form, "form");
    }

    /** Makes a sheet in the form that the project wishes for, without a logo. */
    public ResultsSheet(
            Project project,
            List<SheetReading> readings,
            List<LoadCurve> curves,
            List<RatingResult> ratings,
            LogStamp log,
            String softwareVersion,
            Instant producedAt,
            List<Problem> problems) {
        this(
                project,
                readings,
                curves,
                ratings,
                log,
                softwareVersion,
                producedAt,
                problems,
                SheetForm.of(project.sheet().layout()));
    }

    /** Returns this sheet in another form. */
    public ResultsSheet withForm(SheetForm newForm) {
        return new ResultsSheet(
                project, readings, curves, ratings, log, softwareVersion, producedAt, problems, newForm);
    }

    /** Returns the readings that were not voided. */
    public List<SheetReading> standingReadings() {
        return readings.stream().filter(SheetReading::stands).toList();
    }
}

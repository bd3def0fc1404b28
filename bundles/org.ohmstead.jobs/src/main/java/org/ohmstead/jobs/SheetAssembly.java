// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.LoadCurves;
import org.ohmstead.curves.RatingJudge;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.ProjectChecks;
import org.ohmstead.report.LogStamp;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetReading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.units.text.Language;

/** Puts a results sheet together from a project and its log: fits the curves and judges the ratings. */
public final class SheetAssembly {
    private SheetAssembly() {}

    /**
     * Reads a project's log and puts the sheet together.
     *
     * @param folder the project
     * @param softwareVersion version that the sheet names, not blank
     * @param now when the sheet is made
     * @throws JobException when there is no log yet, or it was changed after it was written
     * @throws TestLogException when the log cannot be read
     */
    public static ResultsSheet assemble(ProjectFolder folder, String softwareVersion, Instant now)
            throws JobException, TestLogException {
        return assemble(folder, SheetWish.NONE, softwareVersion, now);
    }

    /**
     * Reads a project's log and puts the sheet together in the form that is wanted.
     *
     * @param folder the project
     * @param wish in which form
     * @param softwareVersion version that the sheet names, not blank
     * @param now when the sheet is made
     * @throws JobException when there is no log yet, or it was changed after it was written
     * @throws TestLogException when the log cannot be read
     */
    public static ResultsSheet assemble(ProjectFolder folder, SheetWish wish, String softwareVersion, Instant now)
            throws JobException, TestLogException {
        List<LogEntry> entries;
        String headHash;
        try (TestLog log = folder.readLog()) {
            entries = LogTrust.trustedEntries(log);
            headHash = log.headHash();
        }
        VerifiedLog whole = new VerifiedLog(entries, headHash);
        // What is noticed on the way stands in the sheet, so it is said in its language.
        return Language.speaking(wish.language().orElse(Language.current()), () -> {
            ResultsSheet plain = assemble(folder.project(), folder.loaded().problems(), whole, softwareVersion, now);
            return SheetDress.dress(plain, folder.folder(), entries, wish);
        });
    }

    /**
     * Puts the sheet together, without a logo and with nothing to compare; {@link SheetDress} adds both.
     *
     * @param project what was tested
     * @param readingProblems what was noticed while the project was read; it stands in the sheet before what is found now
     * @param log entries of a log whose chain is whole
     * @param softwareVersion version that the sheet names, not blank
     * @param now when the sheet is made
     */
    public static ResultsSheet assemble(
            Project project, List<Problem> readingProblems, VerifiedLog log, String softwareVersion, Instant now) {
        List<LoadCurve> curves = LoadCurves.fit(LogTrust.usedReadings(log.entries(), project));
        List<SheetReading> readings = log.entries().stream()
                .filter(entry -> entry.reading().isPresent())
                .map(entry -> new SheetReading(
                        entry.id(),
                        entry.reading().get(),
                        entry.voidedBy().map(VoidNote::reason),
                        project.reasonSetAside(entry.id())))
                .toList();
        // A calibration that ran out after the last reading says nothing against the sheet.
        LocalDate lastDay = readings.stream()
                .map(reading -> reading.reading().takenAt())
                .max(Comparator.naturalOrder())
                .orElse(now)
                .atZone(ZoneOffset.UTC)
                .toLocalDate();
        List<Problem> problems = new ArrayList<>(readingProblems);
        problems.addAll(ProjectChecks.check(project, lastDay));
        return new ResultsSheet(
                project,
                readings,
                curves,
                RatingJudge.judge(project.amplifier().ratings(), curves, project.sheet()),
                new LogStamp(log.headHash(), log.entries().size(), true),
                softwareVersion,
                now,
                problems);
    }
}

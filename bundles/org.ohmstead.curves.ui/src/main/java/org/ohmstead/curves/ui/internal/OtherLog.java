// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.WorkProgress;

/** Reads the log of a project that is not open, for reading only; on any thread. */
final class OtherLog {
    private static final Messages TEXTS = Messages.of(OtherLog.class);

    private static final String SUFFIX = ".ohmstead";

    private OtherLog() {}

    /** Returns a project's name: that of its folder without the suffix. */
    static String name(Path folder) {
        Path last = folder.getFileName();
        String name = last == null ? folder.toString() : last.toString();
        return name.endsWith(SUFFIX) && name.length() > SUFFIX.length()
                ? name.substring(0, name.length() - SUFFIX.length())
                : name;
    }

    /**
     * Reads the valid readings and fits them; may take long.
     *
     * @param amplifier of the open project; its ratings are not judged here
     * @param confidence coverage of intervals
     * @throws TestLogException when there is no log, it cannot be relied on or has no valid reading
     */
    static LaidOver.Known read(Path folder, Amplifier amplifier, double confidence, WorkProgress progress)
            throws TestLogException {
        List<LogEntry> entries = entries(folder, progress);
        progress.stopIfCancelled();
        Instant last = entries.stream()
                .flatMap(entry -> entry.reading().stream())
                .map(Reading::takenAt)
                .max(Comparator.naturalOrder())
                .orElseThrow(() -> new TestLogException(TEXTS.text("compare.noReading", name(folder))));
        PowerCurves curves = PowerCurves.of(
                entries,
                amplifier.withRatings(List.of()),
                new SheetSettings("", "", confidence, ""),
                List.of(),
                progress);
        String label = name(folder) + " " + last.atZone(ZoneId.systemDefault()).getYear();
        return new LaidOver.Known(folder, label, curves);
    }

    private static List<LogEntry> entries(Path folder, WorkProgress progress) throws TestLogException {
        try (TestLog log = TestLog.openReadOnly(folder.resolve(TestLog.FILE_NAME))) {
            VerifyReport report = log.verify();
            if (!report.intact()) {
                throw new TestLogException(TEXTS.text(
                        "compare.notWhole", name(folder), report.faults().get(0).sentence()));
            }
            progress.stopIfCancelled();
            return log.entries(LogQuery.validReadings());
        }
    }
}

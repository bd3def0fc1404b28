// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.exchange.CaptureCheck.State;
import org.ohmstead.testlog.ArchiveNote;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.TestLog;

class ArchiveTest {
    private static final Archive.Who WHO = new Archive.Who("N. N.", "0.1.0", Instant.parse("2026-11-26T12:00:00Z"));

    @TempDir
    private Path folder;

    private Path project;
    private Path shelf;
    private TestLog log;
    private String first;
    private String second;
    private String third;

    @BeforeEach
    void makeAProjectWithThreeCaptures() throws Exception {
        project = Samples.project(folder, "kestrel");
        shelf = Files.createDirectory(folder.resolve("shelf"));
        first = Samples.capture(project, "RIFF one");
        second = Samples.capture(project, "RIFF two");
        third = Samples.capture(project, "RIFF three");
        log = Samples.log(project);
        // Readings 1 and 2 minutes after the sample's time; the third on the day after.
        log.append(Samples.reading(1, Samples.provenance(Optional.empty(), first, second)));
        log.append(Samples.reading(2, Samples.provenance(Optional.empty(), second)));
        log.append(Samples.reading(24 * 60, Samples.provenance(Optional.empty(), third)));
    }

    @AfterEach
    void closeTheLog() throws Exception {
        log.close();
    }

    private CaptureCheck.Report check() throws Exception {
        return CaptureCheck.run(project, log, ExchangeProgress.SILENT);
    }

    private Archive.Report archive(Archive.TakeOut takeOut) throws Exception {
        return Archive.make(project, log, shelf, takeOut, WHO, ExchangeProgress.SILENT);
    }

    @Test
    void findsEveryCaptureThatIsNotAsItShouldBe() throws Exception {
        assertTrue(check().whole());
        assertEquals(3, check().count(State.PRESENT));
        Files.delete(Samples.captureFile(project, first));
        Files.writeString(Samples.captureFile(project, second), "RIFF Two");
        String stray = Samples.capture(project, "RIFF stray");
        Files.writeString(project.resolve("captures/readme.txt"), "mine");
        CaptureCheck.Report report = check();
        assertFalse(report.whole());
        assertEquals(1, report.count(State.PRESENT));
        assertEquals(2, report.count(State.UNNAMED));
        CaptureCheck.Finding missing = finding(report, first);
        assertEquals(State.MISSING, missing.state());
        assertEquals("R0001", missing.entryId());
        assertTrue(missing.sentence().contains("level.wav of R0001")
                && missing.sentence().contains("is missing"));
        assertEquals(State.CHANGED, finding(report, second).state());
        assertTrue(finding(report, second).sentence().contains("R0001 and 1 more"));
        assertEquals(State.UNNAMED, finding(report, stray).state());
        assertEquals(4, report.findings().size());
    }

    private static CaptureCheck.Finding finding(CaptureCheck.Report report, String hash) {
        return report.findings().stream()
                .filter(each -> each.sha256().equals(hash))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void stopsACheckWhenToldTo() {
        ExchangeProgress impatient = new ExchangeProgress() {
            @Override
            public void step(long done, long total, String what) {
                // Nobody looks.
            }

            @Override
            public boolean cancelled() {
                return true;
            }
        };
        assertThrows(CancellationException.class, () -> CaptureCheck.run(project, log, impatient));
    }

    @Test
    void archivesWithoutTakingAnythingOut() throws Exception {
        String head = log.headHash();
        Archive.Report report = archive(new Archive.TakeOut.Nothing());
        assertEquals(shelf.resolve("kestrel-20261126T120000Z.zip"), report.file());
        assertEquals(CaptureStore.sha256(report.file()), report.sha256());
        ArchiveNote note =
                log.entry(report.entryIds().get(0)).orElseThrow().archive().orElseThrow();
        assertEquals(new ArchiveNote("kestrel-20261126T120000Z.zip", report.sha256(), head, List.of(), "N. N."), note);
        assertTrue(log.verify().intact());
        assertTrue(check().whole());
        assertEquals(0, report.takenOut());
    }

    @Test
    void takesOutWhatOnlyVoidedEntriesNameAndBringsItBack() throws Exception {
        log.voidEntry("R0001", "lead was loose", "");
        Archive.Report report = archive(new Archive.TakeOut.Voided());
        assertEquals(1, report.takenOut());
        assertEquals("RIFF one".length(), report.freedBytes());
        assertFalse(Files.exists(Samples.captureFile(project, first)));
        assertTrue(Files.exists(Samples.captureFile(project, second)));
        CaptureCheck.Finding finding = finding(check(), first);
        assertEquals(State.ARCHIVED, finding.state());
        assertTrue(finding.sentence().endsWith("lies in the archive kestrel-20261126T120000Z.zip."));
        assertTrue(check().whole());
        Archive.Restored restored =
                Archive.restore(report.file(), project, log, PackLimits.USUAL, ExchangeProgress.SILENT);
        assertEquals(new Archive.Restored(1, 0, 2, 0), restored);
        assertEquals("RIFF one", Files.readString(Samples.captureFile(project, first)));
        assertEquals(3, check().count(State.PRESENT));
    }

    @Test
    void takesOutWhatIsOlderThanADay() throws Exception {
        Archive.Report report = archive(new Archive.TakeOut.Before(LocalDate.parse("2026-03-03")));
        assertEquals(2, report.takenOut());
        assertTrue(Files.exists(Samples.captureFile(project, third)));
        assertEquals(2, check().count(State.ARCHIVED));
        // A second archive does not hold what is gone, and that stays known of the first.
        Archive.Who later = new Archive.Who("", "0.1.0", WHO.now().plusSeconds(1));
        Archive.make(project, log, shelf, new Archive.TakeOut.Nothing(), later, ExchangeProgress.SILENT);
        assertEquals(2, check().count(State.ARCHIVED));
    }

    @Test
    void mendsWhatHasChangedAndNeverTakesItOut() throws Exception {
        Archive.Report good = archive(new Archive.TakeOut.Nothing());
        Files.writeString(Samples.captureFile(project, first), "RIFF One");
        Archive.Who later = new Archive.Who("", "0.1.0", WHO.now().plusSeconds(1));
        Archive.Report report = Archive.make(
                project,
                log,
                shelf,
                new Archive.TakeOut.Before(LocalDate.parse("2026-03-03")),
                later,
                ExchangeProgress.SILENT);
        assertEquals(1, report.leftOut().size());
        assertTrue(Files.exists(Samples.captureFile(project, first)));
        assertFalse(Files.exists(Samples.captureFile(project, second)));
        assertEquals(
                new Archive.Restored(1, 1, 1, 0),
                Archive.restore(good.file(), project, log, PackLimits.USUAL, ExchangeProgress.SILENT));
        assertEquals(3, check().count(State.PRESENT));
    }

    @Test
    void restoresNothingThatTheLogDoesNotName() throws Exception {
        Path other = Samples.project(folder, "other");
        Samples.capture(other, "RIFF foreign");
        ProjectPack.pack(other, folder.resolve("other.zip"), "0.1.0", ExchangeProgress.SILENT);
        assertEquals(
                new Archive.Restored(0, 0, 0, 1),
                Archive.restore(folder.resolve("other.zip"), project, log, PackLimits.USUAL, ExchangeProgress.SILENT));
        assertEquals(3, check().count(State.PRESENT));
    }

    @Test
    void saysWhoseCapturesLieWithAnotherBench() throws Exception {
        Path other = Samples.project(folder, "other");
        String foreign = Samples.capture(other, "RIFF foreign");
        try (TestLog theirs = Samples.log(other)) {
            theirs.append(Samples.reading(9, Samples.provenance(Optional.empty(), foreign)));
            log.join(theirs, "bench two", "");
        }
        assertEquals(State.ELSEWHERE, finding(check(), foreign).state());
        assertTrue(check().whole());
        ProjectPack.pack(other, folder.resolve("other.zip"), "0.1.0", ExchangeProgress.SILENT);
        Archive.restore(folder.resolve("other.zip"), project, log, PackLimits.USUAL, ExchangeProgress.SILENT);
        assertEquals(4, check().count(State.PRESENT));
    }

    @Test
    void addsNothingToTheLogWhenTheArchiveCannotBeWritten() throws Exception {
        String head = log.headHash();
        assertThrows(
                ExchangeException.class,
                () -> Archive.make(
                        project,
                        log,
                        folder.resolve("none"),
                        new Archive.TakeOut.Before(LocalDate.MAX),
                        WHO,
                        ExchangeProgress.SILENT));
        assertEquals(head, log.headHash());
        assertEquals(3, check().count(State.PRESENT));
    }
}

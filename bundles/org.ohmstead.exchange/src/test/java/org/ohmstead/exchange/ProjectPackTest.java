// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.exchange.internal.ProjectPacking;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogCopy;
import org.ohmstead.testlog.TestLog;

class ProjectPackTest {
    private static final String ZEROS = "0".repeat(64);
    private static final int PLAIN_FILE = 0x81A4;

    @TempDir
    private Path folder;

    private Path project;
    private byte[] json;

    @BeforeEach
    void makeAProject() throws Exception {
        project = Samples.project(folder, "kestrel");
        json = Files.readAllBytes(project.resolve("project.json"));
        Files.createDirectory(project.resolve("sheets"));
        Files.writeString(project.resolve("sheets/results.html"), "<p>90 W</p>");
    }

    private ProjectPack.Packed pack() throws Exception {
        return ProjectPack.pack(project, folder.resolve("kestrel.zip"), "0.1.0", ExchangeProgress.SILENT);
    }

    private PackManifest unpack(Path file) throws Exception {
        return ProjectPack.unpack(file, folder.resolve("other"), PackLimits.USUAL, ExchangeProgress.SILENT);
    }

    private String refusal(Path file) throws Exception {
        List<String> before = Samples.everythingIn(folder);
        String message =
                assertThrows(ExchangeException.class, () -> unpack(file)).getMessage();
        assertEquals(before, Samples.everythingIn(folder));
        return message;
    }

    @Test
    void bringsTheWholeProjectBack() throws Exception {
        String hash = Samples.capture(project, "RIFF level");
        try (TestLog log = Samples.log(project)) {
            log.append(Samples.reading(1, Samples.provenance(Optional.empty(), hash)));
            log.append(Samples.figures(1));
            // The entries still wait beside the file while the log is open.
            assertTrue(Files.size(project.resolve("log.db-wal")) > 0);
            ProjectPack.Packed packed = pack();
            assertEquals(log.headHash(), packed.manifest().headHash());
            assertEquals(2, packed.manifest().entries());
            assertEquals(List.of(), packed.leftOut());
            PackManifest manifest = unpack(packed.file());
            assertEquals(packed.manifest(), manifest);
            Path other = folder.resolve("other");
            assertEquals(
                    List.of(
                            "captures",
                            "captures/" + hash.substring(0, 2),
                            "captures/" + hash.substring(0, 2) + "/" + hash + ".wav",
                            "log.db",
                            "project.json",
                            "sheets",
                            "sheets/results.html"),
                    Samples.everythingIn(other));
            assertArrayEquals(json, Files.readAllBytes(other.resolve("project.json")));
            ProjectFile.read(other);
            try (TestLog back = Samples.log(other)) {
                assertTrue(back.verify(Optional.of(log.headHash())).intact());
                assertEquals(Samples.entries(log), Samples.entries(back));
                assertEquals("R0002", back.append(Samples.reading(2)).id());
            }
        }
        assertTrue(Samples.everythingIn(folder).stream().noneMatch(name -> name.endsWith(".part")));
    }

    @Test
    void packsAProjectWithoutALog() throws Exception {
        assertEquals(ZEROS, pack().manifest().headHash());
        unpack(folder.resolve("kestrel.zip"));
        assertFalse(Files.exists(folder.resolve("other/log.db")));
        assertEquals(
                2,
                ProjectPack.check(folder.resolve("kestrel.zip"), PackLimits.USUAL, ExchangeProgress.SILENT)
                        .files()
                        .size());
    }

    @Test
    void leavesOutWhatHasChangedOrDoesNotBelong() throws Exception {
        String hash = Samples.capture(project, "RIFF level");
        Files.writeString(Samples.captureFile(project, hash), "RIFF lever");
        Files.writeString(project.resolve("captures/readme.txt"), "mine");
        Files.writeString(project.resolve("sheets/nul.txt"), "mine");
        List<String> leftOut = pack().leftOut();
        assertEquals(3, leftOut.size());
        assertTrue(leftOut.get(0).contains("has changed since it was recorded"), leftOut.get(0));
        assertTrue(leftOut.get(1).startsWith("captures/readme.txt is none of the places"), leftOut.get(1));
        unpack(folder.resolve("kestrel.zip"));
        assertFalse(Files.exists(folder.resolve("other/captures")));
    }

    @Test
    void leavesOutTheSecondOfTwoNamesThatSomeDisksCannotTellApart() throws Exception {
        Files.writeString(project.resolve("sheets/Results.html"), "<p>91 W</p>");
        assumeTrue(Files.readString(project.resolve("sheets/results.html")).contains("90"), "this disk is one of them");
        List<String> leftOut = pack().leftOut();
        assertEquals(1, leftOut.size(), leftOut.toString());
        assertTrue(
                leftOut.get(0)
                        .startsWith("sheets/results.html has a name that some disks cannot tell from that of"
                                + " sheets/Results.html."),
                leftOut.get(0));
        unpack(folder.resolve("kestrel.zip"));
        assertEquals("<p>91 W</p>", Files.readString(folder.resolve("other/sheets/Results.html")));
    }

    @Test
    void packsWhatPacksTooWellAsItIs() throws Exception {
        Path silence = Files.write(folder.resolve("silence.wav"), new byte[4 << 20]);
        new CaptureStore(project).store(silence);
        PackLimits strict = new PackLimits(10, 8 << 20, 8 << 20, 20, 1 << 20);
        Path target = folder.resolve("kestrel.zip");
        ProjectPack.Packed packed =
                new ProjectPacking(project, target, "0.1.0", Samples.TAKEN, strict).run(ExchangeProgress.SILENT);
        assertTrue(Files.size(target) > 4 << 20);
        assertEquals(
                packed.manifest(),
                ProjectPack.unpack(target, folder.resolve("other"), strict, ExchangeProgress.SILENT));
    }

    @Test
    void refusesALogThatIsNotWhole() throws Exception {
        try (TestLog log = Samples.log(project)) {
            log.append(Samples.reading(1));
        }
        Path file = project.resolve("log.db");
        byte[] bytes = Files.readAllBytes(file);
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        int place = text.indexOf("\"powerWatts\":71.5") + "\"powerWatts\":7".length();
        bytes[place] = '2';
        Files.write(file, bytes);
        ExchangeException refusal = assertThrows(ExchangeException.class, this::pack);
        assertTrue(refusal.getMessage().contains("its log is not whole"), refusal.getMessage());
        assertFalse(Files.exists(folder.resolve("kestrel.zip")));
    }

    @Test
    void writesOverNothing() throws Exception {
        pack();
        assertTrue(
                assertThrows(ExchangeException.class, this::pack).getMessage().contains("already there"));
        Files.createDirectory(folder.resolve("other"));
        assertTrue(refusal(folder.resolve("kestrel.zip")).contains("already there"));
    }

    @Test
    void takesAZipThatSomebodyElseMadeWhenAllIsRight() throws Exception {
        try (TestLog log = Samples.log(project)) {
            log.append(Samples.reading(1));
            Path copy = folder.resolve("copy.db");
            LogCopy.write(log.file(), copy);
            Path zip = new HandMadeZip()
                    .file("project.json", json)
                    .raw("sheets/", new byte[0], 0x41ED, 0)
                    .file("sheets/a.html", new byte[] {1})
                    .file("log.db", Files.readAllBytes(copy))
                    .write(folder.resolve("made.zip"), log.headHash());
            assertEquals("Kestrel", unpack(zip).title());
        }
        assertEquals(
                List.of("log.db", "project.json", "sheets", "sheets/a.html"),
                Samples.everythingIn(folder.resolve("other")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../evil.txt",
                "captures/../../evil.txt",
                "captures/..",
                "/etc/evil",
                "C:/evil.txt",
                "C:evil.txt",
                "\\\\server\\share\\evil.txt",
                "//server/share/evil.txt",
                "captures\\evil.txt",
                "log.db-wal",
                "evil.txt",
                "sheets/deep/evil.html",
                "sheets/.hidden.html",
                "sheets/aux.html",
                "sheets/evil.exe",
                "captures/ab/abcd.wav",
                "PROJECT.JSON",
                "project.json ",
                "project.json/",
                "",
            })
    void refusesNamesThatBelongToNoProject(String name) throws Exception {
        HandMadeZip zip =
                new HandMadeZip().file("project.json", json).file(name, "evil".getBytes(StandardCharsets.UTF_8));
        String message = refusal(zip.write(folder.resolve("evil.zip"), ZEROS));
        assertTrue(message.startsWith("The file evil.zip holds a file named \"" + name + "\", which "), message);
    }

    @Test
    void refusesWhatStandsTwiceOrDiffersOnlyInCase() throws Exception {
        byte[] sheet = {1};
        Path twice = new HandMadeZip()
                .file("project.json", json)
                .raw("project.json", sheet, PLAIN_FILE, 0)
                .write(folder.resolve("twice.zip"), ZEROS);
        assertTrue(refusal(twice).contains("\"project.json\" twice"), refusal(twice));
        Path cases = new HandMadeZip()
                .file("project.json", json)
                .file("sheets/a.html", sheet)
                .file("sheets/A.html", sheet)
                .write(folder.resolve("cases.zip"), ZEROS);
        assertTrue(refusal(cases).contains("cannot tell apart"), refusal(cases));
    }

    @Test
    void refusesLinksAndWhatIsEncrypted() throws Exception {
        byte[] target = "/etc/passwd".getBytes(StandardCharsets.UTF_8);
        Path link = new HandMadeZip()
                .file("project.json", json)
                .raw("sheets/a.html", target, 0xA1FF, 0)
                .write(folder.resolve("link.zip"), ZEROS);
        assertTrue(refusal(link).contains("as a link"), refusal(link));
        Path encrypted = new HandMadeZip()
                .file("project.json", json)
                .raw("sheets/a.html", target, PLAIN_FILE, 1)
                .write(folder.resolve("encrypted.zip"), ZEROS);
        assertTrue(refusal(encrypted).contains("encrypted"), refusal(encrypted));
    }

    @Test
    void refusesContentsThatAreNotAsTheManifestSays() throws Exception {
        Path unlisted = new HandMadeZip()
                .file("project.json", json)
                .raw("sheets/a.html", new byte[] {1}, PLAIN_FILE, 0)
                .write(folder.resolve("unlisted.zip"), ZEROS);
        assertTrue(refusal(unlisted).contains("which its manifest does not name"), refusal(unlisted));
        String wrongHash = HandMadeZip.sha256(new byte[] {2});
        Path capture = new HandMadeZip()
                .file("project.json", json)
                .file("captures/" + wrongHash.substring(0, 2) + "/" + wrongHash + ".wav", new byte[] {1})
                .write(folder.resolve("capture.zip"), ZEROS);
        assertTrue(refusal(capture).contains("another content than its name says"), refusal(capture));
        Path promised =
                new HandMadeZip().file("project.json", json).write(folder.resolve("promised.zip"), "ab".repeat(32));
        assertTrue(refusal(promised).contains("lacks the log"), refusal(promised));
        Path broken = new HandMadeZip()
                .file("project.json", "{}".getBytes(StandardCharsets.UTF_8))
                .write(folder.resolve("broken.zip"), ZEROS);
        assertTrue(refusal(broken).contains("cannot be read"), refusal(broken));
        Path noLog = new HandMadeZip()
                .file("project.json", json)
                .file("log.db", "no database".getBytes(StandardCharsets.UTF_8))
                .write(folder.resolve("nolog.zip"), ZEROS);
        assertTrue(refusal(noLog).contains("The log in the packed project cannot be read"), refusal(noLog));
    }

    @Test
    void refusesALogThatWasCutOffAtItsEnd() throws Exception {
        byte[] shorter;
        try (TestLog log = Samples.log(project)) {
            log.append(Samples.reading(1));
            Path copy = folder.resolve("copy.db");
            LogCopy.write(log.file(), copy);
            shorter = Files.readAllBytes(copy);
            log.append(Samples.reading(2));
            Path cut = new HandMadeZip()
                    .file("project.json", json)
                    .file("log.db", shorter)
                    .write(folder.resolve("cut.zip"), log.headHash());
            assertTrue(refusal(cut).contains("not whole"), refusal(cut));
        }
    }

    @Test
    void stopsABombWhateverItsManifestSays() throws Exception {
        Path bomb = folder.resolve("bomb.zip");
        byte[] zeros = new byte[1 << 20];
        long bytes = 96L << 20;
        try (OutputStream out = Files.newOutputStream(bomb);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("project.json"));
            zip.write(json);
            zip.closeEntry();
            zip.putNextEntry(new ZipEntry("sheets/a.html"));
            for (long written = 0; written < bytes; written += zeros.length) {
                zip.write(zeros);
            }
            zip.closeEntry();
            zip.putNextEntry(new ZipEntry("manifest.json"));
            zip.write(("{\"format\":\"ohmstead-project\",\"formatVersion\":1,\"softwareVersion\":\"\",\"packedAt\":"
                            + "\"2026-11-26T12:00:00Z\",\"title\":\"\",\"headHash\":\"" + ZEROS + "\",\"files\":["
                            + "{\"name\":\"project.json\",\"bytes\":" + json.length + ",\"sha256\":\""
                            + HandMadeZip.sha256(json) + "\"},{\"name\":\"sheets/a.html\",\"bytes\":" + bytes
                            + ",\"sha256\":\"" + ZEROS + "\"}]}")
                    .getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
        }
        assertTrue(Files.size(bomb) < 1 << 20);
        assertTrue(refusal(bomb).contains("times its size"), refusal(bomb));
    }

    @Test
    void holdsToItsLimits() throws Exception {
        pack();
        Path file = folder.resolve("kestrel.zip");
        for (PackLimits few : List.of(
                new PackLimits(2, 1 << 20, 1 << 20, 200, 1 << 20),
                new PackLimits(10, 100, 1 << 20, 200, 1 << 20),
                new PackLimits(10, 1 << 20, 2000, 200, 1 << 20),
                new PackLimits(10, 1 << 20, 1 << 20, 0.5, 100))) {
            assertThrows(
                    ExchangeException.class,
                    () -> ProjectPack.unpack(file, folder.resolve("other"), few, ExchangeProgress.SILENT),
                    few.toString());
            assertFalse(Files.exists(folder.resolve("other")));
        }
    }

    @Test
    void leavesNothingWhenItIsCancelled() throws Exception {
        Samples.capture(project, "RIFF level");
        pack();
        List<String> before = Samples.everythingIn(folder);
        ExchangeProgress impatient = new ExchangeProgress() {
            private int steps;

            @Override
            public void step(long done, long total, String what) {
                steps++;
            }

            @Override
            public boolean cancelled() {
                return steps >= 2;
            }
        };
        assertThrows(
                CancellationException.class,
                () -> ProjectPack.unpack(
                        folder.resolve("kestrel.zip"), folder.resolve("other"), PackLimits.USUAL, impatient));
        assertThrows(
                CancellationException.class,
                () -> ProjectPack.pack(project, folder.resolve("second.zip"), "0.1.0", impatient));
        assertEquals(before, Samples.everythingIn(folder));
    }

    @Test
    void refusesWhatIsNoZip() throws Exception {
        Path file = Files.writeString(folder.resolve("text.zip"), "PK, but nothing behind it");
        assertTrue(refusal(file).contains("no zip file"), refusal(file));
        assertTrue(
                refusal(Files.write(folder.resolve("empty.zip"), new byte[0])).contains("no zip file"));
        assertTrue(refusal(folder.resolve("none.zip")).contains("There is no file"));
    }
}

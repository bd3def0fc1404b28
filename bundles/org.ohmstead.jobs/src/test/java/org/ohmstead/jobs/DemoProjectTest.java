// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoProjectTest {
    @TempDir
    Path folder;

    @Test
    void makesItsProjectAnewInItsOwnFolder() throws Exception {
        Path project = DemoProject.freshCopy(DemoSteps.DATA, folder);
        Files.writeString(project.resolve("log.db"), "of yesterday");
        Files.createDirectories(project.resolve("captures/ab"));
        Path beside = Files.writeString(folder.resolve("notes.txt"), "mine");
        DemoProject.freshCopy(DemoSteps.DATA, folder);
        assertEquals(List.of(project.resolve("project.json")), DemoSteps.filesIn(project));
        assertEquals("mine", Files.readString(beside));
    }

    @Test
    void touchesNoFolderThatIsNotItsOwn() throws Exception {
        Path project = Files.createDirectories(folder.resolve(DemoProject.NAME));
        Path mine = Files.writeString(project.resolve("project.json"), "mine");
        JobException refusal = assertThrows(JobException.class, () -> DemoProject.freshCopy(DemoSteps.DATA, folder));
        assertEquals(JobException.Reason.FOLDER_TAKEN, refusal.reason());
        assertEquals(List.of(mine), DemoSteps.filesIn(folder));
        assertEquals("mine", Files.readString(mine));
    }

    @Test
    void carriesOutItsPlanFromTheRecordings() throws Exception {
        Path small = folder.resolve("data");
        DemoSteps.recordings(small.resolve("recordings"), DemoSteps.FIVE);
        Files.createDirectories(small.resolve(DemoProject.NAME));
        Files.copy(
                DemoSteps.DATA.projectFolder().resolve("project.json"),
                small.resolve(DemoProject.NAME).resolve("project.json"));
        DemoProject demo =
                DemoProject.make(new DemoData(small), folder.resolve("made"), DemoSteps.VERSION, JobProgress.SILENT);
        assertEquals(
                folder.resolve("made").resolve(DemoProject.NAME), demo.folder().folder());
        assertEquals(DemoSteps.FIVE.size(), demo.outcome().logged().size());
        assertEquals(DemoSteps.FIVE.size(), DemoSteps.entries(demo.folder()).size());
    }

    @Test
    void looksForItsDataWhereTheyAreNamedThenWhereItIsInstalledThenHere() {
        Map<String, String> environment = Map.of(DemoData.VARIABLE, "named");
        Map<String, String> properties = Map.of(DemoData.PROPERTY, "set");
        assertEquals(
                List.of(Path.of("named"), Path.of("set"), Path.of("installed", "demo-data"), Path.of("demo-data")),
                DemoData.places(Optional.of(Path.of("installed")), environment::get, properties::get));
        assertEquals(
                List.of(Path.of("demo-data")),
                DemoData.places(Optional.empty(), Map.of(DemoData.VARIABLE, " ")::get, Map.<String, String>of()::get));
    }

    @Test
    void findsTheFirstPlaceThatHasTheDataOrSaysWhereItLooked() throws Exception {
        Path data = DemoSteps.DATA.folder();
        assertEquals(DemoSteps.DATA, DemoData.find(List.of(folder, data)));
        JobException missing =
                assertThrows(JobException.class, () -> DemoData.find(List.of(folder, folder.resolve("x"))));
        assertTrue(missing.getMessage().contains(folder.resolve("x").toString()), missing.getMessage());
        assertTrue(missing.getMessage().contains(DemoData.VARIABLE), missing.getMessage());
        assertFalse(Files.exists(folder.resolve("x")));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Stimulus;

class ProjectFileTest {
    // What says nothing is left out, so that older texts stay as they were.
    private static final Set<Object> SILENT =
            Set.of(PartTraits.NONE, MeterStability.NONE, PartShape.NORMAL, Optional.empty());

    @TempDir
    Path temporary;

    private Path folder() {
        return temporary.resolve("kestrel.ohmstead");
    }

    private Path file() {
        return folder().resolve(ProjectFile.FILE_NAME);
    }

    private static List<String> namesIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static Project retitled(Project project, String title) {
        return new Project(
                title, project.amplifier(), project.bench(), project.loads(), project.plan(), project.sheet());
    }

    @Test
    void aProjectReadsBackEqual() throws Exception {
        LoadedProject written = ProjectFile.write(folder(), Samples.project(), Optional.empty());
        LoadedProject read = ProjectFile.read(folder());
        assertEquals(Samples.project(), read.project());
        assertEquals(List.of(), read.problems());
        assertEquals(written.revisionSha256(), read.revisionSha256());
        assertEquals(read.project(), ProjectFile.read(file()).project());
        assertEquals(List.of(ProjectFile.FILE_NAME), namesIn(folder()));
    }

    @Test
    void theTextIsForPeopleAndVersionControl() throws Exception {
        ProjectFile.write(folder(), Samples.project(), Optional.empty());
        String text = Files.readString(file(), StandardCharsets.UTF_8);
        assertTrue(text.startsWith("{\n  \"formatVersion\": 1,\n  \"title\": \"Kestrel 2 \u00d7 90\",\n"), text);
        assertTrue(text.endsWith("}\n"));
        assertFalse(text.contains("\r"));
        assertTrue(text.contains("\"mounting\": \"heatSinkWithFan\""));
        assertTrue(text.contains("\"measure\": \"thdPlusNoiseR\""));
        assertTrue(text.contains("\"kind\": \"toneBurst\""));
        assertTrue(text.contains("\"calibratedOn\": \"2025-06-01\""));
        assertTrue(text.contains("\"nominalOhms\": 4,"));
    }

    @Test
    void everyComponentIsAFieldOfTheSameNameInTheSameOrder() throws Exception {
        ProjectFile.write(folder(), Samples.project(), Optional.empty());
        JsonNode root = new ObjectMapper().readTree(file().toFile());
        List<String> names = new ArrayList<>(names(root));
        assertEquals("formatVersion", names.remove(0));
        assertEquals(componentNames(Samples.project()), names);
        compareFields(Samples.project(), root);
        Reading reading = Samples.reading();
        compareFields(reading, new ObjectMapper().readTree(ReadingJson.toCanonicalText(reading)));
    }

    private static List<String> names(JsonNode object) {
        List<String> names = new ArrayList<>();
        object.fieldNames().forEachRemaining(names::add);
        return names;
    }

    private static List<String> componentNames(Record value) {
        return Stream.of(value.getClass().getRecordComponents())
                .map(RecordComponent::getName)
                .toList();
    }

    private static void compareFields(Record value, JsonNode json) throws ReflectiveOperationException {
        List<String> expected = new ArrayList<>();
        if (value instanceof Stimulus || value instanceof EndPoint) {
            expected.add("kind");
        }
        if (value instanceof Project) {
            expected.add("formatVersion");
        }
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            Object part = component.getAccessor().invoke(value);
            if (part.equals(OptionalDouble.empty()) || SILENT.contains(part)) {
                continue;
            }
            expected.add(component.getName());
            JsonNode field = json.path(component.getName());
            part = part instanceof Optional<?> present ? present.orElseThrow() : part;
            if (part instanceof Record inner) {
                compareFields(inner, field);
            } else if (part instanceof List<?> list) {
                assertEquals(list.size(), field.size(), component.getName());
                for (int index = 0; index < list.size(); index++) {
                    if (list.get(index) instanceof Record inner) {
                        compareFields(inner, field.get(index));
                    }
                }
            }
        }
        assertEquals(
                expected.stream().sorted().toList(),
                names(json).stream().sorted().toList());
    }

    @Test
    void writingTwiceGivesTheSameBytes() throws Exception {
        LoadedProject first = ProjectFile.write(folder(), Samples.project(), Optional.empty());
        byte[] before = Files.readAllBytes(file());
        ProjectFile.write(folder(), first.project(), Optional.of(first.document()));
        assertArrayEquals(before, Files.readAllBytes(file()));
    }

    @Test
    void textsAndListsMayBeLeftOut() throws Exception {
        Files.createDirectory(folder());
        Files.writeString(
                file(),
                "\uFEFF{\"formatVersion\":1,\"title\":\"T\",\"amplifier\":{\"model\":\"M\",\"channelCount\":2.0,"
                        + "\"supplyType\":\"unknown\",\"heatSinkKelvinPerWatt\":null},\"bench\":{\"supply\":{\"name\":\"S\","
                        + "\"lowestVolts\":0,\"highestVolts\":15,\"currentLimitAmps\":30},\"cable\":"
                        + "{\"crossSectionSquareMillimetres\":10,\"loopMetres\":2}},\"sheet\":{\"confidence\":0.95}}");
        LoadedProject read = ProjectFile.read(folder());
        assertEquals("", read.project().amplifier().maker());
        assertEquals(List.of(), read.project().plan());
        assertEquals(OptionalDouble.empty(), read.project().bench().ambientCelsius());
        assertEquals(List.of(), read.problems());
    }

    @Test
    void theRevisionFollowsValuesAndNotLayout() throws Exception {
        LoadedProject written = ProjectFile.write(folder(), Samples.project(), Optional.empty());
        String text = Files.readString(file());
        Files.writeString(
                file(), text.replace("\n", "\r\n").replace("\"nominalOhms\": 4,", "\"nominalOhms\":4.000e0 ,"));
        assertEquals(written.revisionSha256(), ProjectFile.read(folder()).revisionSha256());
        assertNotEquals(written.revisionSha256(), ProjectRevision.of(retitled(Samples.project(), "Other")));
        assertTrue(written.revisionSha256().matches("[0-9a-f]{64}"));
    }

    @Test
    void aNewerVersionIsRefusedAndTheFileIsNotTouched() throws Exception {
        ProjectFile.write(folder(), Samples.project(), Optional.empty());
        Files.writeString(file(), Files.readString(file()).replace("\"formatVersion\": 1", "\"formatVersion\": 7"));
        byte[] before = Files.readAllBytes(file());
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> ProjectFile.read(folder()));
        assertEquals(
                "kestrel.ohmstead/project.json, line 2, column 20, $.formatVersion: the file is of format version 7,"
                        + " but this Ohmstead reads versions up to 1. Update Ohmstead to open it. The file was not"
                        + " touched.",
                failure.getMessage());
        assertArrayEquals(before, Files.readAllBytes(file()));
    }

    @Test
    void aFolderInTheFilesPlaceIsRefusedAndKept() throws Exception {
        Files.createDirectories(file());
        Files.writeString(file().resolve("inside.txt"), "kept");
        ProjectFileException failure = assertThrows(
                ProjectFileException.class, () -> ProjectFile.write(file(), Samples.project(), Optional.empty()));
        assertTrue(failure.getMessage().contains("is a folder"), failure.getMessage());
        ProjectFileException inFolder = assertThrows(
                ProjectFileException.class, () -> ProjectFile.write(folder(), Samples.project(), Optional.empty()));
        assertTrue(inFolder.getMessage().contains("is a folder"), inFolder.getMessage());
        assertEquals("kept", Files.readString(file().resolve("inside.txt")));
        assertEquals(List.of(ProjectFile.FILE_NAME), namesIn(folder()));
    }

    @Test
    void aFolderThatMayNotBeWrittenToKeepsTheOldFile() throws Exception {
        assumeTrue(Files.getFileStore(temporary).supportsFileAttributeView("posix"), "needs POSIX permissions");
        ProjectFile.write(folder(), Samples.project(), Optional.empty());
        byte[] before = Files.readAllBytes(file());
        Files.setPosixFilePermissions(folder(), PosixFilePermissions.fromString("r-xr-xr-x"));
        try {
            assumeFalse(Files.isWritable(folder()), "this user may write everywhere");
            ProjectFileException failure = assertThrows(
                    ProjectFileException.class,
                    () -> ProjectFile.write(folder(), retitled(Samples.project(), "Other"), Optional.empty()));
            assertTrue(failure.getMessage().contains("access is denied"), failure.getMessage());
            assertTrue(failure.getMessage().contains("What was there before is untouched"), failure.getMessage());
            assertArrayEquals(before, Files.readAllBytes(file()));
            assertEquals(List.of(ProjectFile.FILE_NAME), namesIn(folder()));
        } finally {
            Files.setPosixFilePermissions(folder(), PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    @Test
    void aTextThatHasNoFormInUtf8IsRefusedBeforeAnythingIsWritten() throws Exception {
        ProjectFile.write(folder(), Samples.project(), Optional.empty());
        byte[] before = Files.readAllBytes(file());
        assertThrows(
                IllegalArgumentException.class,
                () -> ProjectFile.write(folder(), retitled(Samples.project(), "half \ud83d"), Optional.empty()));
        assertArrayEquals(before, Files.readAllBytes(file()));
    }

    @Test
    void theRightsOfTheOldFileAreKept() throws Exception {
        assumeTrue(Files.getFileStore(temporary).supportsFileAttributeView("posix"), "needs POSIX permissions");
        ProjectFile.write(folder(), Samples.project(), Optional.empty());
        Files.setPosixFilePermissions(file(), PosixFilePermissions.fromString("rw-rw-r--"));
        ProjectFile.write(folder(), Samples.project(), Optional.empty());
        assertEquals("rw-rw-r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(file())));
    }

    @Test
    void aLinkStaysALink() throws Exception {
        Path real = Files.createDirectory(temporary.resolve("elsewhere")).resolve("real.json");
        ProjectFile.write(real, Samples.project(), Optional.empty());
        Files.createDirectory(folder());
        Files.createSymbolicLink(file(), real);
        ProjectFile.write(folder(), retitled(Samples.project(), "Other"), Optional.empty());
        assertTrue(Files.isSymbolicLink(file()));
        assertEquals("Other", ProjectFile.read(real).project().title());
    }

    @Test
    void aMissingFolderOrFileIsSaidSo() throws Exception {
        ProjectFileException noFile =
                assertThrows(ProjectFileException.class, () -> ProjectFile.read(temporary.resolve("none.json")));
        assertTrue(noFile.getMessage().startsWith("There is no file"), noFile.getMessage());
        ProjectFileException noProject = assertThrows(ProjectFileException.class, () -> ProjectFile.read(temporary));
        assertTrue(noProject.getMessage().contains("holds no project.json"), noProject.getMessage());
        ProjectFileException noParent = assertThrows(
                ProjectFileException.class,
                () -> ProjectFile.write(
                        temporary.resolve("a").resolve("b.ohmstead"), Samples.project(), Optional.empty()));
        assertTrue(noParent.getMessage().contains("could not be made"), noParent.getMessage());
    }

    @Test
    void aHugeFileIsRefused() throws Exception {
        Files.createDirectory(folder());
        Files.write(file(), new byte[16 * 1024 * 1024 + 1]);
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> ProjectFile.read(folder()));
        assertTrue(failure.getMessage().contains("larger than 16 MiB"), failure.getMessage());
    }

    @Test
    void sheetTextsKeepTheirLines() throws Exception {
        SheetSettings sheet = new SheetSettings("", "", 0.99, "a\nb\t\"c\" \\ \u00b5\u03a9");
        ProjectFile.write(folder(), Samples.project().withSheet(sheet), Optional.empty());
        assertEquals(sheet, ProjectFile.read(folder()).project().sheet());
    }
}

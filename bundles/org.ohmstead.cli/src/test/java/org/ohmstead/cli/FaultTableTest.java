// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.units.text.Language;

/**
 * Every fault of a disk at every place where a file is written: what was there before is as it was, nothing else is left behind, the user
 * is told what happened to what and what to do, and once the fault is mended the same call does its work. With {@code
 * -Dohmstead.faults=all} the disk runs full at each byte.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FaultTableTest {
    /** By so many bytes a packed file may be longer or shorter when it is written at another time. */
    private static final int WOBBLE = 64;

    private static final boolean EACH_BYTE = "all".equals(System.getProperty("ohmstead.faults"));

    /** What a write gets over, in one way or another. */
    private static final Set<Ills.Ill> HARMLESS =
            EnumSet.of(Ills.Ill.HELD_BRIEFLY, Ills.Ill.NOT_AT_ONCE, Ills.Ill.NO_FOLDER_FORCE, Ills.Ill.NO_RIGHTS);

    /** What only hinders where a file is to be replaced. */
    private static final Set<Ills.Ill> OF_REPLACING = EnumSet.of(Ills.Ill.HELD, Ills.Ill.HELD_BRIEFLY);

    private Path base;

    private FaultPlaces places;
    private int injected;
    private int folders;

    @BeforeAll
    void measure(@TempDir Path folder) throws Exception {
        base = folder;
        places = new FaultPlaces(Files.createDirectories(base.resolve("sample")));
    }

    @AfterAll
    void sum() throws Exception {
        places.close();
        System.out.println("faults of files: " + injected + " injected, nothing lost");
    }

    Stream<FaultPlaces.Place> places() throws Exception {
        return places.all().stream();
    }

    /** A folder on a disk with faults, and what lies in it. */
    private record Stage(Ills ills, Path real, Path target, FaultPlaces.Place place) {
        void write() throws Exception {
            place.writing().to(target);
        }

        /** Returns all files with their content. */
        Map<String, byte[]> files() throws IOException {
            Map<String, byte[]> files = new TreeMap<>();
            try (Stream<Path> all = Files.walk(real)) {
                for (Path file : all.filter(Files::isRegularFile).toList()) {
                    files.put(real.relativize(file).toString(), Files.readAllBytes(file));
                }
            }
            return files;
        }
    }

    private Stage stage(FaultPlaces.Place place) throws IOException {
        Path real = Files.createDirectories(base.resolve("stage" + folders++));
        place.prepare(real);
        if (place.name().equals("unpacked project")) {
            Files.delete(real.resolve(place.target()).getParent());
        }
        Ills ills = new Ills();
        return new Stage(ills, real, ills.folder(real).resolve(place.target()), place);
    }

    @ParameterizedTest
    @MethodSource("places")
    void aFullDiskTakesNothingAway(FaultPlaces.Place place) throws Exception {
        Stage whole = stage(place);
        whole.write();
        long bytes = whole.ills().takeWritten();
        assertTrue(bytes > 0, "nothing went through the faulty disk");
        Stage stage = stage(place);
        Map<String, byte[]> before = stage.files();
        for (long room : rooms(place.timed() ? bytes - WOBBLE : bytes, place.positions())) {
            if (place.several()) {
                // What came before stays, and is not written again.
                stage = stage(place);
            }
            stage.ills().leave(room);
            told(stage, Locale.ENGLISH);
            same(before, stage, whole, "room for " + room + " of " + bytes);
            injected++;
        }
        mended(stage, whole);
    }

    private static Set<Long> rooms(long bytes, int positions) {
        Set<Long> rooms = new TreeSet<>(List.of(0L, 1L, bytes - 1));
        long step = EACH_BYTE && bytes < 200_000 ? 1 : Math.max(1, bytes / positions);
        for (long room = 0; room < bytes; room += step) {
            rooms.add(room);
        }
        return rooms;
    }

    @ParameterizedTest
    @MethodSource("places")
    void noOtherFaultTakesAnythingAway(FaultPlaces.Place place) throws Exception {
        Stage whole = stage(place);
        whole.write();
        for (Ills.Ill ill : EnumSet.complementOf(EnumSet.of(Ills.Ill.FULL))) {
            if (place.old().isEmpty() && OF_REPLACING.contains(ill)) {
                continue;
            }
            Stage stage = stage(place);
            Map<String, byte[]> before = stage.files();
            stage.ills().suffer(ill);
            if (survives(place, ill)) {
                stage.write();
                if (!ill.equals(Ills.Ill.NO_RIGHTS)) {
                    assertTrue(stage.ills().struck() > 0 || tolerated(place, ill), ill + " did not come up");
                }
                assertEquals(whole.files().keySet(), stage.files().keySet(), ill.toString());
            } else {
                String english = told(stage, Locale.ENGLISH);
                same(before, stage, whole, ill.toString());
                stage.ills().suffer(ill);
                String german = told(stage, Locale.GERMAN);
                assertTrue(place.wordless() || !english.equals(german), english);
                same(before, stage, whole, ill.toString());
            }
            mended(stage, whole);
            injected++;
        }
    }

    private static boolean survives(FaultPlaces.Place place, Ills.Ill ill) {
        boolean onlyAtOnce = place.name().equals("project") || place.name().equals("recovery copy");
        return HARMLESS.contains(ill) && !(onlyAtOnce && ill == Ills.Ill.NOT_AT_ONCE) || tolerated(place, ill);
    }

    /** Signals can be made again at any time and are not forced to the disk; a folder is moved as a whole. */
    private static boolean tolerated(FaultPlaces.Place place, Ills.Ill ill) {
        return ill == Ills.Ill.DISK_ERROR && place.name().equals("signal")
                || place.name().equals("unpacked project") && ill == Ills.Ill.NO_FOLDER_FORCE;
    }

    /** Has it fail, and returns what the user is told. */
    private static String told(Stage stage, Locale language) throws Exception {
        Exception failure = Language.<Exception, RuntimeException>speaking(
                language,
                () -> assertThrows(
                        Exception.class, stage::write, "struck " + stage.ills().struck()));
        String sentence = String.valueOf(failure.getLocalizedMessage());
        assertFalse(failure instanceof RuntimeException, () -> "not foreseen: " + failure);
        assertFalse(sentence.contains(".part") || sentence.contains("Exception"), sentence);
        if (!stage.place().wordless()) {
            String name = stage.target().getFileName().toString();
            boolean named = sentence.contains(name)
                    || sentence.contains(stage.real().toString())
                    || sentence.contains("captures")
                    || sentence.contains("sample");
            assertTrue(named, sentence);
            assertTrue(sentence.matches("(?s).*[.;:)] \\p{Lu}?.* .*\\."), "what to do? " + sentence);
        }
        assertTrue(stage.ills().struck() > 0, sentence);
        return sentence;
    }

    private static void same(Map<String, byte[]> before, Stage stage, Stage whole, String when) throws IOException {
        Map<String, byte[]> after = stage.files();
        if (stage.place().several()) {
            Map<String, byte[]> there = whole.files();
            after.forEach((name, content) -> assertTrue(
                    Arrays.equals(content, before.get(name)) || content.length == there.get(name).length,
                    () -> name + " is neither as before nor whole, " + when));
            return;
        }
        assertEquals(before.keySet(), after.keySet(), when);
        before.forEach((name, content) -> assertArrayEquals(content, after.get(name), () -> name + ", " + when));
    }

    private static void mended(Stage stage, Stage whole) throws Exception {
        stage.ills().heal();
        boolean replaces = !stage.place().name().equals("packed project")
                && !stage.place().name().equals("unpacked project");
        if (replaces || !Files.exists(stage.real().resolve(stage.place().target()))) {
            stage.write();
        }
        Map<String, byte[]> files = stage.files();
        assertEquals(whole.files().keySet(), files.keySet());
        byte[] content = files.get(stage.place().target());
        assertEquals(whole.files().get(stage.place().target()).length, content.length, WOBBLE);
        assertNotEquals(stage.place().old(), new String(content, StandardCharsets.UTF_8));
    }

    @Test
    void theTableHasEveryPlaceOnce() throws Exception {
        assertEquals(
                places.all().size(),
                places.all().stream().map(FaultPlaces.Place::name).distinct().count());
        assertTrue(places.all().size() >= 13);
    }
}

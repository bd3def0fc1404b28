// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Said;

/** What a log refuses is said in German, and kept in English where a run that fails for it is logged. */
class GermanFaultsTest {
    @TempDir
    private Path folder;

    @Test
    void saysWhatItRefuses() throws Exception {
        Path file = folder.resolve(TestLog.FILE_NAME);
        Language.speaking(Locale.GERMAN, () -> {
            TestLogException none = assertThrows(TestLogException.class, () -> TestLog.openReadOnly(file));
            assertEquals(
                    "Es gibt kein Protokoll " + file
                            + ". Den Namen prüfen; ein Projekt ohne Ablesungen hat noch kein Protokoll.",
                    none.getMessage());
            TestLogException capture =
                    assertThrows(TestLogException.class, () -> new CaptureStore(folder).store(folder.resolve("a.wav")));
            assertEquals(
                    new Said(
                            "The capture " + folder.resolve("a.wav")
                                    + " does not exist. Check the name, or record it again.",
                            "Die Aufnahme " + folder.resolve("a.wav")
                                    + " gibt es nicht. Den Namen prüfen, oder neu aufnehmen."),
                    capture.said());
            return null;
        });
    }

    @Test
    void saysWhatCameOfAJoin() throws Exception {
        Language.speaking(Locale.GERMAN, () -> {
            try (TestLog log = TestLog.open(folder.resolve("a.db"));
                    TestLog other = TestLog.open(folder.resolve("b.db"))) {
                log.note("here", "");
                other.note("there", "");
                other.note("there too", "");
                assertEquals(
                        "2 Einträge von Platz 2 kamen als Kette B; der Eintrag J0001 hält das Ende dieser Kette fest.",
                        log.join(other, "Platz 2", "N. N.").sentence());
                return null;
            }
        });
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.units.text.Language;

/** A trainer reads in German what is wrong with a description. */
class GermanFaultsTest {
    @TempDir
    private Path folder;

    private String wrong(String description) throws Exception {
        Path file = Files.writeString(folder.resolve("ours.properties"), description);
        return Language.speaking(
                Locale.GERMAN, () -> assertThrows(LessonException.class, () -> LessonFiles.read(file, List.of()))
                        .getMessage());
    }

    @Test
    void namesTheKeyAndWhatToDo() throws Exception {
        assertEquals(
                "In der Beschreibung ours.properties fehlt der Schlüssel „model“. Eine Zeile hinzufügen, etwa:"
                        + " model = load-and-power.",
                wrong("lesson = ours\n"));
        assertEquals(
                "In der Beschreibung ours.properties kommt der Schlüssel „lesson“ zweimal vor. Einen davon behalten.",
                wrong("lesson = ours\nlesson = yours\n"));
        assertEquals(
                "Die Beschreibung ours.properties enthält ein als \\u geschriebenes Zeichen ohne vier"
                        + " Hexadezimalziffern dahinter. Das Zeichen selbst schreiben.",
                wrong("lesson = \\u12\n"));
    }
}

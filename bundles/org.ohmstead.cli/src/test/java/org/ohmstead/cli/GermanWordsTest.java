// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.units.text.Language;

/** Words on a machine where German is asked for. */
class GermanWordsTest {
    private static final String STEP = "stereo-4ohm-14V4";

    @TempDir
    private Path folder;

    private String before;

    @BeforeEach
    void speakGerman() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
    }

    @AfterEach
    void speakAsBefore() {
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    private static BenchWords run(int exitCode, String... words) {
        BenchWords ended = BenchWords.run(new BuiltPlugins(), words);
        assertEquals(exitCode, ended.exitCode(), ended.out() + ended.err());
        return ended;
    }

    private static void assertSays(String text, String said) {
        assertTrue(said.contains(text), said);
    }

    @Test
    void aNetworkIsShownInGerman() {
        String shown = run(0, "load", "show", "8R2@50W||8R2@50W", "--power-watts", "80")
                .out();
        assertSays("ungünstigster Fall", shown);
        assertSays("Es nimmt beliebig lange 100.0 W", shown);
        assertSays("Vorsicht: Widerstände unter Leistung verbrennen die Haut", shown);
        String head = shown.lines()
                .filter(line -> line.startsWith("Bauteil"))
                .findFirst()
                .orElse(shown);
        assertEquals(List.of("Bauteil", "Ohm", "Anteil %", "W", "erlaubt W", "Gehäuse °C", "Draht °C"), columns(head));
        assertFalse(shown.contains("Caution"), shown);
    }

    /** Returns the heads of columns, which have two spaces between them or more. */
    private static List<String> columns(String head) {
        return List.of(head.strip().split("\\s{2,}"));
    }

    @Test
    void whatIsWrongIsSaidInGerman() {
        assertSays(
                "--power-watts ist 0; der Wert muss über 0 liegen.",
                run(3, "load", "show", "8", "--power-watts", "0").err());
        assertSays(
                "--max-parts ist 99; der Wert muss zwischen 1 und 30 liegen.",
                run(3, "load", "find", "--target-ohms", "4", "--stock", "1,2", "--max-parts", "99")
                        .err());
    }

    @Test
    void aLogIsVoidedAndVerifiedInGermanAndItsJsonStaysEnglish() throws Exception {
        String project = BenchWords.project(folder).toString();
        Path recordings = BenchWords.recordings(folder, List.of(STEP));
        String replayed =
                run(0, "run", project, "--replay", recordings.toString()).out();
        assertSays("1 Ablesungen protokolliert.", replayed);
        assertSays("Ergebnis", replayed);
        String id = BenchWords.log(Path.of(project)).get(0).id();
        assertSays(
                id + " zählt nicht mehr; der Eintrag ",
                run(0, "log", "void", project, id, "--reason", "Wackelkontakt", "--who", "N. N.")
                        .out());
        String verified = run(0, "log", "verify", project).out();
        assertSays("Das Protokoll ist unversehrt: Nichts wurde geändert", verified);
        assertSays(" Einträge geprüft, Kopf ", verified);
        assertSays("ungültig: Wackelkontakt", run(0, "log", "list", project).out());
        JsonNode shown = run(0, "log", "show", project, id).json();
        assertEquals("void: Wackelkontakt", shown.get("remark").asText());
        assertSays(
                "Das Protokoll hat keinen Eintrag T-9999.",
                run(3, "log", "show", project, "T-9999").err());
    }

    @Test
    void aPersonIsAskedInGermanAndAnswersSo() throws Exception {
        ConsoleInput typed = BenchWords.typed("vielleicht", "j");
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Console console = new Console(System.out, new PrintStream(err), typed);
        assertTrue(new ConsoleOperator(console).confirm("Die Last ist heiß."));
        String said = err.toString(StandardCharsets.UTF_8);
        assertSays("Die Last ist heiß. Für ja ein j eingeben: ", said);
        assertSays("„vielleicht“ ist weder ja noch nein.", said);
    }
}

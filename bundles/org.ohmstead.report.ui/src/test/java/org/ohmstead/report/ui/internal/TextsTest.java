// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.units.text.Language;

class TextsTest {
    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = SheetComposite.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            for (String place : List.of("{0}", "{1}", "{2}", "{3}")) {
                assertEquals(
                        text.toString().contains(place),
                        german.getProperty(key.toString()).contains(place),
                        key + " " + place);
            }
        });
    }

    @Test
    void sayOneAndManyApart() {
        assertEquals("1\u00a0is met", in(Locale.ENGLISH, () -> Texts.counted("conclusion.MEETS", 1)));
        assertEquals("2\u00a0are met", in(Locale.ENGLISH, () -> Texts.counted("conclusion.MEETS", 2)));
        assertEquals(
                "2 Angaben: 2\u00a0erf\u00fcllt (einfach).",
                in(Locale.GERMAN, () -> Texts.counted("conclusion", 2, "2\u00a0erf\u00fcllt", "einfach")));
        for (VerdictMark mark : VerdictMark.values()) {
            assertFalse(in(Locale.GERMAN, mark::word).equals(in(Locale.ENGLISH, mark::word)));
        }
    }

    private static String in(Locale language, Language.Work<String, RuntimeException> work) {
        return Language.speaking(language, work);
    }

    @Test
    void aChoiceKeepsWhatTheProjectDidNotChange() {
        SheetLayout before = SheetLayout.USUAL;
        SheetChoice chosen = new SheetChoice(SheetDesign.HANDOUT, PaperSize.LETTER, Locale.GERMAN);
        assertEquals(chosen, chosen.after(before, before.withAddress("1 Example Street")));
        assertEquals(chosen.withDesign(SheetDesign.BENCH), chosen.after(before, before.withDesign(SheetDesign.BENCH)));
        assertEquals(
                chosen.withPaper(PaperSize.A4),
                chosen.after(before.withPaper(PaperSize.LETTER), before.withPaper(PaperSize.A4)));
    }

    @Test
    void exportsOfOtherFormsGetOtherNames() {
        SheetChoice usual = new SheetChoice(SheetDesign.FULL, PaperSize.A4, Locale.UK);
        assertEquals("", usual.suffix());
        assertEquals("-bench", usual.withDesign(SheetDesign.BENCH).suffix());
        assertEquals("-de", usual.withLanguage(Locale.GERMANY).suffix());
    }
}

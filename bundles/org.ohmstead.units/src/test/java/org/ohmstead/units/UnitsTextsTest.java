// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/** What is not read as a quantity is refused in the language of who wrote it. */
final class UnitsTextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = QuantityParser.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static Set<String> places(String text) {
        return PLACE.matcher(text)
                .results()
                .map((MatchResult found) -> found.group(1))
                .collect(Collectors.toSet());
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            assertEquals(places(english.getProperty(key)), places(german.getProperty(key)), key);
        }
    }

    @ParameterizedTest
    @EnumSource
    void eachUnitHasAName(Unit unit) {
        assertTrue(Messages.of(QuantityParser.class).has("unit." + unit.name()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|VOLT|Hier steht nichts; zum Beispiel 13,8 V eingeben.",
                "x|OHM|\u201ex\u201c beginnt nicht mit einer Zahl; zum Beispiel 4R7 oder 4,7 \u03a9 eingeben.",
                "4R7 V|OHM|\u201eV\u201c steht hinter der Gr\u00f6\u00dfe in \u201e4R7 V\u201c; zum Beispiel 4R7 oder"
                        + " 4,7 \u03a9 eingeben.",
                "5 V|SECOND|\u201eV\u201c ist keine Einheit, die hier passt; zum Beispiel 20 ms eingeben.",
                "1e999|HERTZ|\u201e1e999\u201c ist zu gro\u00df f\u00fcr Hertz."
            })
    void aRefusalIsGermanForThoseWhoReadGerman(String text, Unit unit, String german) {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            assertEquals(
                    german,
                    assertThrows(QuantityException.class, () -> QuantityParser.parse(text, unit))
                            .getMessage());
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }
}

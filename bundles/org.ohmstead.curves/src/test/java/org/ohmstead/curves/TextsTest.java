// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

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
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Language;

class TextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = PowerCurve.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static TreeSet<String> places(String text) {
        return PLACE.matcher(text).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "study/"})
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(String folder) throws IOException {
        Properties english = texts(folder + "messages.properties");
        Properties german = texts(folder + "messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            assertEquals(places(english.getProperty(key)), places(german.getProperty(key)), key);
        }
    }

    @Test
    void aCurveDescribesItselfInTheReadersLanguage() {
        PowerCurve curve = PowerCurveFit.fit(List.of(new PowerPoint(12.6, 100, 1, "")), 4);
        String german = Language.speaking(Locale.GERMAN, curve::describe);
        assertEquals(
                "Alle Ablesungen liegen nahe 12.6 V, daher ist dies eine Umrechnung nach dem Quadratgesetz von nur"
                        + " einer Spannung aus; aufwärts sagt sie zu wenig voraus, wo die Endstufe sättigt; ist die eigene"
                        + " Versorgung des Verstärkers geregelt, ändert sich die Leistung kaum. Bei einer zweiten"
                        + " Versorgungsspannung ablesen.",
                german);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.HeatEstimate;
import org.ohmstead.thermal.plan.ExpectedPower;

class TextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = Ohmstead.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static TreeSet<String> places(String text) {
        return PLACE.matcher(text).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
    }

    /** Returns which columns of a table's head are numbers, in their order. */
    private static List<Boolean> columns(String head) {
        return Arrays.stream(head.split("\\|", -1))
                .map(column -> column.startsWith(">"))
                .toList();
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlacesAndColumns() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            assertEquals(places(english.getProperty(key)), places(german.getProperty(key)), key);
            assertEquals(columns(english.getProperty(key)), columns(german.getProperty(key)), key);
        }
    }

    private static List<String> missing(String prefix, Enum<?>... constants) {
        return Arrays.stream(constants)
                .map(constant -> prefix + constant.name())
                .filter(key -> !Texts.has(key))
                .toList();
    }

    @Test
    void eachConstantThatIsShownHasItsWord() {
        assertEquals(List.of(), missing("mode.", Mode.values()));
        assertEquals(List.of(), missing("kind.", PowerKind.values()));
        assertEquals(List.of(), missing("verdict.", Verdict.values()));
        assertEquals(List.of(), missing("outcome.", EndPointOutcome.values()));
        assertEquals(List.of(), missing("severity.", Severity.values()));
        assertEquals(List.of(), missing("power.", ExpectedPower.Basis.values()));
        assertEquals(List.of(), missing("basis.", HeatEstimate.Basis.values()));
    }
}

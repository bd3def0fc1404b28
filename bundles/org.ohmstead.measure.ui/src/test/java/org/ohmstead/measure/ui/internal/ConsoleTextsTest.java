// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class ConsoleTextsTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d");

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = RunWords.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }

    private static TreeSet<String> places(String text) {
        return PLACE.matcher(text).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
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
}

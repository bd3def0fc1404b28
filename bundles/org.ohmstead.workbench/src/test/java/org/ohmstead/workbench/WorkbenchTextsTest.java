// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.workbench.look.Labels;

/** Both languages say the same of everything, in each package of the bundle. */
class WorkbenchTextsTest {
    private static final String ENGLISH = "messages.properties";
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)");
    private static final int LEAST_PACKAGES = 8;

    /** Returns the folder of texts of each package that has any. */
    static List<Path> packages() throws IOException, URISyntaxException {
        URL known = Labels.class.getResource(ENGLISH);
        Path root = Path.of(URI.create(known.toString()));
        for (int up = 0; up <= Labels.class.getPackageName().split("\\.").length; up++) {
            root = root.getParent();
        }
        try (Stream<Path> files = Files.walk(root)) {
            List<Path> found = files.filter(file -> file.endsWith(ENGLISH))
                    .map(Path::getParent)
                    .sorted()
                    .toList();
            assertTrue(found.size() >= LEAST_PACKAGES, found.toString());
            return found;
        }
    }

    private static Properties texts(Path file) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = Files.newBufferedReader(file)) {
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

    @ParameterizedTest
    @MethodSource("packages")
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces(Path folder) throws IOException {
        Properties english = texts(folder.resolve(ENGLISH));
        Properties german = texts(folder.resolve("messages_de.properties"));
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            String said = english.getProperty(key);
            String translated = german.getProperty(key);
            assertFalse(translated.isBlank(), key);
            assertEquals(places(said), places(translated), key);
            assertDoesNotThrow(() -> new MessageFormat(said, Locale.ENGLISH), key);
            assertDoesNotThrow(() -> new MessageFormat(translated, Locale.GERMAN), key);
            assertEquals(
                    said.indexOf('&') >= 0, translated.indexOf('&') >= 0, key + " has a mnemonic in one language only");
        }
    }
}

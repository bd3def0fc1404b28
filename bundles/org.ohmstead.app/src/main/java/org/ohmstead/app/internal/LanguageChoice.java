// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import org.ohmstead.units.text.Language;

/**
 * The language that the user chose. It stands in a file of one line, because the start scripts must know it before Java starts: what
 * plugin.xml says and the framework's own locale are fixed with the framework's start. No file means the language of the machine.
 */
public enum LanguageChoice {
    /** Whatever the machine speaks. */
    MACHINE(""),
    /** English. */
    ENGLISH("en"),
    /** German. */
    GERMAN("de");

    private static final String FILE = "language";

    private final String tag;

    LanguageChoice(String tag) {
        this.tag = tag;
    }

    /** Returns the file in the folder of the user's state that holds the choice. */
    public static Path file(Path stateFolder) {
        return stateFolder.resolve(FILE);
    }

    /** Returns what a user chose; that of the machine where the file is missing, cannot be read or names no language of ours. */
    public static LanguageChoice read(Path stateFolder) {
        String written;
        try {
            written =
                    Files.readString(file(stateFolder), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            return MACHINE; // as the start scripts have it
        }
        for (LanguageChoice choice : values()) {
            if (choice.tag.equals(written)) {
                return choice;
            }
        }
        return MACHINE;
    }

    /**
     * Keeps this choice for the next start.
     *
     * @throws IOException if the file cannot be written or taken away
     */
    public void write(Path stateFolder) throws IOException {
        Path file = file(stateFolder);
        if (this == MACHINE) {
            Files.deleteIfExists(file);
            return;
        }
        Files.createDirectories(stateFolder);
        Path fresh = Files.createTempFile(stateFolder, FILE, ".new");
        try {
            Files.writeString(fresh, tag + "\n", StandardCharsets.UTF_8);
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    /** Returns whether the environment asks for a language by itself, which goes before every choice. */
    public static boolean isOverruled(Map<String, String> environment) {
        return environment.getOrDefault("OHMSTEAD_JAVA_OPTIONS", "").contains("-D" + Language.PROPERTY + "=");
    }

    /**
     * Returns what Ohmstead speaks on a machine when nothing is chosen.
     *
     * @param properties of Java as it started; the framework changes the default locale to what is chosen, but not these
     */
    public static Locale machine(Properties properties) {
        return Language.choose(
                null,
                new Locale(properties.getProperty("user.language", ""), properties.getProperty("user.country", "")));
    }
}

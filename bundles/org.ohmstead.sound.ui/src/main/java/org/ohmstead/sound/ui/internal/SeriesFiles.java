// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.SoundSeriesCsv;
import org.ohmstead.signal.sound.SoundSeries;

/** The series of a project: each a file in its folder {@value SoundSeriesCsv#FOLDER}, called by the file's name without its end. */
final class SeriesFiles {
    private static final String END = ".csv";

    private final Path folder;

    /** Makes access to the series of a project. */
    SeriesFiles(Path projectFolder) {
        folder = projectFolder.resolve(SoundSeriesCsv.FOLDER);
    }

    Path folder() {
        return folder;
    }

    /** Returns the names in alphabetical order; none when there is no folder. */
    List<String> names() throws ExchangeException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(END) && !name.startsWith("."))
                    .map(name -> name.substring(0, name.length() - END.length()))
                    .sorted(String.CASE_INSENSITIVE_ORDER)
                    .toList();
        } catch (IOException failure) {
            throw ExchangeException.failed(Texts.say("files.unlisted", folder), failure);
        }
    }

    SoundSeries read(String name) throws ExchangeException {
        return SoundSeriesCsv.read(file(name));
    }

    /** Writes a series, and makes the folder if it is not there. */
    void write(String name, SoundSeries series) throws ExchangeException {
        try {
            Files.createDirectories(folder);
        } catch (IOException failure) {
            throw ExchangeException.failed(Texts.say("files.unmade", folder), failure);
        }
        SoundSeriesCsv.write(series, file(name));
    }

    private Path file(String name) {
        return folder.resolve(name + END);
    }

    /** Returns a name that is not taken yet: the wish, or the wish with the next number. */
    static String free(String wish, List<String> taken) {
        String name = wish;
        for (int number = 2; contains(taken, name); number++) {
            name = wish + "-" + number;
        }
        return name;
    }

    private static boolean contains(List<String> taken, String name) {
        return taken.stream().anyMatch(name::equalsIgnoreCase);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A folder of this virtual machine's own, for readers that want a file. It goes when the virtual machine ends. */
final class Desk {
    private static final Path FOLDER = folder();

    private Desk() {}

    private static Path folder() {
        try {
            Path folder = Files.createTempDirectory("ohmstead-fuzz");
            Runtime.getRuntime().addShutdownHook(new Thread(() -> clear(folder)));
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes a file of a name, in place of the last one of that name. */
    static Path file(String name, byte[] content) {
        try {
            return Files.write(FOLDER.resolve(name), content);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns an empty folder of a name; what was there is gone. */
    static Path emptyFolder(String name) {
        Path folder = FOLDER.resolve(name);
        clear(folder);
        try {
            return Files.createDirectory(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Returns the names of what lies in a folder. */
    static List<String> names(Path folder) {
        try (Stream<Path> there = Files.list(folder)) {
            return there.map(path -> path.getFileName().toString()).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void clear(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> there = Files.walk(folder)) {
            for (Path path : there.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

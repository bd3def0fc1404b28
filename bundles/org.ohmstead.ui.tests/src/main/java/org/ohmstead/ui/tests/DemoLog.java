// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The demo's project with its log, made once by the demo itself; every test works on a copy. */
final class DemoLog {
    private static Path made;

    private DemoLog() {}

    /** Copies the demo's project with all its readings into a folder and returns it. */
    static synchronized Path copyInto(Path folder) throws Exception {
        Bench bench = Bench.running();
        if (made == null) {
            bench.close();
            bench.command("org.ohmstead.workbench.demo");
            bench.pump().until(() -> bench.desk().session().isPresent(), "The demo was not opened.");
            bench.awaitEntries(Bench.DEMO_READINGS);
            made = bench.session().folder();
            bench.close();
        }
        Path copy = folder.resolve(made.getFileName());
        copy(made, copy);
        return copy;
    }

    private static void copy(Path from, Path to) throws IOException {
        List<Path> all;
        try (Stream<Path> walk = Files.walk(from)) {
            all = walk.filter(path -> !path.getFileName().toString().startsWith("."))
                    .toList();
        }
        for (Path path : all) {
            Path target = to.resolve(from.relativize(path).toString());
            if (Files.isDirectory(path)) {
                Files.createDirectories(target);
            } else {
                Files.copy(path, target);
            }
        }
    }
}

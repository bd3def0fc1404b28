// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.ohmstead.measure.engine.BenchChoice;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.measure.engine.RunLimits;
import org.ohmstead.measure.engine.Runner;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Looks at a plan as if nothing of it were done, and leaves no trace. */
final class UnloggedRun {
    private UnloggedRun() {}

    /** Returns what is to be known before each item of a plan. */
    static List<DryStep> dryRun(PlanSetup setup, Catalog catalog) throws TestLogException, IOException {
        Path folder = Files.createTempDirectory("ohmstead");
        try {
            try (TestLog empty = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
                return dryRun(setup, catalog, empty);
            }
        } finally {
            delete(folder);
        }
    }

    /** Returns what is to be known before each item of a plan that a log does not hold yet. */
    static List<DryStep> dryRun(PlanSetup setup, Catalog catalog, TestLog log) throws TestLogException {
        try (Runner unused = new Runner(catalog, new BenchChoice("none", Map.of()), RunLimits.usual())) {
            return new PlanRun(setup, catalog, unused, log, Rests.NONE).dryRun().steps();
        }
    }

    private static void delete(Path folder) throws IOException {
        List<Path> files;
        try (Stream<Path> content = Files.list(folder)) {
            files = content.toList();
        }
        for (Path file : files) {
            Files.delete(file);
        }
        Files.delete(folder);
    }
}

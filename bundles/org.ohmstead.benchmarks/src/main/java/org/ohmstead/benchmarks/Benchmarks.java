// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Measures Ohmstead beside references that do the same, all in one run, and writes a table. Started by {@code product/ohmstead bench}.
 *
 * <p>Exit code 0 where everything could be measured, goals reached or not; 2 for a word that there is not; 4 where a row could not be
 * measured.
 */
public final class Benchmarks {
    private static final System.Logger LOG = System.getLogger("bench");
    private static final int WRONG_USAGE = 2;
    private static final int FAILED = 4;
    private static final int ROUNDS = 3;
    private static final int OWN_ARGUMENTS = 4;

    private Benchmarks() {}

    /** Returns all rows in the order of the table. */
    static List<Row> rows() {
        return List.of(
                new AnalysisRow(),
                new ShortCapturesRow(),
                new TransformRow(),
                new ScriptRow(
                                "search",
                                "the network nearest to a resistance, of 12 resistors up to 7; against an enumerator"
                                        + " in NumPy",
                                "measure-search")
                        .with("search", new Goal.Faster(50))
                        // Within two seconds, also the first time.
                        .with("search-first", new Goal.AtMost(2)),
                new ScriptRow("study", "the joint fit of 60 readings; against SciPy's curve_fit", "measure-study")
                        .with("fit", new Goal.Faster(20))
                        .with("fit-analytic", new Goal.Shown())
                        .with("refits", new Goal.AtMost(2)),
                new ScriptRow("heat", "a day's heat in 10,000 steps; against ngspice", "measure-heat")
                        .with("heat", new Goal.Faster(200)),
                new ScriptRow(
                                "log",
                                "a log of a million entries: open, find, verify; appending against the bare database"
                                        + " driver",
                                "measure-log")
                        .with("log-open", new Goal.AtMost(300))
                        .with("log-find", new Goal.AtMost(300))
                        .with("log-find-again", new Goal.AtMost(300))
                        .with("log-verify-first", new Goal.AtLeast(200_000))
                        .with("log-verify", new Goal.AtLeast(200_000))
                        // 70 % of the bare driver's pace.
                        .with("log-append", new Goal.TimesAsLong(1 / 0.7)),
                new ScriptRow(
                                "start",
                                "the workbench's start; against a bare one of the same platform",
                                "measure-start")
                        .with("start", new Goal.TimesAsLong(1.3))
                        .with("start-same-options", new Goal.Shown()),
                new ScriptRow(
                                "headless-start",
                                "a word's start to end; against a bare headless application of the same platform",
                                "measure-headless")
                        .with("headless-start", new Goal.TimesAsLong(1.3))
                        .with("headless-start-same-options", new Goal.Shown()),
                new ChartRow(),
                new DemoMemoryRow(),
                new HourRow());
    }

    /**
     * Runs the rows named, or all.
     *
     * @param arguments top folder of the checkout, folder of the product, a folder to work in, the file for the table; then "--list", or
     *     "--rounds=N" and names of rows
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(Arrays.asList(arguments).subList(OWN_ARGUMENTS, arguments.length));
        Path table = Path.of(arguments[3]);
        if (words.contains("--list")) {
            StringBuilder list = new StringBuilder();
            rows().forEach(row -> list.append(String.format(Locale.ROOT, "%-15s %s%n", row.name(), row.about())));
            Files.writeString(table, list);
            return;
        }
        int rounds = ROUNDS;
        List<Row> wanted = new ArrayList<>();
        for (String word : words) {
            if (word.matches("--rounds=[1-9][0-9]?")) {
                rounds = Integer.parseInt(word.substring("--rounds=".length()));
                continue;
            }
            List<Row> named =
                    rows().stream().filter(row -> row.name().equals(word)).toList();
            if (named.isEmpty()) {
                LOG.log(
                        System.Logger.Level.ERROR,
                        "there is no row \"{0}\". The rows are: {1}. Other words: --list, --rounds=N.",
                        word,
                        String.join(" ", rows().stream().map(Row::name).toList()));
                System.exit(WRONG_USAGE);
            }
            wanted.addAll(named);
        }
        Path checkout = Path.of(arguments[0]);
        Path product = Path.of(arguments[1]);
        boolean whole = measure(
                wanted.isEmpty() ? rows() : wanted, new Room(checkout, product, Path.of(arguments[2]), rounds), table);
        System.exit(whole ? 0 : FAILED);
    }

    private static boolean measure(List<Row> rows, Room room, Path table) throws IOException, InterruptedException {
        // JMH's lock is for one run on a machine; a lock that another user left behind must not stop this one.
        System.setProperty("jmh.ignoreLock", "true");
        List<Outcome> outcomes = new ArrayList<>();
        List<String> failures = new ArrayList<>();
        for (Row row : rows) {
            LOG.log(System.Logger.Level.INFO, "{0}: {1} ...", row.name(), row.about());
            Path folder = Files.createDirectory(room.folder().resolve(row.name()));
            try {
                for (Outcome outcome : row.measure(room.in(folder))) {
                    outcomes.add(outcome);
                    LOG.log(
                            System.Logger.Level.INFO,
                            "  {0} ({1}): {2}",
                            outcome.name(),
                            outcome.about(),
                            outcome.remark());
                }
            } catch (IOException e) {
                LOG.log(System.Logger.Level.ERROR, "{0} could not be measured: {1}", row.name(), e.getMessage());
                failures.add(row.name());
            } finally {
                delete(folder);
            }
            // After each row, so that a run that is stopped leaves what it has.
            Files.writeString(table, report(outcomes, failures));
        }
        return failures.isEmpty();
    }

    private static String report(List<Outcome> outcomes, List<String> failures) {
        StringBuilder report = new StringBuilder(Table.text(outcomes)).append('\n');
        outcomes.forEach(outcome -> report.append(Table.machineLine(outcome)).append('\n'));
        failures.forEach(
                failure -> report.append("bench failed=").append(failure).append('\n'));
        return report.toString();
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }
}

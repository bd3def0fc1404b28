// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;

/**
 * Compares the search with a straightforward memoised enumerator in Python with NumPy: the network nearest to a resistance from 12
 * different resistors, using up to 7. Prints both times and their ratio, by the clock and by the time of the processor, which a busy machine
 * disturbs less. The first argument is the path of the script
 * ({@code src/test/python/network_enumerator.py} unless given). The first run of the search counts too: it is printed on its own, as it
 * holds the time that the compiler of the virtual machine needs.
 */
public final class NetworkSearchBenchmark {
    private static final double[] OHMS = {1, 1.5, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10, 12};
    private static final double TARGET_OHMS = 4.1234567;
    private static final int PARTS = 7;
    private static final int RUNS = 30;
    private static final double SAME_RATIO = 1e-12;
    private static final double NANOS_PER_SECOND = 1e9;

    private NetworkSearchBenchmark() {}

    /** Runs both. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path script = Path.of(arguments.length > 0 ? arguments[0] : "src/test/python/network_enumerator.py");
        List<Stock.Item> items = new ArrayList<>();
        List<String> command = new ArrayList<>(
                List.of("/usr/bin/python3", script.toString(), Double.toString(TARGET_OHMS), Integer.toString(PARTS)));
        for (double ohms : OHMS) {
            items.add(new Stock.Item(Resistor.of(Double.toString(ohms), ohms, 0.01), 1));
            command.add(Double.toString(ohms));
        }
        SearchRequest request = SearchRequest.of(new Stock(items), TARGET_OHMS, PARTS);
        double firstSeconds = 0;
        double bestSeconds = Double.POSITIVE_INFINITY;
        double bestProcessorSeconds = Double.POSITIVE_INFINITY;
        double ohms = 0;
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        for (int run = 0; run < RUNS; run++) {
            long start = System.nanoTime();
            long processorStart = threads.getCurrentThreadCpuTime();
            SearchResult result = NetworkSearch.run(request, () -> false, done -> {});
            double processorSeconds = (threads.getCurrentThreadCpuTime() - processorStart) / NANOS_PER_SECOND;
            double seconds = (System.nanoTime() - start) / NANOS_PER_SECOND;
            firstSeconds = run == 0 ? seconds : firstSeconds;
            bestSeconds = Math.min(bestSeconds, seconds);
            bestProcessorSeconds = Math.min(bestProcessorSeconds, processorSeconds);
            Candidate best = result.candidates().get(0);
            ohms = best.ohms();
            if (run == 0) {
                print(
                        "search: %.12f ohm, %s, exact up to %d parts",
                        ohms, Ordering.text(best.network()), result.exactUpToParts());
            }
        }
        print(
                "search: first run %.3f s; best of %d: %.3f s, %.3f s of the processor",
                firstSeconds, RUNS, bestSeconds, bestProcessorSeconds);
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int code = process.waitFor();
        if (code != 0) {
            throw new IOException("The script ended with " + code + ": " + output);
        }
        double[] fields = Arrays.stream(output.trim().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        print(
                "script: %.12f ohm, %.3f s, %.3f s of the processor, %.0f values",
                fields[0], fields[1], fields[2], fields[3]);
        print(
                "ratio: %.0f to the first run, %.0f to the best; %.0f by time of the processor",
                fields[1] / firstSeconds, fields[1] / bestSeconds, fields[2] / bestProcessorSeconds);
        if (Math.abs(fields[0] / ohms - 1) > SAME_RATIO) {
            throw new IOException("The two do not agree.");
        }
        print("measured search-first ours=%.6g reference=%.6g unit=s", firstSeconds, fields[1]);
        print("measured search ours=%.6g reference=%.6g unit=s", bestSeconds, fields[1]);
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}

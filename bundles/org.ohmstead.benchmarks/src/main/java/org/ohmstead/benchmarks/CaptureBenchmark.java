// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.ohmstead.signal.CaptureException;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/** Captures from the disk to their figures. */
@State(Scope.Benchmark)
public class CaptureBenchmark {
    private static final int AT_ONCE = 2;

    /** The capture, or the folder of captures. */
    @Param("")
    public String path;

    /** Another capture for two at once. */
    @Param("")
    public String other;

    private ExecutorService threads;

    /** Makes the threads. */
    @Setup(Level.Trial)
    public void open() {
        threads = Executors.newFixedThreadPool(AT_ONCE);
    }

    /** Ends the threads. */
    @TearDown(Level.Trial)
    public void close() {
        threads.shutdown();
    }

    /** Analyses one capture. */
    @Benchmark
    public Object one() throws CaptureException {
        return CaptureJob.figures(Path.of(path));
    }

    /** Analyses two captures at once. */
    @Benchmark
    public Object two() throws InterruptedException, ExecutionException {
        List<Future<Map<String, Double>>> running = new ArrayList<>();
        for (String each : List.of(path, other)) {
            running.add(threads.submit(() -> CaptureJob.figures(Path.of(each))));
        }
        List<Map<String, Double>> all = new ArrayList<>();
        for (Future<Map<String, Double>> each : running) {
            all.add(each.get());
        }
        return all;
    }

    /** Analyses all captures of a folder. */
    @Benchmark
    public Object many() throws IOException, CaptureException {
        return CaptureJob.sums(Path.of(path));
    }
}

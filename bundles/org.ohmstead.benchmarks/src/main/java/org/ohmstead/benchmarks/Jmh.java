// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.results.BenchmarkResult;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Measures a method with JMH in a virtual machine of its own: warmed up for three stretches of a second, then five stretches that count (or
 * stretches of other lengths). The garbage collector is the product's.
 */
public final class Jmh {
    private static final int WARM_UP = 3;
    private static final int COUNTED = 5;

    private final Class<?> benchmarks;
    private final String method;
    private final Room room;
    private final List<String[]> parameters = new ArrayList<>();
    private boolean oneCore;
    private boolean once;
    private long stretchMillis = 1000;

    /**
     * Prepares a measurement.
     *
     * @param benchmarks the class with the method
     * @param method its name
     * @param room where it works
     */
    public Jmh(Class<?> benchmarks, String method, Room room) {
        this.benchmarks = benchmarks;
        this.method = method;
        this.room = room;
    }

    /** Holds the virtual machine, its compilers and its collector to one core. */
    public Jmh onOneCore() {
        oneCore = true;
        return this;
    }

    /** Sets a parameter of the benchmark. */
    public Jmh with(String name, Object value) {
        parameters.add(new String[] {name, value.toString()});
        return this;
    }

    /** Sets the length of a stretch. */
    public Jmh stretch(long millis) {
        stretchMillis = millis;
        return this;
    }

    /** Makes each stretch do the work once, after one stretch to warm up: for work that is itself long and repeats itself. */
    public Jmh once() {
        once = true;
        return this;
    }

    /** Measures, and returns the seconds for doing the work once, of each stretch that counts. */
    public double[] run() throws IOException {
        TimeValue stretch = TimeValue.milliseconds(stretchMillis);
        ChainedOptionsBuilder options = new OptionsBuilder()
                .include("^" + benchmarks.getName().replace(".", "\\.") + "\\." + method + "$")
                .forks(1)
                .threads(1)
                .timeUnit(TimeUnit.SECONDS)
                .jvm(room.java(oneCore).toString())
                .jvmArgs("-XX:+UseSerialGC", "-Xms1g", "-Xmx2g", "-Djava.awt.headless=true")
                .shouldFailOnError(true)
                .verbosity(VerboseMode.SILENT);
        if (once) {
            options = options.mode(Mode.SingleShotTime).warmupIterations(1).measurementIterations(1);
        } else {
            options = options.mode(Mode.AverageTime)
                    .warmupIterations(WARM_UP)
                    .warmupTime(stretch)
                    .measurementIterations(COUNTED)
                    .measurementTime(stretch);
        }
        for (String[] parameter : parameters) {
            options = options.param(parameter[0], parameter[1]);
        }
        try {
            return seconds(new Runner(options.build()).runSingle());
        } catch (RunnerException e) {
            throw new IOException(benchmarks.getSimpleName() + "." + method + " could not be measured: " + e, e);
        }
    }

    private static double[] seconds(RunResult result) {
        BenchmarkParams params = result.getParams();
        if (params.getTimeUnit() != TimeUnit.SECONDS) {
            throw new IllegalStateException("times come in " + params.getTimeUnit() + " instead of seconds");
        }
        List<Double> times = new ArrayList<>();
        for (BenchmarkResult fork : result.getBenchmarkResults()) {
            for (IterationResult stretch : fork.getIterationResults()) {
                times.add(stretch.getPrimaryResult().getScore());
            }
        }
        return times.stream().mapToDouble(Double::doubleValue).toArray();
    }
}

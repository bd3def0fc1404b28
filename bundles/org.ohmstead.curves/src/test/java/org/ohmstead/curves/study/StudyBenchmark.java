// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.DoubleSupplier;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.model.Mode;

/**
 * Compares the joint fit of 60 readings with standard errors and two predictions with the same in SciPy (curve_fit, same
 * model), in one run on one machine; then times 10,000 refits. The first argument is the path of the script ({@code
 * src/test/python/power_fit.py} unless given).
 */
public final class StudyBenchmark {
    private static final double LEVEL = 0.95;
    private static final int WARM_UP = 20_000;
    private static final int RUNS = 5_000;
    private static final int SCRIPT_RUNS = 500;
    private static final int REFITS = 10_000;
    private static final double SAME_RATIO = 1e-6;
    private static final double NANOS_PER_SECOND = 1e9;

    private StudyBenchmark() {}

    /** Runs both, the script once in the middle. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path script = Path.of(arguments.length > 0 ? arguments[0] : "src/test/python/power_fit.py");
        List<StudyPoint> points = StudyData.sixty();
        StudyRequest request = StudyRequest.of(points).withAllowed(Set.of(ModelKind.UNREGULATED));
        Terrain terrain = Terrain.of(points);
        long first = System.nanoTime();
        double sum = read(((PowerStudy) PowerStudy.of(request)).fit());
        print("first study: %.1f ms (sum %.6g)", (System.nanoTime() - first) / 1e6, sum);
        DoubleSupplier fit = () ->
                read(ModelSelection.fit(ModelKind.UNREGULATED, terrain, request).orElseThrow());
        DoubleSupplier whole = () -> read(((PowerStudy) PowerStudy.of(request)).fit());
        double[] fitSeconds = time(fit);
        double[] wholeSeconds = time(whole);
        double[][] results = SciPyScript.run(script, points, SCRIPT_RUNS);
        fitSeconds = lower(fitSeconds, time(fit));
        wholeSeconds = lower(wholeSeconds, time(whole));
        print(
                "fit, standard errors, two predictions: best %.1f us, median %.1f us",
                1e6 * fitSeconds[0], 1e6 * fitSeconds[1]);
        print(
                "the same with the checks of a whole study: best %.1f us, median %.1f us",
                1e6 * wholeSeconds[0], 1e6 * wholeSeconds[1]);
        double[] scriptSeconds = results[1];
        print(
                "script: best %.1f us, median %.1f us; with the analytic Jacobian %.1f us, %.1f us",
                1e6 * scriptSeconds[0], 1e6 * scriptSeconds[1], 1e6 * scriptSeconds[2], 1e6 * scriptSeconds[3]);
        print(
                "ratio of the best times: fit %.0f and %.0f, whole study %.0f and %.0f",
                scriptSeconds[0] / fitSeconds[0],
                scriptSeconds[2] / fitSeconds[0],
                scriptSeconds[0] / wholeSeconds[0],
                scriptSeconds[2] / wholeSeconds[0]);
        print(
                "ratio of the median times: fit %.0f and %.0f, whole study %.0f and %.0f",
                scriptSeconds[1] / fitSeconds[1],
                scriptSeconds[3] / fitSeconds[1],
                scriptSeconds[1] / wholeSeconds[1],
                scriptSeconds[3] / wholeSeconds[1]);
        StudyRequest all = StudyRequest.of(points);
        double[] choice = time(() -> ((PowerStudy) PowerStudy.of(all)).fit().chiSquared());
        print("choice among all models: best %.0f us", 1e6 * choice[0]);
        PowerStudy study = (PowerStudy) PowerStudy.of(request);
        double refitSeconds = Double.POSITIVE_INFINITY;
        for (int round = 0; round < 3; round++) {
            long start = System.nanoTime();
            Bootstrap bootstrap = Bootstrap.of(study.fit(), REFITS, round);
            CoverageInterval gain = bootstrap.interval(StageParameter.GAIN, 0.95);
            double seconds = (System.nanoTime() - start) / NANOS_PER_SECOND;
            refitSeconds = Math.min(refitSeconds, seconds);
            print("%d refits: %.3f s, gain %.4f to %.4f", REFITS, seconds, gain.lower(), gain.upper());
        }
        double gain = study.fit().parameter(StageParameter.GAIN).value();
        if (Math.abs(results[0][0] / gain - 1) > SAME_RATIO) {
            throw new IOException("The two do not agree: " + results[0][0] + " and " + gain + ".");
        }
        print("measured fit ours=%.6g reference=%.6g unit=s", fitSeconds[1], scriptSeconds[1]);
        print("measured refits ours=%.6g unit=s", refitSeconds);
        print("measured fit-analytic ours=%.6g reference=%.6g unit=s", fitSeconds[1], scriptSeconds[3]);
    }

    /** Returns the best and the middle time in seconds, once warm. */
    private static double[] time(DoubleSupplier work) {
        double sum = 0;
        for (int run = 0; run < WARM_UP; run++) {
            sum += work.getAsDouble();
        }
        double[] seconds = new double[RUNS];
        for (int run = 0; run < RUNS; run++) {
            long start = System.nanoTime();
            sum += work.getAsDouble();
            seconds[run] = (System.nanoTime() - start) / NANOS_PER_SECOND;
        }
        Arrays.sort(seconds);
        if (Double.isNaN(sum)) {
            throw new IllegalStateException("The work gave no number.");
        }
        return new double[] {seconds[0], seconds[RUNS / 2]};
    }

    private static double[] lower(double[] one, double[] other) {
        return new double[] {Math.min(one[0], other[0]), Math.min(one[1], other[1])};
    }

    private static double read(ModelFit fit) {
        double sum = 0;
        for (FittedParameter parameter : fit.parameters()) {
            sum += parameter.estimate().standardUncertainty();
        }
        if (fit.predict(13, 4, Mode.STEREO) instanceof PowerPrediction.Predicted one
                && fit.predict(16, 2, Mode.BRIDGED) instanceof PowerPrediction.Predicted other) {
            sum += one.confidenceInterval(LEVEL).width()
                    + other.confidenceInterval(LEVEL).width();
        }
        return sum;
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}

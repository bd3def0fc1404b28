// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.ohmstead.curves.internal.PeakPower;
import org.ohmstead.curves.internal.StageCurve;
import org.ohmstead.curves.internal.StageSolver;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.model.Mode;

/**
 * Refits of a fit's own curve with new scatter (parametric bootstrap; B. Efron, 1979): what the values and predictions
 * would have been with other luck, without linearization. Immutable.
 */
public final class Bootstrap {
    private static final int FEWEST = 100;

    private final ModelFit fit;
    private final double[][] found;
    private final int failed;

    private Bootstrap(ModelFit fit, double[][] found, int failed) {
        this.fit = fit;
        this.found = found;
        this.failed = failed;
    }

    /**
     * Returns the refits of a fit, by plain least squares even if it was robust: the new scatter has no outliers.
     *
     * @param fit what to repeat; the scatter is normal, of the readings' uncertainties or of what the fit took instead
     * @param refits how many, at least 100
     * @param seed the same seed gives the same refits
     */
    public static Bootstrap of(ModelFit fit, int refits, long seed) {
        if (refits < FEWEST) {
            throw new IllegalArgumentException("refits is " + refits + " but must be at least " + FEWEST + ".");
        }
        Terrain terrain = fit.terrain();
        ModelForm form = new ModelForm(fit.kind(), terrain);
        int[] free = form.free();
        List<ParameterBounds> bounds = fit.request().bounds();
        StageSolver solver = new StageSolver(terrain.data(), free, form.lower(bounds), form.upper(bounds));
        double[] curve = ModelSelection.fittedWatts(fit);
        double factor = fit.uncertaintyFromScatter() ? Math.sqrt(fit.chiSquared() / fit.freedom()) : 1;
        double[] deviations = Arrays.stream(terrain.data().standardUncertaintyWatts())
                .map(watts -> factor * watts)
                .toArray();
        double[] ones = new double[curve.length];
        Arrays.fill(ones, 1);
        SplittableRandom random = new SplittableRandom(seed);
        double[] watts = new double[curve.length];
        double[][] found = new double[refits][];
        int count = 0;
        for (int refit = 0; refit < refits; refit++) {
            for (int i = 0; i < watts.length; i++) {
                watts[i] = curve[i] + deviations[i] * random.nextGaussian();
            }
            double[] slots = fit.slots();
            if (solver.search(slots, watts, ones) >= 0) {
                found[count] = slots;
                count++;
            }
        }
        return new Bootstrap(fit, Arrays.copyOf(found, count), refits - count);
    }

    /** Returns how many refits came to rest. */
    public int refits() {
        return found.length;
    }

    /** Returns how many refits did not come to rest and are left out. */
    public int failed() {
        return failed;
    }

    /**
     * Returns where the middle share of the refits has a value.
     *
     * @param parameter which
     * @param level the share, strictly between 0 and 1
     */
    public CoverageInterval interval(StageParameter parameter, double level) {
        fit.parameter(parameter);
        double[] values = new double[found.length];
        Arrays.setAll(values, i -> parameter.sign() * found[i][parameter.slot()]);
        return middle(values, level);
    }

    /**
     * Returns where the middle share of the refits has the power at a voltage and load.
     *
     * @param supplyVolts at the terminals, above 0
     * @param loadOhms as connected, above 0
     * @param mode how the channels meet it
     * @param level the share, strictly between 0 and 1
     */
    public CoverageInterval powerInterval(double supplyVolts, double loadOhms, Mode mode, double level) {
        StudyPoint place = StudyPoint.of(mode, loadOhms, supplyVolts, 0, 0);
        double[] gradient = new double[StageCurve.SLOTS];
        double[] values = new double[found.length];
        for (int i = 0; i < values.length; i++) {
            double peak = StageCurve.peakVolts(found[i], supplyVolts, place.channelOhms(), 0, gradient);
            values[i] = place.channels() * PeakPower.watts(peak, place.channelOhms());
        }
        return middle(values, level);
    }

    private static CoverageInterval middle(double[] values, double level) {
        if (values.length < FEWEST) {
            throw new IllegalStateException("Only " + values.length
                    + " refits came to rest, too few for an interval. The readings do not hold the model.");
        }
        Arrays.sort(values);
        return new CoverageInterval(quantile(values, (1 - level) / 2), quantile(values, (1 + level) / 2), level);
    }

    /** Linear between order statistics, the first at 0 and the last at 1. */
    private static double quantile(double[] sorted, double share) {
        double place = share * (sorted.length - 1);
        int below = (int) place;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }
}

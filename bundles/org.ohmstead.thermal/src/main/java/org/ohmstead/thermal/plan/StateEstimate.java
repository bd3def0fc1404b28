// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.stream.DoubleStream;
import org.ohmstead.thermal.HeatModel;

/**
 * What the state of a model most likely is when some of its points have been measured: the state that was reckoned,
 * changed as little as makes the model agree with the measured temperatures. A change of a mode counts the more the
 * shorter its time constant is (the sum of the squared changes over the time constants is least), as what is slow
 * remembers longest what was reckoned wrong. Temperatures that contradict each other are weighed by their
 * uncertainties.
 *
 * @param state a number for each mode, in kelvins
 * @param changeKelvin by how much that is more than what was reckoned, for each mode
 * @param misfitKelvin the greatest difference that is left between a measured point and the model, at least 0
 */
public record StateEstimate(List<Double> state, List<Double> changeKelvin, double misfitKelvin) {
    /** How loosely the reckoned state is held to, as a multiple of the greatest uncertainty. */
    private static final double LOOSE = 1000;

    public StateEstimate {
        state = List.copyOf(state);
        changeKelvin = List.copyOf(changeKelvin);
        Require.size(changeKelvin.size(), state.size(), "changeKelvin");
        Require.notNegative(misfitKelvin, "misfitKelvin");
    }

    /**
     * A measured temperature.
     *
     * @param pointId which point of the model
     * @param celsius how warm it is
     * @param uncertaintyKelvin standard uncertainty, above 0
     */
    public record Measured(String pointId, double celsius, double uncertaintyKelvin) {
        public Measured {
            Require.named(pointId, "pointId");
            Require.finite(celsius, "celsius");
            Require.positive(uncertaintyKelvin, "uncertaintyKelvin");
        }
    }

    /**
     * Estimates a state. Give a temperature for every copy of a body that the model holds.
     *
     * @param model what gets warm
     * @param reckoned the state as it should be
     * @param watts heat of each source at the moment of measuring, in watts
     * @param ambientCelsius temperature of the air
     * @param measured what was measured; may be empty
     */
    public static StateEstimate of(
            HeatModel model,
            List<Double> reckoned,
            List<Double> watts,
            double ambientCelsius,
            List<Measured> measured) {
        Require.size(reckoned.size(), model.modeCount(), "reckoned");
        Require.size(watts.size(), model.sources().size(), "watts");
        double[] state = Plant.plain(reckoned);
        double[] powers = Plant.plain(watts);
        double[][] spread = spread(model, measured);
        for (Measured each : measured) {
            int point = point(model, each);
            double[] weights = weights(model, point);
            double misfit = each.celsius() - ambientCelsius - model.riseKelvin(point, state, powers);
            update(state, spread, weights, misfit, each.uncertaintyKelvin());
        }
        double worst = 0;
        for (Measured each : measured) {
            double modelled = ambientCelsius + model.riseKelvin(point(model, each), state, powers);
            worst = Math.max(worst, Math.abs(each.celsius() - modelled));
        }
        double[] change = new double[state.length];
        for (int mode = 0; mode < change.length; mode++) {
            change[mode] = state[mode] - reckoned.get(mode);
        }
        return new StateEstimate(
                DoubleStream.of(state).boxed().toList(),
                DoubleStream.of(change).boxed().toList(),
                worst);
    }

    private static int point(HeatModel model, Measured measured) {
        int point = model.pointIndex(measured.pointId());
        if (point < 0) {
            throw new IllegalArgumentException(
                    "measured names the point \"" + measured.pointId() + "\", which the model has not");
        }
        return point;
    }

    private static double[][] spread(HeatModel model, List<Measured> measured) {
        double slowest = 0;
        for (int mode = 0; mode < model.modeCount(); mode++) {
            slowest = Math.max(slowest, model.tauSeconds(mode));
        }
        double loose = LOOSE
                * measured.stream()
                        .mapToDouble(Measured::uncertaintyKelvin)
                        .max()
                        .orElse(1);
        double[][] spread = new double[model.modeCount()][model.modeCount()];
        for (int mode = 0; mode < spread.length; mode++) {
            spread[mode][mode] = loose * loose * model.tauSeconds(mode) / slowest;
        }
        return spread;
    }

    private static double[] weights(HeatModel model, int point) {
        double[] weights = new double[model.modeCount()];
        double[] none = new double[model.sources().size()];
        for (int mode = 0; mode < weights.length; mode++) {
            double[] one = model.cold();
            one[mode] = 1;
            weights[mode] = model.riseKelvin(point, one, none);
        }
        return weights;
    }

    /** Takes one measurement in: recursive weighted least squares. */
    private static void update(double[] state, double[][] spread, double[] weights, double misfit, double uncertainty) {
        int modes = state.length;
        double[] along = new double[modes];
        double variance = uncertainty * uncertainty;
        for (int i = 0; i < modes; i++) {
            for (int k = 0; k < modes; k++) {
                along[i] += spread[i][k] * weights[k];
            }
        }
        for (int i = 0; i < modes; i++) {
            variance += weights[i] * along[i];
        }
        for (int i = 0; i < modes; i++) {
            state[i] += along[i] / variance * misfit;
            for (int k = 0; k < modes; k++) {
                spread[i][k] -= along[i] * along[k] / variance;
            }
        }
    }
}

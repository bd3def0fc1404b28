// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Arrays;
import org.ohmstead.metrology.FitModel;

/**
 * The temperature of a record's readings for one or two time constants: air + sum of R_k phi_k(t) + A_k e^(-(t - t_1)/tau_k), where phi_k is the
 * response of a stage of 1 K/W to the powers. The parameters are the air (unless given), then for each stage ln tau, ln R (if heated), and A
 * (unless it starts cold). The condition of an observation is the number of its reading.
 *
 * <p>The whole curve is worked out once per set of parameters and kept for the readings asked for next; one fit uses one object.
 */
final class WarmingCurve implements FitModel {
    private final double[] times;
    private final HeatRecord record;
    private final boolean heated;
    private final int stageCount;
    private double[] keptParameters = {};
    private double[] values = {};
    private double[][] gradients = {};

    WarmingCurve(HeatRecord record, int stageCount) {
        this.record = record;
        this.stageCount = stageCount;
        this.times =
                record.readings().stream().mapToDouble(HeatReading::seconds).toArray();
        this.heated = record.powers().steps().stream().anyMatch(step -> step.shared()[0] != 0);
    }

    boolean heated() {
        return heated;
    }

    boolean findsAir() {
        return record.airCelsius().isEmpty();
    }

    /** Returns where the parameters of a stage begin; the first is ln tau. */
    int stageAt(int stage) {
        return (findsAir() ? 1 : 0) + stage * stageWidth();
    }

    int parameterCount() {
        return stageAt(stageCount);
    }

    private int stageWidth() {
        return 1 + (heated ? 1 : 0) + (record.startsCold() ? 0 : 1);
    }

    @Override
    public double value(double[] parameters, double[] conditions) {
        keep(parameters);
        return values[(int) conditions[0]];
    }

    @Override
    public double[] gradient(double[] parameters, double[] conditions) {
        keep(parameters);
        return gradients[(int) conditions[0]].clone();
    }

    /** Returns what stands beside the linear parameters for some time constants: air, then R and A of each stage. */
    double[][] columns(double[] taus) {
        double[][] rows = new double[times.length][(findsAir() ? 1 : 0) + taus.length * (stageWidth() - 1)];
        for (int stage = 0; stage < taus.length; stage++) {
            double[][] response = response(taus[stage]);
            for (int i = 0; i < times.length; i++) {
                int at = (findsAir() ? 1 : 0) + stage * (stageWidth() - 1);
                if (heated) {
                    rows[i][at] = response[0][i];
                    at++;
                }
                if (!record.startsCold()) {
                    rows[i][at] = Math.exp((times[0] - times[i]) / taus[stage]);
                }
                if (findsAir()) {
                    rows[i][0] = 1;
                }
            }
        }
        return rows;
    }

    /** Returns the parameters for some time constants and the linear ones beside them; empty when a resistance is not above 0. */
    double[] parameters(double[] taus, double[] linear) {
        double[] parameters = new double[parameterCount()];
        int from = 0;
        if (findsAir()) {
            parameters[0] = linear[from];
            from++;
        }
        for (int stage = 0; stage < taus.length; stage++) {
            int at = stageAt(stage);
            parameters[at] = Math.log(taus[stage]);
            at++;
            if (heated) {
                if (!(linear[from] > 0)) {
                    return new double[0];
                }
                parameters[at] = Math.log(linear[from]);
                at++;
                from++;
            }
            if (!record.startsCold()) {
                parameters[at] = linear[from];
                from++;
            }
        }
        return parameters;
    }

    private void keep(double[] parameters) {
        if (Arrays.equals(parameters, keptParameters)) {
            return;
        }
        values = new double[times.length];
        gradients = new double[times.length][parameters.length];
        Arrays.fill(values, findsAir() ? parameters[0] : record.airCelsius().getAsDouble());
        for (int i = 0; findsAir() && i < times.length; i++) {
            gradients[i][0] = 1;
        }
        for (int stage = 0; stage < stageCount; stage++) {
            addStage(parameters, stageAt(stage));
        }
        keptParameters = parameters.clone();
    }

    private void addStage(double[] parameters, int at) {
        double tau = Math.exp(parameters[at]);
        double resistance = heated ? Math.exp(parameters[at + 1]) : 0;
        int excessAt = at + (heated ? 2 : 1);
        double excess = record.startsCold() ? 0 : parameters[excessAt];
        double[][] response = response(tau);
        for (int i = 0; i < times.length; i++) {
            double left = Math.exp((times[0] - times[i]) / tau);
            values[i] += resistance * response[0][i] + excess * left;
            gradients[i][at] = resistance * response[1][i] + excess * left * (times[i] - times[0]) / tau;
            if (heated) {
                gradients[i][at + 1] = resistance * response[0][i];
            }
            if (!record.startsCold()) {
                gradients[i][excessAt] = left;
            }
        }
    }

    /** Returns the response of a stage of 1 K/W at the readings, and its slope over ln tau. */
    private double[][] response(double tau) {
        double[][] response = new double[2][times.length];
        if (!heated) {
            return response;
        }
        int step = 0;
        double now = 0;
        double stepEnd = record.powers().steps().get(0).seconds();
        double[] at = new double[2];
        for (int i = 0; i < times.length; i++) {
            while (step < record.powers().steps().size() - 1 && stepEnd < times[i]) {
                move(at, watts(step), stepEnd - now, tau);
                now = stepEnd;
                step++;
                stepEnd += record.powers().steps().get(step).seconds();
            }
            move(at, watts(step), times[i] - now, tau);
            now = times[i];
            response[0][i] = at[0];
            response[1][i] = at[1];
        }
        return response;
    }

    private double watts(int step) {
        return record.powers().steps().get(step).shared()[0];
    }

    private static void move(double[] at, double watts, double seconds, double tau) {
        double left = Math.exp(-seconds / tau);
        at[1] = (at[1] + (at[0] - watts) * seconds / tau) * left;
        at[0] = watts + (at[0] - watts) * left;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import org.ohmstead.metrology.FitModel;

/**
 * P = n r max(0, g V - V_s)²/(2 (r + R_s)²); parameters g, V_s, R_s; conditions V, r (ohms per channel), n
 * (channels). Not defined for a source resistance that cancels the load.
 */
public final class OutputStageModel implements FitModel {

    @Override
    public double value(double[] parameters, double[] conditions) {
        double total = conditions[1] + parameters[2];
        double open = open(parameters, conditions);
        return total > 0 ? conditions[2] * conditions[1] * open * open / (2 * total * total) : Double.NaN;
    }

    @Override
    public double[] gradient(double[] parameters, double[] conditions) {
        double total = conditions[1] + parameters[2];
        double open = open(parameters, conditions);
        double perOpenVolt = conditions[2] * conditions[1] * open / (total * total);
        return new double[] {perOpenVolt * conditions[0], -perOpenVolt, -perOpenVolt * open / total};
    }

    private static double open(double[] parameters, double[] conditions) {
        return Math.max(0, parameters[0] * conditions[0] - parameters[1]);
    }
}

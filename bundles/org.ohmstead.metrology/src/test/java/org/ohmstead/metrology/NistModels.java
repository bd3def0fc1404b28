// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static java.lang.Math.exp;
import static java.lang.Math.log;
import static java.lang.Math.pow;

/** The models of the nonlinear NIST sets with their gradients, derived by hand from the formulas in the data files. */
final class NistModels {

    private interface Evaluation {
        /** Returns the value followed by the gradient. */
        double[] at(double[] b, double x);
    }

    private NistModels() {}

    static FitModel named(String name) {
        return switch (name) {
            case "Misra1a", "BoxBOD" -> model(NistModels::saturatingExponential);
            case "Misra1b" -> model(NistModels::misra1b);
            case "DanWood" -> model(NistModels::power);
            case "Chwirut2" -> model(NistModels::chwirut);
            case "Roszman1" -> model(NistModels::roszman);
            case "Eckerle4" -> model(NistModels::gaussian);
            case "Rat42" -> model(NistModels::logistic);
            case "Rat43" -> model(NistModels::generalLogistic);
            case "MGH09" -> model(NistModels::mgh09);
            case "MGH10" -> model(NistModels::mgh10);
            case "Bennett5" -> model(NistModels::bennett);
            case "Kirby2" -> model((b, x) -> rational(b, x, 2));
            case "Hahn1", "Thurber" -> model((b, x) -> rational(b, x, 3));
            default -> throw new IllegalArgumentException("name is " + name + " but must be a NIST set.");
        };
    }

    private static FitModel model(Evaluation evaluation) {
        return new FitModel() {
            @Override
            public double value(double[] parameters, double[] conditions) {
                return evaluation.at(parameters, conditions[0])[0];
            }

            @Override
            public double[] gradient(double[] parameters, double[] conditions) {
                double[] all = evaluation.at(parameters, conditions[0]);
                double[] gradient = new double[all.length - 1];
                System.arraycopy(all, 1, gradient, 0, gradient.length);
                return gradient;
            }
        };
    }

    private static double[] saturatingExponential(double[] b, double x) {
        double e = exp(-b[1] * x);
        return new double[] {b[0] * (1 - e), 1 - e, b[0] * x * e};
    }

    private static double[] misra1b(double[] b, double x) {
        double s = 1 + b[1] * x / 2;
        return new double[] {b[0] * (1 - 1 / (s * s)), 1 - 1 / (s * s), b[0] * x / (s * s * s)};
    }

    private static double[] power(double[] b, double x) {
        double p = pow(x, b[1]);
        return new double[] {b[0] * p, p, b[0] * p * log(x)};
    }

    private static double[] chwirut(double[] b, double x) {
        double d = b[1] + b[2] * x;
        double y = exp(-b[0] * x) / d;
        return new double[] {y, -x * y, -y / d, -x * y / d};
    }

    private static double[] roszman(double[] b, double x) {
        double distance = x - b[3];
        double norm = Math.PI * (distance * distance + b[2] * b[2]);
        double y = b[0] - b[1] * x - Math.atan(b[2] / distance) / Math.PI;
        return new double[] {y, 1, -x, -distance / norm, -b[2] / norm};
    }

    private static double[] gaussian(double[] b, double x) {
        double z = (x - b[2]) / b[1];
        double e = exp(-z * z / 2) / b[1];
        double y = b[0] * e;
        return new double[] {y, e, y * (z * z - 1) / b[1], y * z / b[1]};
    }

    private static double[] logistic(double[] b, double x) {
        double e = exp(b[1] - b[2] * x);
        double y = b[0] / (1 + e);
        double slope = -y * e / (1 + e);
        return new double[] {y, 1 / (1 + e), slope, -x * slope};
    }

    private static double[] generalLogistic(double[] b, double x) {
        double e = exp(b[1] - b[2] * x);
        double root = pow(1 + e, -1 / b[3]);
        double y = b[0] * root;
        double slope = -y * e / (1 + e) / b[3];
        return new double[] {y, root, slope, -x * slope, y * log(1 + e) / (b[3] * b[3])};
    }

    private static double[] mgh09(double[] b, double x) {
        double top = x * x + x * b[1];
        double bottom = x * x + x * b[2] + b[3];
        double y = b[0] * top / bottom;
        return new double[] {y, top / bottom, b[0] * x / bottom, -y * x / bottom, -y / bottom};
    }

    private static double[] mgh10(double[] b, double x) {
        double d = x + b[2];
        double e = exp(b[1] / d);
        double y = b[0] * e;
        return new double[] {y, e, y / d, -y * b[1] / (d * d)};
    }

    private static double[] bennett(double[] b, double x) {
        double p = pow(b[1] + x, -1 / b[2]);
        double y = b[0] * p;
        return new double[] {y, p, -y / (b[2] * (b[1] + x)), y * log(b[1] + x) / (b[2] * b[2])};
    }

    private static double[] rational(double[] b, double x, int degree) {
        double top = 0;
        double bottom = 1;
        for (int k = degree; k >= 0; k--) {
            top = top * x + b[k];
        }
        double rest = 0;
        for (int k = degree; k >= 1; k--) {
            rest = (rest + b[degree + k]) * x;
        }
        bottom += rest;
        double[] all = new double[2 * degree + 2];
        all[0] = top / bottom;
        for (int k = 0; k <= degree; k++) {
            all[1 + k] = pow(x, k) / bottom;
        }
        for (int k = 1; k <= degree; k++) {
            all[1 + degree + k] = -all[0] * pow(x, k) / bottom;
        }
        return all;
    }
}

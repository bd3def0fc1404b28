// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * The modes of a network C dT/dt = P - G T. Nodes without capacity are put aside (their rows give their temperatures at once); the rest is
 * made symmetric by the roots of the capacities and split into eigenvectors, each a mode of its own.
 */
final class NetworkModes {
    /** How far the settled temperatures by the modes may lie from those of the linear equations, relative to them. */
    private static final double AGREEMENT = 1e-6;

    private final int bodies;
    private final int[] heated;
    private final double[] rootCapacity;
    private final double[] rates;
    private final RealMatrix vectors;
    /** Rise of each node per kelvin of each body; for a body itself 1. */
    private final RealMatrix fromBodies;
    /** Rise of each node per watt into each node, at once. */
    private final RealMatrix atOnce;
    /** Watts that reach each body per watt into each node. */
    private final RealMatrix intoBodies;

    /**
     * @param conductance of all nodes, bodies first, in watts per kelvin
     * @param joulesPerKelvin of the bodies
     * @param heated the node that each source heats
     */
    NetworkModes(double[][] conductance, double[] joulesPerKelvin, int[] heated) {
        int nodes = conductance.length;
        this.bodies = joulesPerKelvin.length;
        this.heated = heated;
        RealMatrix all = new Array2DRowRealMatrix(conductance, false);
        fromBodies = MatrixUtils.createRealMatrix(nodes, bodies);
        fromBodies.setSubMatrix(MatrixUtils.createRealIdentityMatrix(bodies).getData(), 0, 0);
        intoBodies = MatrixUtils.createRealMatrix(bodies, nodes);
        intoBodies.setSubMatrix(MatrixUtils.createRealIdentityMatrix(bodies).getData(), 0, 0);
        atOnce = MatrixUtils.createRealMatrix(nodes, nodes);
        RealMatrix reduced = all.getSubMatrix(0, bodies - 1, 0, bodies - 1);
        if (nodes > bodies) {
            RealMatrix across = all.getSubMatrix(bodies, nodes - 1, 0, bodies - 1);
            RealMatrix inverse = new LUDecomposition(all.getSubMatrix(bodies, nodes - 1, bodies, nodes - 1))
                    .getSolver()
                    .getInverse();
            RealMatrix shares = inverse.multiply(across).scalarMultiply(-1);
            fromBodies.setSubMatrix(shares.getData(), bodies, 0);
            intoBodies.setSubMatrix(shares.transpose().getData(), 0, bodies);
            atOnce.setSubMatrix(inverse.getData(), bodies, bodies);
            reduced = reduced.add(across.transpose().multiply(shares));
        }
        rootCapacity = new double[bodies];
        for (int i = 0; i < bodies; i++) {
            rootCapacity[i] = Math.sqrt(joulesPerKelvin[i]);
        }
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(symmetric(reduced));
        rates = eigen.getEigenvalues();
        vectors = eigen.getV();
        check(reduced);
    }

    private RealMatrix symmetric(RealMatrix reduced) {
        RealMatrix symmetric = reduced.copy();
        for (int i = 0; i < bodies; i++) {
            for (int j = 0; j < bodies; j++) {
                double mean = (reduced.getEntry(i, j) + reduced.getEntry(j, i)) / 2;
                symmetric.setEntry(i, j, mean / rootCapacity[i] / rootCapacity[j]);
            }
        }
        return symmetric;
    }

    private void check(RealMatrix reduced) {
        DecompositionSolver solver = new LUDecomposition(reduced).getSolver();
        for (int body = 0; body < bodies; body++) {
            double[] watts = new double[bodies];
            watts[body] = 1;
            double[] straight =
                    solver.solve(MatrixUtils.createRealVector(watts)).toArray();
            double[] state = new double[bodies];
            for (int mode = 0; mode < bodies; mode++) {
                state[mode] = vectors.getEntry(body, mode) / rootCapacity[body] / rates[mode];
            }
            double[] byModes = rises(state);
            for (int i = 0; i < bodies; i++) {
                if (!(rates[i] > 0) || !(Math.abs(byModes[i] - straight[i]) <= AGREEMENT * straight[i])) {
                    throw new IllegalArgumentException("the time constants of the network lie too far apart, "
                            + "so that small ones drown large ones; leave out the smallest heat capacity");
                }
            }
        }
    }

    void addTo(HeatModel.Builder builder) {
        int[] sources = new int[heated.length];
        for (int i = 0; i < sources.length; i++) {
            sources[i] = i;
        }
        for (int mode = 0; mode < bodies; mode++) {
            double[] gains = new double[heated.length];
            for (int source = 0; source < gains.length; source++) {
                for (int body = 0; body < bodies; body++) {
                    gains[source] += vectors.getEntry(body, mode)
                            / rootCapacity[body]
                            * intoBodies.getEntry(body, heated[source])
                            / rates[mode];
                }
            }
            builder.mode(1 / rates[mode], sources, gains);
        }
    }

    void addPoint(HeatModel.Builder builder, HeatPoint point, int node) {
        int[] modes = new int[bodies];
        double[] weights = new double[bodies];
        for (int mode = 0; mode < bodies; mode++) {
            modes[mode] = mode;
            for (int body = 0; body < bodies; body++) {
                weights[mode] += fromBodies.getEntry(node, body) * vectors.getEntry(body, mode) / rootCapacity[body];
            }
        }
        int[] sources = new int[heated.length];
        double[] direct = new double[heated.length];
        for (int source = 0; source < sources.length; source++) {
            sources[source] = source;
            direct[source] = atOnce.getEntry(node, heated[source]);
        }
        builder.point(point, modes, weights, sources, direct);
    }

    double[] rises(double[] state) {
        double[] rises = vectors.operate(state);
        for (int i = 0; i < bodies; i++) {
            rises[i] /= rootCapacity[i];
        }
        return rises;
    }

    double[] allRises(double[] state, double[] watts) {
        double[] into = new double[fromBodies.getRowDimension()];
        for (int source = 0; source < heated.length; source++) {
            into[heated[source]] += watts[source];
        }
        double[] rises = fromBodies.operate(rises(state));
        double[] added = atOnce.operate(into);
        for (int i = 0; i < rises.length; i++) {
            rises[i] += added[i];
        }
        return rises;
    }

    double[] state(double[] rises) {
        double[] scaled = new double[bodies];
        for (int i = 0; i < bodies; i++) {
            scaled[i] = rises[i] * rootCapacity[i];
        }
        return vectors.preMultiply(scaled);
    }
}

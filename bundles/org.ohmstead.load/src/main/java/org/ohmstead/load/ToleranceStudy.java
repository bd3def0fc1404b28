// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Distribution;
import org.ohmstead.metrology.MonteCarlo;

/**
 * How the value of a network scatters when each resistor may lie anywhere within its tolerance, all values equally likely and none
 * depending on another (JCGM 101 6.4.2): found by drawing many networks.
 */
public final class ToleranceStudy {
    private final double ohms;
    private final MonteCarlo draws;

    private ToleranceStudy(double ohms, MonteCarlo draws) {
        this.ohms = ohms;
        this.draws = draws;
    }

    /**
     * Draws networks.
     *
     * @param network the network with every resistor at its stated value
     * @param trials how many to draw, at least 100
     * @param seed of the random numbers; the same seed gives the same draws
     */
    public static ToleranceStudy of(Network network, int trials, long seed) {
        Checks.present(network, "network");
        List<Distribution.Rectangular> values = network.resistors().stream()
                .map(resistor -> new Distribution.Rectangular(
                        resistor.ohms() * (1 - resistor.toleranceRatio()),
                        resistor.ohms() * (1 + resistor.toleranceRatio())))
                .toList();
        MonteCarlo draws = MonteCarlo.run(drawn -> ohms(network, drawn, new int[1]), values, trials, seed);
        return new ToleranceStudy(network.ohms(), draws);
    }

    /** Returns the value in ohms with every resistor at its stated value. */
    public double nominalOhms() {
        return ohms;
    }

    /** Returns the mean of the draws in ohms. */
    public double meanOhms() {
        return draws.mean();
    }

    /** Returns the standard deviation of the draws in ohms. */
    public double standardDeviationOhms() {
        return draws.standardUncertainty();
    }

    /** Returns the interval in ohms that leaves equally many draws out below and above, for a probability between 0 and 1. */
    public CoverageInterval intervalOhms(double probability) {
        return draws.symmetricInterval(probability);
    }

    /**
     * Returns the fraction of networks that lie near enough to a target, limits included.
     *
     * @param targetOhms in ohms, above 0
     * @param ratio how far they may be off, 0.01 for 1 %, at least 0
     */
    public double probabilityWithin(double targetOhms, double ratio) {
        Checks.positive(targetOhms, "targetOhms");
        Checks.notNegative(ratio, "ratio");
        return draws.fractionAtLeast(targetOhms * (1 - ratio))
                - draws.fractionAtLeast(Math.nextUp(targetOhms * (1 + ratio)));
    }

    /** Evaluates a network with the resistors' values from left to right; {@code position} counts those taken. */
    static double ohms(Network network, double[] values, int[] position) {
        if (network instanceof Network.Single) {
            return values[position[0]++];
        }
        List<Network> members = NetworkAnalysis.members(network);
        boolean series = network instanceof Network.Series;
        double sum = 0;
        for (int i = 0; i < members.size(); i++) {
            double member = ohms(members.get(i), values, position);
            sum += series ? member : 1 / member;
        }
        return series ? sum : 1 / sum;
    }
}

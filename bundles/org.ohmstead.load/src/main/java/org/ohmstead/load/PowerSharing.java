// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;

/** One walk through a network that finds its value and each resistor's share of the power, without waste: searches ask for millions. */
final class PowerSharing {
    private final double[] values;
    private final double[] shares;
    private int position;

    private PowerSharing(double[] values, double[] shares) {
        this.values = values;
        this.shares = shares;
    }

    /**
     * Writes the shares and returns the value of the network in ohms.
     *
     * @param values the resistors' values in ohms, from left to right
     * @param shares receives the shares, in the same order
     */
    static double find(Network network, double[] values, double[] shares) {
        return new PowerSharing(values, shares).walk(network);
    }

    private double walk(Network network) {
        if (network instanceof Network.Single) {
            shares[position] = 1;
            return values[position++];
        }
        List<Network> members = NetworkAnalysis.members(network);
        boolean series = network instanceof Network.Series;
        int start = position;
        double sum = 0;
        for (int i = 0; i < members.size(); i++) {
            int from = position;
            double member = walk(members.get(i));
            // In series the same current makes the power follow the ohms, in parallel the same voltage the siemens.
            double weight = series ? member : 1 / member;
            scale(from, weight);
            sum += weight;
        }
        scale(start, 1 / sum);
        return series ? sum : 1 / sum;
    }

    private void scale(int from, double factor) {
        for (int i = from; i < position; i++) {
            shares[i] *= factor;
        }
    }
}

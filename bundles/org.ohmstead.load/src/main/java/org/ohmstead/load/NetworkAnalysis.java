// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a network of cold resistors does: its value, how it shares the power, its tolerance, and the power it takes for as long as one
 * likes. Resistors are numbered from left to right, as in {@link Network#resistors()}.
 *
 * <p>The share of the power that a resistor takes is also the weight of its tolerance: (R_i / R) dR / dR_i = P_i / P (a consequence of
 * Tellegen's theorem), and the shares add up to 1.
 */
public final class NetworkAnalysis {
    private final Network network;
    private final double ambientCelsius;
    private final double ohms;
    private final Resistor[] resistors;
    private final double[] shares;
    private final double[] allowedWatts;
    private final double limitWatts;
    private final int limiting;

    private NetworkAnalysis(Network network, double ambientCelsius) {
        this.network = network;
        this.ambientCelsius = ambientCelsius;
        int count = pieces(network);
        resistors = new Resistor[count];
        shares = new double[count];
        allowedWatts = new double[count];
        collect(network, 0, resistors);
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = resistors[i].ohms();
        }
        ohms = PowerSharing.find(network, values, shares);
        double limit = Double.POSITIVE_INFINITY;
        int which = -1;
        boolean rated = true;
        for (int i = 0; i < count; i++) {
            allowedWatts[i] = Derating.wattsOrNaN(resistors[i], ambientCelsius);
            double watts = allowedWatts[i] / shares[i];
            rated &= !Double.isNaN(watts);
            if (watts < limit) {
                limit = watts;
                which = i;
            }
        }
        limitWatts = rated ? limit : Double.NaN;
        limiting = rated ? which : -1;
    }

    /**
     * Analyses a network.
     *
     * @param network which
     * @param ambientCelsius temperature of the air around its resistors
     */
    public static NetworkAnalysis of(Network network, double ambientCelsius) {
        Checks.present(network, "network");
        Checks.finite(ambientCelsius, "ambientCelsius");
        return new NetworkAnalysis(network, ambientCelsius);
    }

    /** Returns the value of a network in ohms; as {@link Network#ohms()}, but quicker where it is asked for millions of times. */
    public static double ohms(Network network) {
        return shifted(network, 0);
    }

    /** Returns the lowest value of a network in ohms, with every resistor at the low end of its tolerance. */
    public static double worstCaseLowOhms(Network network) {
        return shifted(network, -1);
    }

    /** Returns the highest value of a network in ohms, with every resistor at the high end of its tolerance. */
    public static double worstCaseHighOhms(Network network) {
        return shifted(network, 1);
    }

    /** Returns how many resistors a network has. */
    public static int pieces(Network network) {
        if (network instanceof Network.Single) {
            return 1;
        }
        List<Network> members = members(network);
        int count = 0;
        for (int i = 0; i < members.size(); i++) {
            count += pieces(members.get(i));
        }
        return count;
    }

    /** Returns the network. */
    public Network network() {
        return network;
    }

    /** Returns the temperature of the air in degrees Celsius that the allowed powers are for. */
    public double ambientCelsius() {
        return ambientCelsius;
    }

    /** Returns the value in ohms. */
    public double ohms() {
        return ohms;
    }

    /** Returns how many resistors there are. */
    public int size() {
        return resistors.length;
    }

    /** Returns the resistors from left to right. */
    public List<Resistor> resistors() {
        return List.of(resistors);
    }

    /** Returns a resistor by its number, 0 to {@link #size()} - 1. */
    public Resistor resistor(int index) {
        return resistors[index];
    }

    /** Returns the part of the network's power that a resistor takes, above 0 and at most 1; all add up to 1. */
    public double share(int index) {
        return shares[index];
    }

    /** Returns the lowest value in ohms, with every resistor at the low end of its tolerance; exact, as the value rises with each. */
    public double worstCaseLowOhms() {
        return shifted(network, -1);
    }

    /** Returns the highest value in ohms, with every resistor at the high end of its tolerance. */
    public double worstCaseHighOhms() {
        return shifted(network, 1);
    }

    /** Returns the larger of the two deviations of the worst case, relative to the value. */
    public double worstCaseToleranceRatio() {
        return Math.max(worstCaseHighOhms() - ohms, ohms - worstCaseLowOhms()) / ohms;
    }

    /** Returns the tolerances added by squares with the shares as weights: sqrt(sum (share_i tolerance_i)^2), to first order. */
    public double rssToleranceRatio() {
        double squares = 0;
        for (int i = 0; i < shares.length; i++) {
            double weighted = shares[i] * resistors[i].toleranceRatio();
            squares += weighted * weighted;
        }
        return Math.sqrt(squares);
    }

    /**
     * Returns the relative standard deviation when every value within a tolerance is equally likely: {@link #rssToleranceRatio()} over
     * the square root of 3 (JCGM 100 4.3.7).
     */
    public double standardToleranceRatio() {
        return rssToleranceRatio() / Math.sqrt(3);
    }

    /**
     * Returns the power in watts into the network at which the first resistor reaches what it may take for as long as one likes; empty
     * when a resistor has no rating; 0 when the air is too hot for one.
     */
    public OptionalDouble powerLimitWatts() {
        return Double.isNaN(limitWatts) ? OptionalDouble.empty() : OptionalDouble.of(limitWatts);
    }

    /** Returns the number of the resistor that reaches its limit first, the leftmost of several; empty when one has no rating. */
    public OptionalInt limitingIndex() {
        return limiting < 0 ? OptionalInt.empty() : OptionalInt.of(limiting);
    }

    /** Returns the resistor that reaches its limit first; empty when one has no rating. */
    public Optional<Resistor> limitingPart() {
        return limiting < 0 ? Optional.empty() : Optional.of(resistors[limiting]);
    }

    /** Returns what a resistor may take for as long as one likes, in watts; empty when it has no rating. */
    public OptionalDouble allowedWatts(int index) {
        return Double.isNaN(allowedWatts[index]) ? OptionalDouble.empty() : OptionalDouble.of(allowedWatts[index]);
    }

    /** Returns the power of a resistor in watts at a power into the network in watts, at least 0. */
    public double powerWatts(int index, double networkWatts) {
        return shares[index] * Checks.notNegative(networkWatts, "networkWatts");
    }

    /**
     * Returns how many times its power a resistor could take at a power into the network: 1 at its limit, below 1 beyond it. Empty when it
     * has no rating.
     *
     * @param index its number
     * @param networkWatts power into the network in watts, above 0
     */
    public OptionalDouble headroomRatio(int index, double networkWatts) {
        Checks.positive(networkWatts, "networkWatts");
        OptionalDouble allowed = allowedWatts(index);
        return allowed.isEmpty() ? allowed : OptionalDouble.of(allowed.getAsDouble() / powerWatts(index, networkWatts));
    }

    /** Returns the RMS volts across the network at a power into it in watts, at least 0. */
    public double voltsRms(double networkWatts) {
        return Math.sqrt(Checks.notNegative(networkWatts, "networkWatts") * ohms);
    }

    /** Returns the RMS amperes through the network at a power into it in watts, at least 0. */
    public double ampsRms(double networkWatts) {
        return Math.sqrt(Checks.notNegative(networkWatts, "networkWatts") / ohms);
    }

    static List<Network> members(Network network) {
        if (network instanceof Network.Series series) {
            return series.members();
        }
        if (network instanceof Network.Parallel parallel) {
            return parallel.members();
        }
        throw new IllegalArgumentException("network is a single resistor; it must be a connection");
    }

    private static double shifted(Network network, int side) {
        if (network instanceof Network.Single single) {
            Resistor resistor = single.resistor();
            return resistor.ohms() * (1 + side * resistor.toleranceRatio());
        }
        List<Network> members = members(network);
        boolean series = network instanceof Network.Series;
        double sum = 0;
        for (int i = 0; i < members.size(); i++) {
            double member = shifted(members.get(i), side);
            sum += series ? member : 1 / member;
        }
        return series ? sum : 1 / sum;
    }

    private static int collect(Network network, int start, Resistor[] resistors) {
        if (network instanceof Network.Single single) {
            resistors[start] = single.resistor();
            return start + 1;
        }
        List<Network> members = members(network);
        int position = start;
        for (int i = 0; i < members.size(); i++) {
            position = collect(members.get(i), position, resistors);
        }
        return position;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * A network over frequency, its resistors with the inductances they have and the leads before it. A resistor of which no inductance is
 * known counts as having none.
 *
 * <p>Such a network has only resistances and inductances, so the real part of its admittance falls, and its impedance rises, steadily with
 * frequency (Foster's form of RL networks); the limits below are therefore single frequencies.
 */
public final class NetworkImpedance {
    private static final double LOWEST_HZ = 1e-3;
    private static final double HIGHEST_HZ = 1e15;

    private final Network network;
    private final double leadOhms;
    private final double leadHenries;

    private NetworkImpedance(Network network, double leadOhms, double leadHenries) {
        this.network = network;
        this.leadOhms = leadOhms;
        this.leadHenries = leadHenries;
    }

    /** Returns a network alone, without leads. */
    public static NetworkImpedance of(Network network) {
        return of(network, 0, 0);
    }

    /**
     * Returns a network behind leads.
     *
     * @param network which
     * @param leadOhms resistance of both leads together in ohms, at least 0
     * @param leadHenries inductance of both leads together in henries, at least 0
     */
    public static NetworkImpedance of(Network network, double leadOhms, double leadHenries) {
        Checks.present(network, "network");
        Checks.notNegative(leadOhms, "leadOhms");
        Checks.notNegative(leadHenries, "leadHenries");
        return new NetworkImpedance(network, leadOhms, leadHenries);
    }

    /** Returns whether the inductance of every resistor is known. */
    public boolean isComplete() {
        return network.resistors().stream()
                .allMatch(resistor -> resistor.traits().inductanceHenries().isPresent());
    }

    /** Returns the resistance at direct current in ohms, leads included. */
    public double ohms() {
        return network.ohms() + leadOhms;
    }

    /** Returns the impedance at a frequency in hertz, at least 0. */
    public Impedance at(double frequencyHz) {
        double omega = 2 * Math.PI * Checks.notNegative(frequencyHz, "frequencyHz");
        return impedance(network, omega).plus(new Impedance(leadOhms, omega * leadHenries));
    }

    /**
     * Returns by how much the true power at a frequency is below V^2/R, relative to V^2/R with R at direct current: 1 - R Re(1/Z), 0 to 1.
     *
     * @param frequencyHz in hertz, at least 0
     */
    public double powerFallRatio(double frequencyHz) {
        return 1 - ohms() * at(frequencyHz).conductanceSiemens();
    }

    /**
     * Returns by how much V^2/R overstates the true power at a frequency, relative to the true power; (omega L / R)^2 for one resistor.
     *
     * @param frequencyHz in hertz, at least 0
     */
    public double overstatementRatio(double frequencyHz) {
        return 1 / (ohms() * at(frequencyHz).conductanceSiemens()) - 1;
    }

    /**
     * Returns the frequency in hertz up to which the true power is within a ratio of V^2/R; empty when it always is.
     *
     * @param ratio 0 to 1, both excluded: 0.01 for 1 %
     */
    public OptionalDouble powerLimitHz(double ratio) {
        Checks.within(ratio, Double.MIN_NORMAL, Math.nextDown(1), "ratio");
        return reached(this::powerFallRatio, ratio);
    }

    /**
     * Returns the frequency in hertz up to which the impedance is within a ratio above the resistance; empty when it always is.
     *
     * @param ratio above 0: 0.01 for 1 %
     */
    public OptionalDouble impedanceLimitHz(double ratio) {
        Checks.positive(ratio, "ratio");
        return reached(frequencyHz -> at(frequencyHz).magnitudeOhms() / ohms() - 1, ratio);
    }

    /**
     * Returns the frequency in hertz up to which the true power in one resistance with one inductance is within a ratio of V^2/R: R sqrt(ratio /
     * (1 - ratio)) / (2 pi L).
     *
     * @param ohms the resistance in ohms, above 0
     * @param henries the inductance in henries, above 0
     * @param ratio 0 to 1, both excluded
     */
    public static double powerLimitHz(double ohms, double henries, double ratio) {
        Checks.positive(ohms, "ohms");
        Checks.positive(henries, "henries");
        Checks.within(ratio, Double.MIN_NORMAL, Math.nextDown(1), "ratio");
        return ohms * Math.sqrt(ratio / (1 - ratio)) / (2 * Math.PI * henries);
    }

    private static OptionalDouble reached(DoubleUnaryOperator rising, double ratio) {
        if (rising.applyAsDouble(HIGHEST_HZ) <= ratio) {
            return OptionalDouble.empty();
        }
        double low = Math.log(LOWEST_HZ);
        double high = Math.log(HIGHEST_HZ);
        // Halving the logarithm's bracket until it cannot be halved any more.
        for (double middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
            if (rising.applyAsDouble(Math.exp(middle)) <= ratio) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return OptionalDouble.of(Math.exp(low));
    }

    private static Impedance impedance(Network network, double omega) {
        if (network instanceof Network.Single single) {
            Resistor resistor = single.resistor();
            return new Impedance(
                    resistor.ohms(),
                    omega * resistor.traits().inductanceHenries().orElse(0));
        }
        List<Network> members = NetworkAnalysis.members(network);
        boolean series = network instanceof Network.Series;
        Impedance sum = new Impedance(0, 0);
        for (Network member : members) {
            Impedance one = impedance(member, omega);
            sum = sum.plus(series ? one : one.inverse());
        }
        return series ? sum : sum.inverse();
    }
}

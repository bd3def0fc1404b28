// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.OptionalInt;
import org.ohmstead.model.CopperWire;
import org.ohmstead.units.text.Messages;

/** The leads between the amplifier's terminals and a load, and readings through them; their resistance is that of {@link CopperWire}. */
public final class Leads {
    private static final Messages TEXTS = Messages.of(Leads.class);

    private static final double HENRIES_PER_METRE = 2e-7;

    private Leads() {}

    /**
     * Returns the gauge's number for its usual writing: "4/0" is -3, "1/0" and "0" are 0, "12" is 12.
     *
     * @throws NotationException when it is no gauge from 4/0 to 40
     */
    public static int gauge(String text) throws NotationException {
        OptionalInt gauge = CopperWire.gauge(Checks.present(text, "text"));
        if (gauge.isEmpty()) {
            throw new NotationException(text, 0, TEXTS.text("leads.gauge"), TEXTS.text("leads.gaugeRemedy"));
        }
        return gauge.getAsInt();
    }

    /**
     * Returns the inductance in henries of one straight round wire with its return far away, at low frequencies: 2e-7 l (ln(2 l / r) - 3/4)
     * (E. B. Rosa, Bulletin of the Bureau of Standards 4, 1908).
     *
     * @param metres its length, at least 10 times the radius
     * @param radiusMetres its radius, above 0
     */
    public static double straightWireHenries(double metres, double radiusMetres) {
        Checks.positive(radiusMetres, "radiusMetres");
        Checks.within(metres, 10 * radiusMetres, Double.MAX_VALUE, "metres");
        return HENRIES_PER_METRE * metres * (Math.log(2 * metres / radiusMetres) - 0.75);
    }

    /**
     * Returns the inductance in henries of a pair of parallel round wires, there and back, at low frequencies: 4e-7 l (arcosh(d / 2 r) +
     * 1/4).
     *
     * @param metres length of the pair, one way, at least 0
     * @param distanceMetres between the middles of the wires, above twice the radius
     * @param radiusMetres radius of each wire, above 0
     */
    public static double pairHenries(double metres, double distanceMetres, double radiusMetres) {
        Checks.notNegative(metres, "metres");
        Checks.positive(radiusMetres, "radiusMetres");
        Checks.within(distanceMetres, Math.nextUp(2 * radiusMetres), Double.MAX_VALUE, "distanceMetres");
        double ratio = distanceMetres / (2 * radiusMetres);
        double arcosh = Math.log(ratio + Math.sqrt(ratio * ratio - 1));
        return 2 * HENRIES_PER_METRE * metres * (arcosh + 0.25);
    }

    /**
     * Returns the resistance in ohms by four wires: the voltage that the sense leads bring over the current; the leads drop out.
     *
     * @param senseVolts at the load itself, above 0
     * @param amps through the load, above 0
     */
    public static double fourWireOhms(double senseVolts, double amps) {
        return Checks.positive(senseVolts, "senseVolts") / Checks.positive(amps, "amps");
    }

    /**
     * Returns the resistance in ohms after taking away what the meter reads with its test leads held together.
     *
     * @param readingOhms what a two-wire meter reads at the load, above {@code testLeadOhms}
     * @param testLeadOhms what it reads with the leads held together, at least 0
     */
    public static double twoWireOhms(double readingOhms, double testLeadOhms) {
        Checks.notNegative(testLeadOhms, "testLeadOhms");
        if (!(readingOhms > testLeadOhms) || !Double.isFinite(readingOhms)) {
            throw new IllegalArgumentException(
                    "readingOhms is " + readingOhms + "; it must be above testLeadOhms, which is " + testLeadOhms);
        }
        return readingOhms - testLeadOhms;
    }
}

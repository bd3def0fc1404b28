// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.load.Leads;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkImpedance;
import org.ohmstead.load.NotationException;
import org.ohmstead.load.TerminalReading;
import org.ohmstead.model.CopperWire;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/**
 * The two copper leads from the amplifier to the load, at 20 degrees Celsius, side by side with their middles two diameters apart.
 *
 * @param squareMillimetres cross-section of one conductor, above 0
 * @param metres length of the pair, one way, above 0
 */
record LeadPair(double squareMillimetres, double metres) {
    private static final Messages TEXTS = Messages.of(LeadPair.class);

    private static final double COPPER_CELSIUS = 20;
    private static final double LEAST_SQUARE_MILLIMETRES = 0.05;
    private static final double MOST_SQUARE_MILLIMETRES = 500;
    private static final double METRES_PER_MILLIMETRE = 1e-3;
    private static final double RADII_APART = 4;
    private static final Pattern GAUGE = Pattern.compile("awg\\s*(\\S+)|(\\S+?)\\s*awg");
    private static final Pattern AREA = Pattern.compile("(\\d+(?:[.,]\\d+)?|[.,]\\d+)\\s*(?:mm2|mm\u00b2)?");

    /**
     * Reads a cross-section in square millimetres: "2.5", "2.5 mm2" or "AWG 14"; empty for no text.
     *
     * @throws IllegalArgumentException when it is none; the message says what to write
     */
    static OptionalDouble readSquareMillimetres(String text) {
        String typed = text.strip().toLowerCase(Locale.ROOT);
        if (typed.isEmpty()) {
            return OptionalDouble.empty();
        }
        Matcher gauge = GAUGE.matcher(typed);
        if (gauge.matches()) {
            try {
                return OptionalDouble.of(CopperWire.gaugeSquareMillimetres(
                        Leads.gauge(gauge.group(1) == null ? gauge.group(2) : gauge.group(1))));
            } catch (NotationException wrong) {
                throw new IllegalArgumentException(wrong.getMessage(), wrong);
            }
        }
        Matcher area = AREA.matcher(typed);
        double squareMillimetres =
                area.matches() ? Double.parseDouble(area.group(1).replace(',', '.')) : 0;
        if (squareMillimetres < LEAST_SQUARE_MILLIMETRES || squareMillimetres > MOST_SQUARE_MILLIMETRES) {
            throw new IllegalArgumentException(TEXTS.text("impedance.noSection", text.strip()));
        }
        return OptionalDouble.of(squareMillimetres);
    }

    /** Returns the resistance in ohms, there and back. */
    double ohms() {
        return CopperWire.ohms(squareMillimetres, 2 * metres, COPPER_CELSIUS);
    }

    /** Returns the inductance in henries, there and back. */
    double henries() {
        double radiusMetres = METRES_PER_MILLIMETRE * Math.sqrt(squareMillimetres / Math.PI);
        return Leads.pairHenries(metres, RADII_APART * radiusMetres, radiusMetres);
    }

    /** Returns a network as it is seen through them. */
    NetworkImpedance before(Network network) {
        return NetworkImpedance.of(network, ohms(), henries());
    }

    /** Says what they add, what a meter at the amplifier's terminals reads, and what follows for a power from it. */
    String words(double loadOhms) {
        TerminalReading reading = new TerminalReading(loadOhms, ohms());
        return TEXTS.text(
                "impedance.leads",
                Words.ohms(ohms()),
                Numbers.digits(henries(), Unit.HENRY, 2),
                Words.ohms(reading.terminalOhms()),
                Words.ohms(loadOhms),
                Numbers.digits(100 * reading.loadPowerOverstatementRatio(), 2));
    }
}

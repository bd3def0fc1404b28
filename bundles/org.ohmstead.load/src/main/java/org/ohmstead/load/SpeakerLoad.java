// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A load that behaves as a loudspeaker does: a resistance and an inductance in series and, where wanted, a resonant circuit of resistance,
 * inductance and capacitance in parallel. Its real power is V^2 Re(1/Z), less than V^2/|Z|.
 *
 * @param ohms the voice coil's resistance in ohms, above 0
 * @param henries the voice coil's inductance in henries, at least 0
 * @param lossOhms resistance across that inductance in ohms, above 0, for the losses in the iron; empty for none
 * @param resonance the moving parts as seen from the coil; empty for a held cone
 */
public record SpeakerLoad(double ohms, double henries, OptionalDouble lossOhms, Optional<Resonance> resonance) {
    public SpeakerLoad {
        Checks.positive(ohms, "ohms");
        Checks.notNegative(henries, "henries");
        lossOhms.ifPresent(value -> Checks.positive(value, "lossOhms"));
        Checks.present(resonance, "resonance");
    }

    /**
     * A resistance, an inductance and a capacitance in parallel.
     *
     * @param ohms in ohms, above 0: what the resonance adds at its peak
     * @param henries in henries, above 0
     * @param farads in farads, above 0
     */
    public record Resonance(double ohms, double henries, double farads) {
        public Resonance {
            Checks.positive(ohms, "ohms");
            Checks.positive(henries, "henries");
            Checks.positive(farads, "farads");
        }

        /**
         * Returns the circuit with a resonance: L = R / (omega0 Q), C = Q / (omega0 R).
         *
         * @param frequencyHz of the peak in hertz, above 0
         * @param quality Q of the parallel circuit, above 0
         * @param ohms what it adds at the peak in ohms, above 0
         */
        public static Resonance of(double frequencyHz, double quality, double ohms) {
            double omega = 2 * Math.PI * Checks.positive(frequencyHz, "frequencyHz");
            Checks.positive(quality, "quality");
            Checks.positive(ohms, "ohms");
            return new Resonance(ohms, ohms / (omega * quality), quality / (omega * ohms));
        }

        /** Returns the frequency of the peak in hertz. */
        public double frequencyHz() {
            return 1 / (2 * Math.PI * Math.sqrt(henries * farads));
        }

        private Impedance at(double omega) {
            return new Impedance(1 / ohms, omega * farads - 1 / (omega * henries)).inverse();
        }
    }

    /** Returns the impedance at a frequency in hertz, above 0. */
    public Impedance at(double frequencyHz) {
        double omega = 2 * Math.PI * Checks.positive(frequencyHz, "frequencyHz");
        Impedance coil = new Impedance(0, omega * henries);
        if (lossOhms.isPresent() && henries > 0) {
            coil = coil.parallel(new Impedance(lossOhms.getAsDouble(), 0));
        }
        Impedance total = new Impedance(ohms, 0).plus(coil);
        return resonance.isPresent() ? total.plus(resonance.get().at(omega)) : total;
    }

    /** Returns the real power in watts at a frequency in hertz, above 0, and so many RMS volts, at least 0. */
    public double realPowerWatts(double voltsRms, double frequencyHz) {
        return at(frequencyHz).realPowerWatts(voltsRms);
    }
}

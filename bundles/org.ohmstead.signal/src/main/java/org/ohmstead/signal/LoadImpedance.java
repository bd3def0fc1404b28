// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** What an amplifier works into, as far as the power of a voltage across it is concerned. */
public sealed interface LoadImpedance {
    /**
     * Returns the real (average) power, in watts, of a sine across this load: V^2 Re(Y), with Y the admittance at that
     * frequency.
     *
     * @param voltsRms volts RMS across the load
     * @param frequencyHz frequency of the sine, zero or above
     */
    double realPowerWatts(double voltsRms, double frequencyHz);

    /**
     * A pure resistance.
     *
     * @param ohms resistance, finite and above zero
     */
    record Resistance(double ohms) implements LoadImpedance {
        /** Checks the range. */
        public Resistance {
            if (!Double.isFinite(ohms) || ohms <= 0) {
                throw new IllegalArgumentException("ohms must be finite and above 0, but is " + ohms);
            }
        }

        @Override
        public double realPowerWatts(double voltsRms, double frequencyHz) {
            return voltsRms * voltsRms / ohms;
        }
    }

    /**
     * A resistance with an inductance in series, as a wirewound resistor or a voice coil has:
     * Re(Y) = R / (R^2 + (2 pi f L)^2).
     *
     * @param ohms resistance, finite and above zero
     * @param henries inductance, finite, zero or above
     */
    record SeriesInductance(double ohms, double henries) implements LoadImpedance {
        /** Checks the ranges. */
        public SeriesInductance {
            if (!Double.isFinite(ohms) || ohms <= 0) {
                throw new IllegalArgumentException("ohms must be finite and above 0, but is " + ohms);
            }
            if (!Double.isFinite(henries) || henries < 0) {
                throw new IllegalArgumentException("henries must be finite and 0 or above, but is " + henries);
            }
        }

        @Override
        public double realPowerWatts(double voltsRms, double frequencyHz) {
            double reactanceOhms = 2 * Math.PI * frequencyHz * henries;
            return voltsRms * voltsRms * ohms / (ohms * ohms + reactanceOhms * reactanceOhms);
        }
    }
}

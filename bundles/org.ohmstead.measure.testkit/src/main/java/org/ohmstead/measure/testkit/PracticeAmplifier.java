// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

/**
 * The amplifier of a {@link PracticeBench}: linear up to a hard limit, then flat. Its unloaded output is the fed volts times the gain, plus
 * hum and offset, limited to the supply volts less a loss; the load divides it with the output resistance.
 *
 * @param sourceVoltsRms the source's full output, above 0
 * @param gainRatio output over input volts, above 0
 * @param lossVolts what the limit lies below the supply volts, at least 0
 * @param outputOhms output resistance, at least 0
 * @param offsetVolts direct volts at the output
 * @param humHz frequency of the hum, above 0
 * @param humVoltsRms hum at the output, at least 0
 * @param noiseVoltsRms of seeded Gaussian noise at the output, at least 0
 */
public record PracticeAmplifier(
        double sourceVoltsRms,
        double gainRatio,
        double lossVolts,
        double outputOhms,
        double offsetVolts,
        double humHz,
        double humVoltsRms,
        double noiseVoltsRms) {
    public PracticeAmplifier {
        above0(sourceVoltsRms, "sourceVoltsRms");
        above0(gainRatio, "gainRatio");
        atLeast0(lossVolts, "lossVolts");
        atLeast0(outputOhms, "outputOhms");
        if (!Double.isFinite(offsetVolts)) {
            throw new IllegalArgumentException("offsetVolts is " + offsetVolts + "; it must be a finite number");
        }
        above0(humHz, "humHz");
        atLeast0(humVoltsRms, "humVoltsRms");
        atLeast0(noiseVoltsRms, "noiseVoltsRms");
    }

    /** Returns one of 1 V source, gain 20, 1 V loss, 20 mohm, 2 mV offset, 1 mV of 50 Hz hum and 50 uV noise. */
    public static PracticeAmplifier usual() {
        return new PracticeAmplifier(1, 20, 1, 0.02, 0.002, 50, 0.001, 50e-6);
    }

    /** Returns this one with other hum. */
    public PracticeAmplifier withHum(double newHumHz, double newHumVoltsRms) {
        return new PracticeAmplifier(
                sourceVoltsRms, gainRatio, lossVolts, outputOhms, offsetVolts, newHumHz, newHumVoltsRms, noiseVoltsRms);
    }

    /** Returns this one with another offset in volts. */
    public PracticeAmplifier withOffsetVolts(double newOffsetVolts) {
        return new PracticeAmplifier(
                sourceVoltsRms, gainRatio, lossVolts, outputOhms, newOffsetVolts, humHz, humVoltsRms, noiseVoltsRms);
    }

    /** Returns this one with other noise in volts RMS; 0 for none. */
    public PracticeAmplifier withNoiseVoltsRms(double newNoiseVoltsRms) {
        return new PracticeAmplifier(
                sourceVoltsRms, gainRatio, lossVolts, outputOhms, offsetVolts, humHz, humVoltsRms, newNoiseVoltsRms);
    }

    private static void above0(double value, String name) {
        if (!Double.isFinite(value) || value <= 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number above 0");
        }
    }

    private static void atLeast0(double value, String name) {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException(name + " is " + value + "; it must be a finite number of at least 0");
        }
    }
}

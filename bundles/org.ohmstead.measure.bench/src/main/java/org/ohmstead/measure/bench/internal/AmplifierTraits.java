// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

/**
 * What a simulated amplifier is like.
 *
 * @param channelCount number of its channels
 * @param gainRatio volts gain of the first channel without a load
 * @param mismatchDb how much less gain each further channel has than the one before it
 * @param railRatio each rail over the supply volts; 1 when the output stage runs from the supply itself
 * @param regulatedSupplyVolts supply volts above which the converter holds the rails; infinite when it does not
 * @param railOhms what each rail sags by for each ampere
 * @param railSeconds how fast it sags
 * @param saturationVolts what the output stage leaves of a rail
 * @param saturationOhms what it leaves less for each ampere of output
 * @param outputOhms output resistance while it does not clip
 * @param currentLimitAmps highest output current
 * @param kneeRatio share of the limit below it within which the wave is bent; 0 clips hard, 1 is a hyperbolic tangent
 * @param crossoverVolts half-width of the dead zone around zero
 * @param noiseVoltsRms noise at the output within the recorder's band
 * @param crosstalkDb how far below a channel's input the others' inputs lie in it
 * @param lowCornerHz corner of the first-order high pass; 0 for none
 * @param highCornerHz corner of the first-order low pass; infinite for none
 * @param switching whether the output stage switches, so that it takes power instead of current from the rails
 * @param converterEfficiencyRatio what of the supply's power reaches the rails
 * @param idleAmps supply current without a signal
 * @param gainPerKelvinDb change of the gain for each kelvin of the case above the air
 * @param railPerKelvinRatio change of the rails for each kelvin of the case above the air
 * @param cutOutCelsius case temperature at which it mutes itself
 */
record AmplifierTraits(
        int channelCount,
        double gainRatio,
        double mismatchDb,
        double railRatio,
        double regulatedSupplyVolts,
        double railOhms,
        double railSeconds,
        double saturationVolts,
        double saturationOhms,
        double outputOhms,
        double currentLimitAmps,
        double kneeRatio,
        double crossoverVolts,
        double noiseVoltsRms,
        double crosstalkDb,
        double lowCornerHz,
        double highCornerHz,
        boolean switching,
        double converterEfficiencyRatio,
        double idleAmps,
        double gainPerKelvinDb,
        double railPerKelvinRatio,
        double cutOutCelsius) {
    /** Volts of a rail without a signal, before heat changes them. */
    double openRailVolts(double supplyVolts) {
        return railRatio * Math.min(supplyVolts, regulatedSupplyVolts);
    }

    /** Gain of a channel while the case is so much above the air. */
    double gainRatio(int channel, double aboveAirKelvin) {
        return gainRatio * Math.pow(10, (gainPerKelvinDb * aboveAirKelvin - mismatchDb * channel) / 20);
    }

    /** Gain of the band limits at a frequency, at most 1. */
    double bandRatio(double frequencyHz) {
        double low = lowCornerHz / frequencyHz;
        double high = frequencyHz / highCornerHz;
        return 1 / Math.sqrt((1 + low * low) * (1 + high * high));
    }

    /** Phase of the band limits at a frequency, in radians. */
    double bandRadians(double frequencyHz) {
        return Math.atan2(lowCornerHz, frequencyHz) - Math.atan(frequencyHz / highCornerHz);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

/** The amplifier's case as one lump of heat: T' = (P - (T - T_air) / R) / C, solved exactly for a constant power. */
final class CaseHeat {
    private final double airCelsius;
    private final double kelvinPerWatt;
    private final double tauSeconds;
    private double aboveAirKelvin;

    CaseHeat(double airCelsius, double kelvinPerWatt, double tauSeconds) {
        this.airCelsius = airCelsius;
        this.kelvinPerWatt = kelvinPerWatt;
        this.tauSeconds = tauSeconds;
    }

    void pass(double seconds, double heatWatts) {
        double end = heatWatts * kelvinPerWatt;
        aboveAirKelvin = end + (aboveAirKelvin - end) * Math.exp(-seconds / tauSeconds);
    }

    double aboveAirKelvin() {
        return aboveAirKelvin;
    }

    double caseCelsius() {
        return airCelsius + aboveAirKelvin;
    }

    double airCelsius() {
        return airCelsius;
    }
}

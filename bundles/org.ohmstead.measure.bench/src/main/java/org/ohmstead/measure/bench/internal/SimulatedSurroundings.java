// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Bench;
import org.ohmstead.model.Range;

/** What surrounds a simulated amplifier, made from the project and the settings. */
final class SimulatedSurroundings {
    private static final double USUAL_KELVIN_PER_WATT = 0.5;
    private static final double USUAL_CASE_SECONDS = 900;
    private static final double USUAL_AIR_CELSIUS = 23;

    private SimulatedSurroundings() {}

    static SupplySide supply(Subject subject, Settings settings) {
        if (settings.flag("ideal")) {
            return new SupplySide(0, Double.MAX_VALUE, Double.MAX_VALUE, true);
        }
        Bench bench = subject.project().bench();
        return new SupplySide(
                SimulationSettings.said(settings, "cableOhms", bench.cable().loopOhms()),
                SimulationSettings.said(
                        settings, "supplyLimitAmps", bench.supply().currentLimitAmps()),
                bench.supply().highestVolts(),
                settings.flag("remoteSensing"));
    }

    static CaseHeat heat(Subject subject, Settings settings) {
        AmplifierHeat known = subject.project().heat().amplifier();
        double kelvinPerWatt = known.caseKelvinPerWatt()
                .map(Range::middle)
                .orElse(subject.project().amplifier().heatSinkKelvinPerWatt().orElse(USUAL_KELVIN_PER_WATT));
        double kelvin = SimulationSettings.said(settings, "caseKelvinPerWatt", kelvinPerWatt);
        double seconds = known.caseJoulesPerKelvin()
                .map(range -> range.middle() * kelvin)
                .orElse(USUAL_CASE_SECONDS);
        double air = settings.number("airCelsius") > -100
                ? settings.number("airCelsius")
                : subject.project().bench().ambientCelsius().orElse(USUAL_AIR_CELSIUS);
        return new CaseHeat(air, kelvin, Math.max(1, SimulationSettings.said(settings, "caseSeconds", seconds)));
    }
}

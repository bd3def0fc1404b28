// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.OptionalDouble;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.MeterQuantity;

/** What the supply's meters show, or a sentence that they do not. */
final class SupplyReadings {
    private SupplyReadings() {}

    static double volts(Observation shown) throws MeasurementException {
        return shown.supplyVolts().orElseThrow(() -> Faults.of("supply.noVolts"));
    }

    static double amps(Observation shown) throws MeasurementException {
        return shown.supplyAmps().orElseThrow(() -> Faults.of("supply.noAmps"));
    }

    /** The standard uncertainty of a reading by the specification of the project's meter; empty when there is none. */
    static OptionalDouble uncertainty(Subject subject, MeterQuantity quantity, double value) {
        return subject.project()
                .bench()
                .meterFor(quantity)
                .map(meter -> OptionalDouble.of(meter.accuracy().standardUncertainty(value)))
                .orElse(OptionalDouble.empty());
    }
}

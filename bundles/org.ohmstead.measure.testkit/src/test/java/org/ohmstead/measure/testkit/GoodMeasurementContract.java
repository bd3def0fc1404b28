// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.time.Duration;
import org.ohmstead.measure.Measurement;

/** The contract of a measurement that keeps to it. */
class GoodMeasurementContract extends MeasurementContract {
    @Override
    protected Measurement measurement() {
        return new PeakMeasurement();
    }

    @Override
    protected Duration grace() {
        return Duration.ofMillis(300);
    }
}

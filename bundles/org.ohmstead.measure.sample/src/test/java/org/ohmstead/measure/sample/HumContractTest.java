// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.sample;

import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.testkit.MeasurementContract;

class HumContractTest extends MeasurementContract {
    @Override
    protected Measurement measurement() {
        return new Hum();
    }
}

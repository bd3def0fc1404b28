// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.example.offset;

import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.testkit.MeasurementContract;

class DcOffsetTest extends MeasurementContract {
    @Override
    protected Measurement measurement() {
        return new DcOffset();
    }
}

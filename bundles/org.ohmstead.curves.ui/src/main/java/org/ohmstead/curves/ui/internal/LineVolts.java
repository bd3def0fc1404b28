// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;

/** The supply volts that the line in the chart, the table beside it and the what-if tab have in common. */
final class LineVolts {
    private static final double STEP = 0.01;

    private final List<DoubleConsumer> listeners = new ArrayList<>();
    private OptionalDouble supplyVolts = OptionalDouble.empty();

    OptionalDouble value() {
        return supplyVolts;
    }

    /** Sets the volts, to a hundredth, and tells those who listen when that is something else. */
    void set(double newSupplyVolts) {
        double rounded = Math.max(STEP, Math.round(newSupplyVolts / STEP) * STEP);
        if (supplyVolts.isEmpty() || supplyVolts.getAsDouble() != rounded) {
            supplyVolts = OptionalDouble.of(rounded);
            List.copyOf(listeners).forEach(each -> each.accept(rounded));
        }
    }

    void listen(DoubleConsumer listener) {
        listeners.add(listener);
    }
}

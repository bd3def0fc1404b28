// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.testkit.BenchDriverContract;

/** What every bench driver must keep to, for the simulated bench. */
class SimulatedBenchContractTest extends BenchDriverContract {
    @Override
    protected BenchDriver driver() {
        return new SimulatedBenchDriver();
    }
}

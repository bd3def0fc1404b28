// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.sample;

import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.testkit.BenchDriverContract;

class DividerContractTest extends BenchDriverContract {
    @Override
    protected BenchDriver driver() {
        return new DividerDriver();
    }
}

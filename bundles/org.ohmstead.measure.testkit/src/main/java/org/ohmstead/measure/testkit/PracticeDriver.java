// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import java.util.List;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;

/** Opens {@link PracticeBench}es; for tests that want a driver. */
public final class PracticeDriver implements BenchDriver {
    private static final DriverInfo INFO = new DriverInfo(
            "org.ohmstead.bench.practice",
            "1.0.0",
            "Practice bench",
            "An amplifier in memory that clips at a hard limit, for tests of plug-ins.",
            DriverInfo.Kind.SIMULATED,
            List.of());

    @Override
    public DriverInfo info() {
        return INFO;
    }

    @Override
    public Bench open(Subject subject, Settings settings) {
        return new PracticeBench(subject);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.thermal.plan.ReadingPowers;
import org.ohmstead.workbench.session.LogSnapshot;

/** What the readings of a test log tell of the steps of a plan. */
final class ForecastReadings {
    private ForecastReadings() {}

    /** Returns what a log tells; readings that were voided or set aside do not count. */
    static ReadingPowers of(LogSnapshot log, Project project) {
        return ReadingPowers.of(log.entries().stream()
                .filter(entry ->
                        !entry.voided() && project.reasonSetAside(entry.id()).isEmpty())
                .map(LogEntry::reading)
                .flatMap(reading -> reading.stream())
                .toList());
    }
}

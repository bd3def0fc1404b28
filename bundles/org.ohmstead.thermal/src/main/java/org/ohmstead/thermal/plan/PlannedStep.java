// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.Optional;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Step;

/**
 * A step to be forecast, of the plan or the warm-up.
 *
 * @param step its settings
 * @param load its load
 * @param known its power, when it is known
 * @param where path into the project
 * @param seconds how long it is on
 */
record PlannedStep(Step step, BenchLoad load, Optional<KnownPower> known, String where, double seconds) {
    boolean warmUp() {
        return step.id().equals(PlanForecast.WARM_UP);
    }
}

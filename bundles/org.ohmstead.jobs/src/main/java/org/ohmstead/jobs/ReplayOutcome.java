// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.util.List;
import org.ohmstead.testlog.LogEntry;

/**
 * What became of the steps of a plan.
 *
 * @param logged entries written now, in the plan's order
 * @param alreadyLogged ids of steps left out because the same captures are in the log
 * @param failures a sentence for each step that could not be evaluated
 */
public record ReplayOutcome(List<LogEntry> logged, List<String> alreadyLogged, List<String> failures) {
    /** Copies the lists. */
    public ReplayOutcome {
        logged = List.copyOf(logged);
        alreadyLogged = List.copyOf(alreadyLogged);
        failures = List.copyOf(failures);
    }
}

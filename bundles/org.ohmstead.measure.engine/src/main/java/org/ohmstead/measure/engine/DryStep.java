// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
import org.ohmstead.measure.Readiness;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.StopLimit;
import org.ohmstead.units.text.Messages;

/**
 * What is to be known before an item is measured.
 *
 * @param item which
 * @param readiness whether it can be measured
 * @param problems what the precautions say, and what is wrong with them; an error forbids the step, a warning needs a yes
 * @param unconfirmed the warnings to which nobody has said yes
 * @param stopLimits the bounds that will end it
 */
public record DryStep(
        PlanItem item,
        Readiness readiness,
        List<Problem> problems,
        List<Problem> unconfirmed,
        List<StopLimit> stopLimits) {
    private static final Messages TEXTS = Messages.of(DryStep.class);

    public DryStep {
        problems = List.copyOf(problems);
        unconfirmed = List.copyOf(unconfirmed);
        stopLimits = List.copyOf(stopLimits);
    }

    /** Returns whether nothing is in the way. */
    public boolean mayRun() {
        return blocked().isEmpty();
    }

    /** Returns what is in the way and what to do, whole sentences; empty when nothing is. */
    public String blocked() {
        if (readiness instanceof Readiness.NotYet notYet) {
            return TEXTS.text("blocked", notYet.reason(), notYet.remedy());
        }
        if (readiness instanceof Readiness.NotApplicable never) {
            return TEXTS.text("blocked.never", never.reason());
        }
        for (Problem problem : problems) {
            if (problem.severity() == Severity.ERROR) {
                return TEXTS.text("blocked", problem.what(), problem.remedy());
            }
        }
        if (!unconfirmed.isEmpty()) {
            Problem first = unconfirmed.get(0);
            return TEXTS.text("blocked.unconfirmed", first.what(), first.remedy());
        }
        return "";
    }
}

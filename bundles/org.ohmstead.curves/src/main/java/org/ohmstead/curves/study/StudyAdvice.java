// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.List;

/** What readings to take next so that models can be told apart. */
final class StudyAdvice {
    private StudyAdvice() {}

    static String between(ModelKind chosen, List<ModelFit> rivals, Terrain terrain) {
        boolean limit = chosen == ModelKind.CURRENT_LIMITED || has(rivals, ModelKind.CURRENT_LIMITED);
        boolean knee = chosen == ModelKind.REGULATED || has(rivals, ModelKind.REGULATED);
        if (limit && !terrain.severalLoads()) {
            return "Take readings into a second load: a knee stays at its supply voltage, a current limit does not.";
        }
        if (limit) {
            return "Take readings into a lower load: a current limit shows there first.";
        }
        if (knee) {
            return StudyWords.say(
                    "Take more readings near %.1f V and above: power that rises no further shows a knee.",
                    terrain.highestVolts());
        }
        if (chosen == ModelKind.DROOPING || has(rivals, ModelKind.DROOPING)) {
            return "Repeat readings at one supply voltage while the amplifier warms up.";
        }
        return "Take readings at supply voltages farther apart.";
    }

    private static boolean has(List<ModelFit> fits, ModelKind kind) {
        return fits.stream().anyMatch(fit -> fit.kind() == kind);
    }
}

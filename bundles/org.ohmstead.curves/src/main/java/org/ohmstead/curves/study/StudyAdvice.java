// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.List;
import org.ohmstead.units.text.Messages;

/** What readings to take next so that models can be told apart. */
final class StudyAdvice {
    private static final Messages TEXTS = Messages.of(StudyAdvice.class);

    private StudyAdvice() {}

    static String between(ModelKind chosen, List<ModelFit> rivals, Terrain terrain) {
        boolean limit = chosen == ModelKind.CURRENT_LIMITED || has(rivals, ModelKind.CURRENT_LIMITED);
        boolean knee = chosen == ModelKind.REGULATED || has(rivals, ModelKind.REGULATED);
        if (limit && !terrain.severalLoads()) {
            return TEXTS.text("advice.secondLoad");
        }
        if (limit) {
            return TEXTS.text("advice.lowerLoad");
        }
        if (knee) {
            return TEXTS.text("advice.knee", StudyWords.say("%.1f", terrain.highestVolts()));
        }
        if (chosen == ModelKind.DROOPING || has(rivals, ModelKind.DROOPING)) {
            return TEXTS.text("advice.warm");
        }
        return TEXTS.text("advice.apart");
    }

    private static boolean has(List<ModelFit> fits, ModelKind kind) {
        return fits.stream().anyMatch(fit -> fit.kind() == kind);
    }
}

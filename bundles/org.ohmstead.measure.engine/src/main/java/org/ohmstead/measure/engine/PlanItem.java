// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.Map;

/**
 * One thing to be measured when a plan is carried out.
 *
 * @param stepId which step of the plan
 * @param measurementId which measurement
 * @param settings values of its settings as text, by id; the others keep their defaults
 */
public record PlanItem(String stepId, String measurementId, Map<String, String> settings) {
    public PlanItem {
        if (stepId.isBlank() || measurementId.isBlank()) {
            throw new IllegalArgumentException("stepId or measurementId is blank; both need a text");
        }
        settings = Map.copyOf(settings);
    }
}

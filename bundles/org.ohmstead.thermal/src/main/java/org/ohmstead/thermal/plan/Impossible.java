// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;

/**
 * Why there is no schedule.
 *
 * @param obstacles what stands in the way, at least one
 */
public record Impossible(List<Obstacle> obstacles) implements ScheduleAnswer {
    public Impossible {
        obstacles = List.copyOf(obstacles);
        if (obstacles.isEmpty()) {
            throw new IllegalArgumentException("obstacles is empty; it needs at least one");
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a run of a measurement found at a step, with what it depended on. An entry of the test log. Power at an end point is a
 * {@link Reading}, which the log holds directly before this.
 *
 * @param stepId which step of the plan
 * @param mode how the channels met the load
 * @param loadId which load
 * @param supplyVolts direct volts that were set at the amplifier's terminals, above 0
 * @param takenAt when the last recording was made, or the last meter read
 * @param driver what the bench was
 * @param settings values of the measurement's settings as text, by id
 * @param figures what it found, each id once for a channel and a place; empty only when a reading says it all
 * @param conditions the surroundings
 * @param provenance what it depended on; its procedure is the measurement
 * @param notes plain sentences about it
 */
public record MeasuredFigures(
        String stepId,
        Mode mode,
        String loadId,
        double supplyVolts,
        Instant takenAt,
        DriverUsed driver,
        Map<String, String> settings,
        List<MeasuredFigure> figures,
        Conditions conditions,
        Provenance provenance,
        List<String> notes) {
    public MeasuredFigures {
        Checks.named(stepId, "stepId");
        Checks.present(mode, "mode");
        Checks.named(loadId, "loadId");
        Checks.positive(supplyVolts, "supplyVolts");
        Checks.present(takenAt, "takenAt");
        Checks.present(driver, "driver");
        settings = Checks.texts(settings, "settings");
        figures = List.copyOf(figures);
        Set<List<String>> names = new HashSet<>();
        for (MeasuredFigure each : figures) {
            if (!names.add(List.of(each.id(), each.channel(), each.at()))) {
                throw new IllegalArgumentException("figures is holding \"" + each.id() + "\" twice for channel \""
                        + each.channel() + "\" at \"" + each.at() + "\"; each needs a channel or a place of its own");
            }
        }
        Checks.present(conditions, "conditions");
        Checks.present(provenance, "provenance");
        notes = List.copyOf(notes);
    }

    /** Returns which measurement found it. */
    public String measurementId() {
        return provenance.procedureId();
    }

    /** Returns the version of the measurement. */
    public String measurementVersion() {
        return provenance.procedureVersion();
    }
}

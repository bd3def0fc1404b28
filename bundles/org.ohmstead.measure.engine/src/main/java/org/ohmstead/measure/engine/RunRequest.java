// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.StopLimit;

/**
 * What is to be measured.
 *
 * @param subject a step of a project's plan
 * @param measurementId which measurement
 * @param settings values of its settings as text, by id; the others keep their defaults
 * @param stopLimits bounds that end it
 * @param keptLimits the same bounds in the same order, with their reasons in English for the log
 * @param projectFolder where its recordings are kept
 */
public record RunRequest(
        Subject subject,
        String measurementId,
        Map<String, String> settings,
        List<StopLimit> stopLimits,
        List<StopLimit> keptLimits,
        Path projectFolder) {
    public RunRequest {
        settings = Map.copyOf(settings);
        stopLimits = List.copyOf(stopLimits);
        keptLimits = List.copyOf(keptLimits);
        if (keptLimits.size() != stopLimits.size()) {
            throw new IllegalArgumentException(
                    "keptLimits holds " + keptLimits.size() + " limits; stopLimits holds " + stopLimits.size());
        }
    }

    /** Makes a request whose bounds have English reasons. */
    public RunRequest(
            Subject subject,
            String measurementId,
            Map<String, String> settings,
            List<StopLimit> stopLimits,
            Path projectFolder) {
        this(subject, measurementId, settings, stopLimits, stopLimits, projectFolder);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.time.Duration;
import java.util.List;
import java.util.Set;

/**
 * What a measurement is, as data.
 *
 * @param id unique among all measurements, written like a package: "org.example.hum"
 * @param version changes whenever the same captures would give other figures; semantic: "1.2.0"
 * @param name what a person calls it
 * @param summary a sentence or two: what it does to the amplifier and what it tells
 * @param follows standards and sources that it follows, each with clause and year where known
 * @param needs what the bench must be able to do
 * @param settings what may be set
 * @param figures what it gives
 * @param longest time after which it certainly hangs
 */
public record MeasurementInfo(
        String id,
        String version,
        String name,
        String summary,
        List<String> follows,
        Set<Ability> needs,
        List<Setting> settings,
        List<FigureInfo> figures,
        Duration longest) {
    public MeasurementInfo {
        checkId(id);
        checkVersion(version);
        Checks.named(name, "name");
        Checks.named(summary, "summary");
        follows = List.copyOf(follows);
        needs = Set.copyOf(needs);
        settings = List.copyOf(settings);
        Settings.defaults(settings);
        figures = List.copyOf(figures);
        if (figures.stream().map(FigureInfo::id).distinct().count() < figures.size()) {
            throw new IllegalArgumentException("figures holds an id twice");
        }
        if (Checks.present(longest, "longest").isNegative() || longest.isZero()) {
            throw new IllegalArgumentException("longest is " + longest + "; it must be above 0");
        }
    }

    static void checkId(String id) {
        if (!Checks.present(id, "id").matches("[a-z][a-z0-9_-]*(\\.[a-z0-9][a-z0-9_-]*)+")) {
            throw new IllegalArgumentException(
                    "id is \"" + id + "\"; it must be written like a package, such as org.example.hum");
        }
    }

    static void checkVersion(String version) {
        if (!Checks.present(version, "version").matches("\\d+\\.\\d+\\.\\d+")) {
            throw new IllegalArgumentException(
                    "version is \"" + version + "\"; it must be three numbers, such as 1.0.0");
        }
    }
}

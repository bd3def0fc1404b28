// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.List;

/**
 * What a bench driver is, as data.
 *
 * @param id unique among all drivers, written like a package: "org.example.bench"
 * @param version semantic: "1.2.0"
 * @param name what a person calls it
 * @param summary a sentence or two: which bench it gives access to
 * @param kind whether it is a real bench
 * @param settings what may be set
 * @param asksPerson whether a person is asked to set the bench or to read its meters: then a call may take long, and the meters are
 *     read only when the measurement wants it
 */
public record DriverInfo(
        String id, String version, String name, String summary, Kind kind, List<Setting> settings, boolean asksPerson) {
    /** What stands behind a driver; readings say so. */
    public enum Kind {
        /** Instruments, or a person with instruments. */
        REAL,
        /** Recordings made before. */
        REPLAYED,
        /** Nothing but reckoning. */
        SIMULATED
    }

    public DriverInfo {
        MeasurementInfo.checkId(id);
        MeasurementInfo.checkVersion(version);
        Checks.named(name, "name");
        Checks.named(summary, "summary");
        Checks.present(kind, "kind");
        settings = List.copyOf(settings);
        Settings.defaults(settings);
    }

    /** Makes information about a driver that asks nobody. */
    public DriverInfo(String id, String version, String name, String summary, Kind kind, List<Setting> settings) {
        this(id, version, name, summary, kind, settings, false);
    }

    /** Returns this for a driver that asks a person. */
    public DriverInfo askingPerson() {
        return new DriverInfo(id, version, name, summary, kind, settings, true);
    }
}

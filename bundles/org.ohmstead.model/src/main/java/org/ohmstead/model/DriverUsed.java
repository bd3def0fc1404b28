// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.Map;

/**
 * The bench driver that figures were found with.
 *
 * @param id which driver
 * @param version its version
 * @param kind what stood behind it
 * @param settings values of its settings as text, by id
 */
public record DriverUsed(String id, String version, BenchKind kind, Map<String, String> settings) {
    public DriverUsed {
        Checks.named(id, "driver id");
        Checks.named(version, "version");
        Checks.present(kind, "kind");
        settings = Checks.texts(settings, "settings");
    }
}

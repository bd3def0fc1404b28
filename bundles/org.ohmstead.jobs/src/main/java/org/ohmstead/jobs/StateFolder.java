// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Path;
import java.util.Map;

/** Where Ohmstead keeps what is the user's: layouts, preferences, the language, which modules may run. The start scripts look there too. */
public final class StateFolder {
    /** The environment's variable that names another folder. */
    public static final String VARIABLE = "OHMSTEAD_STATE";

    private StateFolder() {}

    /** Returns the folder of this user. */
    public static Path own() {
        return of(System.getenv(), Path.of(System.getProperty("user.home")));
    }

    /**
     * Returns the folder that an environment leads to: OHMSTEAD_STATE, else the place where the user's data belong.
     *
     * @param environment the variables of the process
     * @param home of the user
     */
    public static Path of(Map<String, String> environment, Path home) {
        String own = environment.getOrDefault(VARIABLE, "");
        if (!own.isBlank()) {
            return Path.of(own);
        }
        String windows = environment.getOrDefault("LOCALAPPDATA", "");
        if (!windows.isBlank()) {
            return Path.of(windows, "Ohmstead");
        }
        String data = environment.getOrDefault("XDG_DATA_HOME", "");
        return (data.isBlank() ? home.resolve(".local").resolve("share") : Path.of(data)).resolve("ohmstead");
    }
}

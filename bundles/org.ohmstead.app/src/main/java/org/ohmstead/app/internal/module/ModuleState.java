// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.module;

import java.util.Objects;
import java.util.Optional;

/**
 * A module that somebody put into a folder of modules.
 *
 * @param name symbolic name with version, or the file's name when it is no bundle
 * @param file where it lies
 * @param fault why it does not run, in a sentence; empty when it does
 */
public record ModuleState(String name, String file, Optional<String> fault) {
    public ModuleState {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(file, "file");
        Objects.requireNonNull(fault, "fault");
    }
}

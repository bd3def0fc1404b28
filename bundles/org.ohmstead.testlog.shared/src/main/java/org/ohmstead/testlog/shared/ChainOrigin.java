// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.Objects;

/**
 * Whose entries a chain holds; said when it is begun, and not changed afterwards.
 *
 * @param bench what the bench is called, not blank
 * @param project title of the project; may be empty
 * @param amplifier what is tested; may be empty
 */
public record ChainOrigin(String bench, String project, String amplifier) {
    public ChainOrigin {
        if (bench.isBlank()) {
            throw new IllegalArgumentException("bench is blank; it needs the name of a bench");
        }
        Objects.requireNonNull(project, "project");
        Objects.requireNonNull(amplifier, "amplifier");
    }

    /** Returns the same of another bench. */
    ChainOrigin withBench(String newBench) {
        return new ChainOrigin(newBench, project, amplifier);
    }
}

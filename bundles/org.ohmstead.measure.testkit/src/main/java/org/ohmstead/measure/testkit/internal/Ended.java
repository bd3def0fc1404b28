// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.Optional;

/**
 * How a call ended.
 *
 * @param inTime whether it did
 * @param value what it gave
 * @param thrown what it threw
 */
public record Ended<T>(boolean inTime, Optional<T> value, Optional<Throwable> thrown) {
    /** Returns how, in words. */
    public String words() {
        if (!inTime) {
            return "did not end in time";
        }
        return thrown.map(cause -> "threw " + cause).orElse(value.isPresent() ? "gave " + value.get() : "gave null");
    }

    public boolean threw(Class<? extends Throwable> type) {
        return thrown.filter(type::isInstance).isPresent();
    }
}

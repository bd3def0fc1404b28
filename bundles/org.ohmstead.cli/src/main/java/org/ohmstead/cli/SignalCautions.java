// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;

/** What is to be said beside test signals. */
final class SignalCautions {
    /** All of it. */
    private SignalCautions() {}

    static List<String> all() {
        return List.of(
                Texts.of("signal.caution.loudspeakers"),
                Texts.of("signal.caution.loads"),
                Texts.of("signal.caution.hot"));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;

/** What is to be said beside test signals. */
final class SignalCautions {
    /** All of it. */
    static final List<String> ALL = List.of(
            "Take the loudspeakers off before this goes into an amplifier: test signals destroy loudspeakers and hearing.",
            "Resistive loads that can bear the power only; begin with the volume all the way down and come up slowly.",
            "Load resistors and heat sinks get hot enough to burn.");

    private SignalCautions() {}
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.Arrays;
import java.util.List;

/** What can be wrong on a simulated bench, on demand. */
enum Fault {
    NONE("none"),
    CLIPS_EARLY("clips early"),
    CHANNEL_DEAD("channel dead"),
    OSCILLATION("oscillation"),
    THERMAL_CUT_OUT("thermal cut-out"),
    BLOWN_FUSE("blown fuse"),
    SLOW_METER("slow meter"),
    LYING_METER("lying meter");

    private final String words;

    Fault(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    static List<String> allWords() {
        return Arrays.stream(values()).map(Fault::words).toList();
    }

    static Fault of(String words) {
        return Arrays.stream(values())
                .filter(fault -> fault.words.equals(words))
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("words is \"" + words + "\"; it must be one of " + allWords()));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.Arrays;
import java.util.List;
import org.ohmstead.units.text.Messages;

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

    private static final Messages TEXTS = Messages.of(Fault.class);

    private final String words;

    Fault(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    /** What a person calls each, in the order of the words. */
    static List<String> labels() {
        return Arrays.stream(values())
                .map(fault -> TEXTS.text("fault." + fault.name()))
                .toList();
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

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.stimulus;

import java.util.Map;
import java.util.Objects;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.stimulus.ChannelUse;
import org.ohmstead.signal.stimulus.SignalKind;

/**
 * What the form says.
 *
 * @param kind the kind of signal
 * @param texts its settings as written, by their names
 * @param sampleRateHz samples per second
 * @param format how samples are stored
 * @param channels which channels carry the signal
 * @param wholeCycles whether whole cycles are to fill the length
 * @param marked whether a file gets markers and a leader
 */
record SignalChoice(
        SignalKind kind,
        Map<String, String> texts,
        int sampleRateHz,
        SampleFormat format,
        ChannelUse channels,
        boolean wholeCycles,
        boolean marked) {
    SignalChoice {
        Objects.requireNonNull(kind, "kind");
        texts = Map.copyOf(texts);
    }
}

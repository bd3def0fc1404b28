// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class CaptureTest {
    private static final Waveform FIRST = Waveform.of(48000, new double[] {0, 0.5, -0.25});
    private static final Waveform SECOND = Waveform.of(48000, new double[] {1, -1, 1e-9});

    /** By Python: hashlib.sha256 over struct.pack('>d', ...) of the rate and the samples, one channel after the other. */
    @Test
    void theContentHasOneHashHoweverItIsStored() {
        assertEquals(
                "80e387f503923687b464850729207325879474dc931c35b35ba0458c5727040e",
                new Capture(List.of(FIRST), "a", "WAV").contentSha256());
        String both = "09b94745891d53253d58bdc476f44fc775f79dde1a7e8eb7f34000d1cba64d92";
        assertEquals(both, new Capture(List.of(FIRST, SECOND), "a", "WAV").contentSha256());
        assertEquals(both, new Capture(List.of(FIRST, SECOND), "b", "CSV").contentSha256());
    }
}

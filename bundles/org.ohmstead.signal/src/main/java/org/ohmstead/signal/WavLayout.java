// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Locale;

/**
 * What the header of a WAV file says of its samples, checked against the length of the file.
 *
 * @param sampleRateHz samples per second
 * @param channels number of channels
 * @param format how a sample is stored
 * @param position where in the file the samples begin
 * @param frames number of instants
 */
record WavLayout(long sampleRateHz, int channels, WavFormat format, long position, long frames) {
    int frameBytes() {
        return channels * format.bytes();
    }

    String text() {
        return String.format(
                Locale.ROOT,
                "WAV %s, %d channel%s, %d Hz",
                format.text(),
                channels,
                channels == 1 ? "" : "s",
                sampleRateHz);
    }
}

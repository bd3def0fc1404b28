// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.signal.Waveform;

/** Names an acquisition by its content. */
final class AcquisitionFacts {
    private AcquisitionFacts() {}

    /**
     * Returns what is kept of an acquisition. Its hash is that of the sample rate and of all samples as doubles, most significant byte
     * first, one channel after the other.
     *
     * @param number which recording of the run it was, from 1
     */
    static LevelFacts of(Acquisition acquisition, int number) {
        return new LevelFacts(
                new CaptureUsed(
                        sha256(acquisition),
                        String.format(Locale.ROOT, "recording-%02d", number),
                        acquisition.voltsPerFullScale()),
                acquisition.during().caseCelsius(),
                acquisition.during().ambientCelsius(),
                acquisition.during().at());
    }

    private static String sha256(Acquisition acquisition) {
        MessageDigest digest;
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java runtime has SHA-256.", e);
        }
        for (Waveform channel : acquisition.output().channels()) {
            ByteBuffer bytes = ByteBuffer.allocate(8 * (channel.size() + 1));
            bytes.putDouble(channel.sampleRateHz());
            for (int i = 0; i < channel.size(); i++) {
                bytes.putDouble(channel.voltsAt(i));
            }
            digest.update(bytes.array());
        }
        return HexFormat.of().formatHex(digest.digest());
    }
}

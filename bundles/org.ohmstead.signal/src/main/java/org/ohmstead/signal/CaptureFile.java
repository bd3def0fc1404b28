// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Set;
import org.ohmstead.units.files.PlainFiles;

/** Capture files of any kind that can be read. The kind is told by the content, not by the name. */
public final class CaptureFile {
    private static final Set<String> WAV_BEGINNINGS = Set.of("RIFF", "RF64", "BW64");

    private CaptureFile() {}

    /**
     * Reads a WAV file, or else a table of times and samples ({@link CsvWaveform}).
     *
     * @param file the file
     * @param voltsPerFullScale volts at digital full scale, or volts that a one in a table stands for (1 if the table
     *     is in volts), finite and above zero: one value for all channels, or one per channel
     * @throws CaptureException if the file cannot be read, or the number of scales fits its channels in neither way;
     *     the message names the file and says what to do
     * @throws IllegalArgumentException if a scale is not finite and above zero, or none is given
     */
    public static Capture read(Path file, double[] voltsPerFullScale) throws CaptureException {
        return isWav(file) ? WavFile.read(file, voltsPerFullScale) : CsvWaveform.read(file, voltsPerFullScale);
    }

    /** Whether a file begins as a WAV file; empty or missing ones are refused. */
    static boolean isWav(Path file) throws CaptureException {
        byte[] start;
        try (InputStream in = PlainFiles.open(file)) {
            start = in.readNBytes(4);
        } catch (IOException e) {
            throw FileFailure.reading(file, e);
        }
        if (start.length == 0) {
            throw new CaptureException(Texts.said("file.empty", file.getFileName()));
        }
        return WAV_BEGINNINGS.contains(new String(start, StandardCharsets.ISO_8859_1));
    }
}

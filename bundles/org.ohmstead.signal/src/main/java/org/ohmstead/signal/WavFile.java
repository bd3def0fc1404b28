// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.nio.file.Path;
import java.util.Arrays;
import org.ohmstead.units.text.Said;

/**
 * WAV files: RIFF, RF64 and BW64 with integer samples of 16, 24 or 32 bits or floating-point samples of 32 or 64 bits. A
 * sample at digital full scale (2^15, 2^23, 2^31, or 1.0) stands for the stated volts (instantaneous, so peak volts of a
 * sine that just fills the scale).
 */
public final class WavFile {
    private WavFile() {}

    /**
     * Reads a file.
     *
     * @param file the file
     * @param voltsPerFullScale volts at digital full scale, above zero: one value for all channels, or one per channel
     * @throws CaptureException if the file cannot be read or is not a whole, sound WAV file; the message names the file
     *     and says what to do
     * @throws IllegalArgumentException if a scale is not finite and above zero
     */
    public static Capture read(Path file, double[] voltsPerFullScale) throws CaptureException {
        return WavReader.read(file, requireScales(voltsPerFullScale));
    }

    /**
     * Writes integer samples. Nothing is clipped: a sample that does not fit is an error that names it.
     *
     * @param file the file; replaced if it is there
     * @param capture what to write
     * @param bits 16, 24 or 32
     * @param voltsPerFullScale volts at digital full scale, above zero: one value for all channels, or one per channel
     * @throws CaptureException if a sample lies beyond full scale, or the file cannot be written
     * @throws IllegalArgumentException if the bits or a scale are outside their range
     */
    public static void write(Path file, Capture capture, int bits, double[] voltsPerFullScale) throws CaptureException {
        if (bits != 16 && bits != 24 && bits != 32) {
            throw new IllegalArgumentException("bits must be 16, 24 or 32, but is " + bits);
        }
        WavWriter.write(file, capture, new WavFormat(false, bits), requireScales(voltsPerFullScale));
    }

    /**
     * Writes 32-bit floating-point samples; values beyond full scale are kept.
     *
     * @param file the file; replaced if it is there
     * @param capture what to write
     * @param voltsPerFullScale volts at 1.0, above zero: one value for all channels, or one per channel
     * @throws CaptureException if the file cannot be written
     * @throws IllegalArgumentException if a scale is not finite and above zero
     */
    public static void writeFloat(Path file, Capture capture, double[] voltsPerFullScale) throws CaptureException {
        WavWriter.write(file, capture, new WavFormat(true, 32), requireScales(voltsPerFullScale));
    }

    /** The scales, copied, if each is finite and above zero. */
    static double[] requireScales(double[] voltsPerFullScale) {
        if (voltsPerFullScale.length == 0) {
            throw new IllegalArgumentException("voltsPerFullScale must hold at least one value, but is empty");
        }
        for (double scale : voltsPerFullScale) {
            if (!Double.isFinite(scale) || scale <= 0) {
                throw new IllegalArgumentException("voltsPerFullScale must be finite and above 0, but is " + scale);
            }
        }
        return voltsPerFullScale.clone();
    }

    /** One scale per channel. */
    static double[] scalesFor(Path file, int channels, double[] scales) throws CaptureException {
        if (scales.length == channels) {
            return scales;
        }
        if (scales.length != 1) {
            throw new CaptureException(
                    Said.of(() -> Texts.counted("file.scales", channels, file.getFileName(), channels, scales.length)));
        }
        double[] each = new double[channels];
        Arrays.fill(each, scales[0]);
        return each;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.stimulus.ChannelUse;
import picocli.CommandLine.Option;

/** How a file of a test signal is stored. */
final class FileOptions {
    @Option(
            names = "--samples",
            paramLabel = "KIND",
            description = "16, 24 or 32 for integers of so many bits with dither, or float (default: 24, in a set 16).")
    private String samples;

    @Option(
            names = "--channels",
            paramLabel = "USE",
            defaultValue = "both",
            description = "mono, both, left, right, or right-inverted for bridged inputs (default both).")
    private String channels;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "Chooses the dither; the same seed gives the same file (default 1).")
    private long seed;

    SampleFormat format(SampleFormat usual) throws InputException {
        if (samples == null) {
            return usual;
        }
        return switch (samples.strip().toLowerCase(Locale.ROOT)) {
            case "16" -> SampleFormat.INTEGER_16;
            case "24" -> SampleFormat.INTEGER_24;
            case "32" -> SampleFormat.INTEGER_32;
            case "float" -> SampleFormat.FLOAT_32;
            default -> throw new InputException("--samples is " + samples + "; it must be 16, 24, 32 or float.");
        };
    }

    ChannelUse channels() throws InputException {
        List<String> names =
                Arrays.stream(ChannelUse.values()).map(FileOptions::name).toList();
        int index = names.indexOf(channels.strip().toLowerCase(Locale.ROOT));
        if (index < 0) {
            throw new InputException(
                    "--channels is " + channels + "; it must be one of " + String.join(", ", names) + ".");
        }
        return ChannelUse.values()[index];
    }

    static String name(ChannelUse use) {
        return use.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    long seed() {
        return seed;
    }
}

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
    @Option(names = "--samples", paramLabel = "KIND", descriptionKey = "file.samples")
    private String samples;

    @Option(names = "--channels", paramLabel = "USE", defaultValue = "both", descriptionKey = "file.channels")
    private String channels;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", descriptionKey = "file.seed")
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
            default -> throw new InputException(Texts.of("file.samples", samples));
        };
    }

    ChannelUse channels() throws InputException {
        List<String> names =
                Arrays.stream(ChannelUse.values()).map(FileOptions::name).toList();
        int index = names.indexOf(channels.strip().toLowerCase(Locale.ROOT));
        if (index < 0) {
            throw new InputException(Texts.of("file.channels", channels, String.join(", ", names)));
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

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.FuseKind;
import org.ohmstead.units.Unit;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The fuses of an amplifier, as options. */
final class FuseOptions {
    private static final int MOST = 20;
    private static final double MOST_AMPS = 1000;
    private static final double LEAST_AMPS = 0.01;

    @Option(names = "--rated-amps", paramLabel = "I", descriptionKey = "fuse.rated-amps")
    private String ratedAmps;

    @Option(names = "--count", paramLabel = "N", defaultValue = "1", descriptionKey = "fuse.count")
    private int count;

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            defaultValue = "blade",
            converter = KindConverter.class,
            descriptionKey = "fuse.kind")
    private FuseKind kind;

    /** Returns whether a fuse is described. */
    boolean given() {
        return ratedAmps != null;
    }

    /** Returns the fuses. */
    FuseBank bank() throws InputException {
        if (ratedAmps == null) {
            throw new InputException(Texts.of("fuse.noRating"));
        }
        if (count < 1 || count > MOST) {
            throw new InputException(Texts.of("fuse.count", count, MOST));
        }
        return new FuseBank(
                kind, Quantities.within(ratedAmps, Unit.AMPERE, LEAST_AMPS, MOST_AMPS, "--rated-amps"), count);
    }

    /** Reads a kind as people write it. */
    static final class KindConverter implements ITypeConverter<FuseKind> {
        @Override
        public FuseKind convert(String text) {
            return Arrays.stream(FuseKind.values())
                    .filter(each -> word(each).equalsIgnoreCase(text.strip()))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException(Texts.of(
                            "fuse.kind",
                            Arrays.stream(FuseKind.values())
                                    .map(KindConverter::word)
                                    .collect(Collectors.joining(", ")),
                            text)));
        }

        private static String word(FuseKind kind) {
            return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.exchange.CsvDialect;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.SoundSeriesCsv;
import org.ohmstead.model.Specimen;
import org.ohmstead.signal.sound.SoundSeries;

/** Readings, or a series of sound levels, as text with separators. */
public final class CsvTables {
    private CsvTables() {}

    /** Reads any bytes as each of them. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        Path table = Desk.file("readings.csv", input);
        Imports.read(table, CsvDialect.COMMA, Optional.empty(), OptionalDouble.empty());
        Optional<Specimen> specimen = Optional.of(new Specimen("An amplifier", "1", "A bench"));
        Imports.read(table, CsvDialect.SEMICOLON, specimen, OptionalDouble.of(0.01));
        try {
            SoundSeries series = SoundSeriesCsv.read(table);
            Path copy = Desk.file("series.csv", new byte[0]);
            SoundSeriesCsv.write(series, copy);
            Demand.that(SoundSeriesCsv.read(copy).equals(series), "another series was read than was written");
        } catch (ExchangeException e) {
            Demand.said(e);
        }
    }
}

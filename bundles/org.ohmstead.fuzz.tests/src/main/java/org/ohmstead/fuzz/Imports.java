// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.exchange.CsvDialect;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.ImportSettings;
import org.ohmstead.exchange.ReadingImport;
import org.ohmstead.exchange.TableLimits;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ReadingJson;

/** Readings from a table of any kind. What can be imported must have a text in the log that is read as the same again. */
final class Imports {
    private static final TableLimits LIMITS = new TableLimits(1 << 20, 8 << 20, 200, 2000, 400, 32_767, 1 << 20);

    private Imports() {}

    static void read(Path table, CsvDialect dialect, Optional<Specimen> specimen, OptionalDouble uncertaintyRatio) {
        ImportSettings settings =
                new ImportSettings(dialect, specimen, "", uncertaintyRatio, "0".repeat(64), "0", LIMITS);
        try {
            ReadingImport found = ReadingImport.read(table, settings);
            found.faults().forEach(fault -> Demand.that(!fault.text().isBlank(), "a fault says nothing"));
            Demand.that(found.faultCount() >= found.faults().size(), "faults are miscounted");
            for (Reading reading : found.readings()) {
                again(reading);
            }
        } catch (ExchangeException e) {
            Demand.said(e);
        }
    }

    private static void again(Reading reading) {
        String once = ReadingJson.toCanonicalText(reading);
        try {
            String again = ReadingJson.toCanonicalText(ReadingJson.fromText(once));
            Demand.that(again.equals(once), "an imported reading has another text: " + once);
        } catch (ProjectFileException e) {
            throw new AssertionError("What is imported cannot be read again: " + once, e);
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.file.Path;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Part;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.CanonicalJson;
import org.ohmstead.model.json.MeasuredFiguresJson;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.model.json.RecordingsFile;
import org.ohmstead.model.json.StockFile;

/**
 * What stands beside a project: readings and figures of the log, lists of recordings, a stock of resistors as JSON or as a table. What the
 * log keeps must have one text only, and be read as the same again.
 */
public final class Records {
    private Records() {}

    /** Something that is read of a text or a file. */
    @FunctionalInterface
    private interface Look {
        void at() throws ProjectFileException;
    }

    /** Reads any bytes as each of them. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        String text = Demand.text(input);
        Path json = Desk.file("records.json", input);
        Path table = Desk.file("records.csv", input);
        refuse(() -> reading(text));
        refuse(() -> figures(text));
        refuse(() -> {
            String once = CanonicalJson.writeTexts(CanonicalJson.readTexts(text));
            Demand.that(CanonicalJson.writeTexts(CanonicalJson.readTexts(once)).equals(once), "texts: " + once);
        });
        refuse(() -> RecordingsFile.read(json));
        for (Path stock : new Path[] {json, table}) {
            refuse(() -> {
                for (Part part : StockFile.read(stock)) {
                    Demand.that(part.count() > 0 && part.ohms() > 0, "a part of " + part.ohms() + " ohm");
                }
            });
        }
    }

    private static void refuse(Look look) {
        try {
            look.at();
        } catch (ProjectFileException e) {
            Demand.said(e);
        }
    }

    private static void reading(String text) throws ProjectFileException {
        Reading reading = ReadingJson.fromText(text);
        String once = ReadingJson.toCanonicalText(reading);
        Reading again = ReadingJson.fromText(once);
        Demand.that(ReadingJson.toCanonicalText(again).equals(once), "the reading has another text: " + once);
    }

    private static void figures(String text) throws ProjectFileException {
        MeasuredFigures figures = MeasuredFiguresJson.fromText(text);
        String once = MeasuredFiguresJson.toCanonicalText(figures);
        MeasuredFigures again = MeasuredFiguresJson.fromText(once);
        Demand.that(MeasuredFiguresJson.toCanonicalText(again).equals(once), "the figures have another text: " + once);
    }
}

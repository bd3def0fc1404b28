// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;

/** Writes the figures of a measurement in their canonical form. Fields are named as the records' components. */
public final class FiguresWriter {
    private FiguresWriter() {}

    /**
     * Returns the canonical text of figures.
     *
     * @throws IllegalArgumentException when a number is not finite, or a text holds half of a surrogate pair
     */
    public static String toText(MeasuredFigures figures) {
        return CanonicalText.of(figures, FiguresWriter::figures);
    }

    private static void figures(MeasuredFigures figures, CanonicalText to) {
        to.node("conditions", figures.conditions(), ReadingWriter::conditions)
                .node("driver", figures.driver(), FiguresWriter::driver)
                .list("figures", figures.figures(), FiguresWriter::figure)
                .text("loadId", figures.loadId())
                .choice("mode", figures.mode())
                .texts("notes", figures.notes())
                .node("provenance", figures.provenance(), ReadingWriter::provenance)
                .texts("settings", figures.settings())
                .text("stepId", figures.stepId())
                .number("supplyVolts", figures.supplyVolts())
                .text("takenAt", figures.takenAt().toString());
    }

    private static void driver(DriverUsed driver, CanonicalText to) {
        to.text("id", driver.id())
                .choice("kind", driver.kind())
                .texts("settings", driver.settings())
                .text("version", driver.version());
    }

    private static void figure(MeasuredFigure figure, CanonicalText to) {
        to.text("at", figure.at())
                .text("channel", figure.channel())
                .text("id", figure.id())
                .number("standardUncertainty", figure.standardUncertainty())
                .text("unit", figure.unit())
                .number("value", figure.value());
    }
}

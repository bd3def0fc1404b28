// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;

/** Turns the figures of a measurement into JSON. */
public final class FiguresWriter {
    private FiguresWriter() {}

    /** Returns the figures as an object whose fields are named as the record's components. */
    public static ObjectNode toJson(MeasuredFigures figures) {
        return ObjectBuilder.begin()
                .text("stepId", figures.stepId())
                .choice("mode", figures.mode())
                .text("loadId", figures.loadId())
                .number("supplyVolts", figures.supplyVolts())
                .text("takenAt", figures.takenAt().toString())
                .node("driver", driver(figures.driver()))
                .node("settings", texts(figures.settings()))
                .list("figures", figures.figures(), FiguresWriter::figure)
                .node("conditions", ReadingWriter.conditions(figures.conditions()))
                .node("provenance", ReadingWriter.provenance(figures.provenance()))
                .texts("notes", figures.notes())
                .end();
    }

    private static ObjectNode driver(DriverUsed driver) {
        return ObjectBuilder.begin()
                .text("id", driver.id())
                .text("version", driver.version())
                .choice("kind", driver.kind())
                .node("settings", texts(driver.settings()))
                .end();
    }

    private static ObjectNode texts(Map<String, String> texts) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        texts.forEach(object::put);
        return object;
    }

    private static ObjectNode figure(MeasuredFigure figure) {
        return ObjectBuilder.begin()
                .text("id", figure.id())
                .text("channel", figure.channel())
                .text("at", figure.at())
                .number("value", figure.value())
                .text("unit", figure.unit())
                .number("standardUncertainty", figure.standardUncertainty())
                .end();
    }
}

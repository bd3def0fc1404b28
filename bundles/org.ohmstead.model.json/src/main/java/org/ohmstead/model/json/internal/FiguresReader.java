// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.json.ProjectFileException;

/** Reads the figures of a measurement from JSON. */
public final class FiguresReader {
    private FiguresReader() {}

    /** Returns the figures that an object holds. */
    public static MeasuredFigures figures(FieldReader in) throws ProjectFileException {
        String stepId = in.requiredText("stepId", "field.stepId");
        Mode mode = in.choice("mode", Mode.class, "field.mode");
        String loadId = in.requiredText("loadId", "field.loadId");
        double supplyVolts = in.number("supplyVolts", "field.figures.supplyVolts");
        Instant takenAt = in.instant("takenAt", "field.figures.takenAt");
        DriverUsed driver = driver(in.object("driver", "field.figures.driver"));
        Map<String, String> settings = texts(in.object("settings", "field.figures.settings"));
        List<MeasuredFigure> figures = in.list("figures", "field.figures.figures", FiguresReader::figure);
        Conditions conditions = ReadingReader.conditions(in.object("conditions", "field.conditions"));
        Provenance provenance = ReadingReader.provenance(in.object("provenance", "field.figures.provenance"));
        List<String> notes = in.texts("notes", "field.figures.notes");
        return in.build(() -> new MeasuredFigures(
                stepId, mode, loadId, supplyVolts, takenAt, driver, settings, figures, conditions, provenance, notes));
    }

    private static DriverUsed driver(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "field.driver.id");
        String version = in.requiredText("version", "field.driver.version");
        BenchKind kind = in.choice("kind", BenchKind.class, "field.driver.kind");
        Map<String, String> settings = texts(in.object("settings", "field.driver.settings"));
        return in.build(() -> new DriverUsed(id, version, kind, settings));
    }

    private static Map<String, String> texts(FieldReader in) throws ProjectFileException {
        Map<String, String> texts = new TreeMap<>();
        for (String name : in.names()) {
            texts.put(name, in.requiredText(name, "field.text"));
        }
        return texts;
    }

    private static MeasuredFigure figure(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "field.figure.id");
        String channel = in.text("channel");
        String at = in.text("at");
        double value = in.number("value", "field.figure.value");
        String unit = in.text("unit");
        OptionalDouble uncertainty = in.optionalNumber("standardUncertainty", "field.figure.uncertainty");
        return in.build(() -> new MeasuredFigure(id, channel, at, value, unit, uncertainty));
    }
}

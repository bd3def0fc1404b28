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
        String stepId = in.requiredText("stepId", "the id of a step of the plan");
        Mode mode = in.choice("mode", Mode.class, "how the channels meet the load");
        String loadId = in.requiredText("loadId", "the id of a load");
        double supplyVolts = in.number("supplyVolts", "direct volts that were set, above 0");
        Instant takenAt = in.instant("takenAt", "when the last recording was made");
        DriverUsed driver = driver(in.object("driver", "what the bench was"));
        Map<String, String> settings = texts(in.object("settings", "values of the measurement's settings"));
        List<MeasuredFigure> figures = in.list("figures", "a figure", FiguresReader::figure);
        Conditions conditions = ReadingReader.conditions(in.object("conditions", "the surroundings"));
        Provenance provenance = ReadingReader.provenance(in.object("provenance", "what the figures depended on"));
        List<String> notes = in.texts("notes", "sentences about the figures");
        return in.build(() -> new MeasuredFigures(
                stepId, mode, loadId, supplyVolts, takenAt, driver, settings, figures, conditions, provenance, notes));
    }

    private static DriverUsed driver(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "which driver");
        String version = in.requiredText("version", "version of the driver");
        BenchKind kind = in.choice("kind", BenchKind.class, "what stood behind the driver");
        Map<String, String> settings = texts(in.object("settings", "values of the driver's settings"));
        return in.build(() -> new DriverUsed(id, version, kind, settings));
    }

    private static Map<String, String> texts(FieldReader in) throws ProjectFileException {
        Map<String, String> texts = new TreeMap<>();
        for (String name : in.names()) {
            texts.put(name, in.requiredText(name, "a text"));
        }
        return texts;
    }

    private static MeasuredFigure figure(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "which figure");
        String channel = in.text("channel");
        String at = in.text("at");
        double value = in.number("value", "a number in the unit");
        String unit = in.text("unit");
        OptionalDouble uncertainty = in.optionalNumber("standardUncertainty", "in the same unit, at least 0");
        return in.build(() -> new MeasuredFigure(id, channel, at, value, unit, uncertainty));
    }
}

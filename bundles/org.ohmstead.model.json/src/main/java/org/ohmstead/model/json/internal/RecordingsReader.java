// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.Recording;

/** Reads the content of a list of recordings. */
public final class RecordingsReader {
    private RecordingsReader() {}

    /** Returns who recorded, or an empty text. */
    public static String operator(FieldReader in) throws ProjectFileException {
        return in.text("operator");
    }

    /** Returns the recordings. */
    public static List<Recording> recordings(FieldReader in) throws ProjectFileException {
        return in.list("recordings", "field.recordings", RecordingsReader::recording);
    }

    private static Recording recording(FieldReader in) throws ProjectFileException {
        String step = in.requiredText("step", "field.stepId");
        String file = in.requiredText("file", "field.recording.file");
        double driveDb = in.number("driveDb", "field.recording.driveDb");
        List<Double> scale = in.numbers("voltsPerFullScale", "field.recording.scale");
        double supplyVolts = in.number("supplyVolts", "field.supplyVolts");
        OptionalDouble supplyAmps = in.optionalNumber("supplyAmps", "field.recording.supplyAmps");
        OptionalDouble caseCelsius = in.optionalNumber("caseCelsius", "field.recording.case");
        OptionalDouble ambientCelsius = in.optionalNumber("ambientCelsius", "field.recording.ambient");
        Instant recordedAt = in.instant("recordedAt", "field.recording.recordedAt");
        return in.build(() -> new Recording(
                step, file, driveDb, scale, supplyVolts, supplyAmps, caseCelsius, ambientCelsius, recordedAt));
    }
}

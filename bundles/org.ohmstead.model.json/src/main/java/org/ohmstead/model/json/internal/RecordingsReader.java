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
        return in.list("recordings", "a recorded waveform file", RecordingsReader::recording);
    }

    private static Recording recording(FieldReader in) throws ProjectFileException {
        String step = in.requiredText("step", "the id of a step of the plan");
        String file = in.requiredText("file", "the plain name of a file beside the list");
        double driveDb = in.number("driveDb", "level in dB relative to the source's full output, for example -3");
        List<Double> scale =
                in.numbers("voltsPerFullScale", "volts of full scale, one for each channel, for example 50");
        double supplyVolts =
                in.number("supplyVolts", "direct volts at the amplifier's terminals above 0, for example 13.5");
        OptionalDouble supplyAmps = in.optionalNumber("supplyAmps", "supply current in amperes, for example 17.5");
        OptionalDouble caseCelsius = in.optionalNumber("caseCelsius", "temperature of the case, for example 41");
        OptionalDouble ambientCelsius = in.optionalNumber("ambientCelsius", "air temperature, for example 23");
        Instant recordedAt = in.instant("recordedAt", "when it was recorded");
        return in.build(() -> new Recording(
                step, file, driveDb, scale, supplyVolts, supplyAmps, caseCelsius, ambientCelsius, recordedAt));
    }
}

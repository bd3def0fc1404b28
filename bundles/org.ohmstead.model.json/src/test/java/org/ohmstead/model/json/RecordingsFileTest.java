// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Problem;

class RecordingsFileTest {
    private static final String GOOD =
            """
            {"formatVersion": 1, "operator": "N. N.", "recordings": [
              {"step": "stereo-4ohm-13V5", "file": "a.wav", "driveDb": -3.0, "voltsPerFullScale": [50, 49.5],
               "supplyVolts": 13.36, "supplyAmps": 17.52, "caseCelsius": 41.2, "ambientCelsius": 22.6,
               "recordedAt": "2026-03-02T09:14:05Z"},
              {"step": "s2", "file": "b c.wav", "driveDb": 0, "voltsPerFullScale": [50], "supplyVolts": 13.5,
               "recordedAt": "2026-03-02T09:15:05Z", "mood": "good"}
            ]}
            """;

    @TempDir
    Path folder;

    private RecordingsList read(String content) throws Exception {
        return RecordingsFile.read(Files.writeString(folder.resolve("recordings.json"), content));
    }

    @Test
    void readsEveryField() throws Exception {
        RecordingsList list = read(GOOD);
        assertEquals(1, list.formatVersion());
        assertEquals("N. N.", list.operator());
        assertEquals(
                new Recording(
                        "stereo-4ohm-13V5",
                        "a.wav",
                        -3,
                        List.of(50.0, 49.5),
                        13.36,
                        OptionalDouble.of(17.52),
                        OptionalDouble.of(41.2),
                        OptionalDouble.of(22.6),
                        Instant.parse("2026-03-02T09:14:05Z")),
                list.recordings().get(0));
        assertEquals(OptionalDouble.empty(), list.recordings().get(1).supplyAmps());
        assertEquals(
                List.of("$.recordings[1].mood"),
                list.problems().stream().map(Problem::where).toList());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"a.wav\"|\"../a.wav\"|$.recordings[0]|plain name",
                "\"a.wav\"|\"x/a.wav\"|$.recordings[0]|plain name",
                "\"a.wav\"|\"x\\\\a.wav\"|$.recordings[0]|plain name",
                "\"a.wav\"|\"C:a.wav\"|$.recordings[0]|plain name",
                "\"a.wav\"|\"..\"|$.recordings[0]|plain name",
                "\"a.wav\"|\"\"|$.recordings[0]|plain name",
                "[50, 49.5]|50|$.recordings[0].voltsPerFullScale|a list of numbers [ ... ] is needed",
                "[50, 49.5]|[50, \"x\"]|$.recordings[0].voltsPerFullScale[1]|the value is \"x\", but a number is needed",
                "[50, 49.5]|[]|$.recordings[0].voltsPerFullScale|one number for each channel",
                "[50, 49.5]|[0]|$.recordings[0].voltsPerFullScale|above 0",
                "13.36|0|$.recordings[0].supplyVolts|supplyVolts is 0.0; it must be a finite number above 0",
                "\"2026-03-02T09:14:05Z\"|\"2.3.2026\"|$.recordings[0].recordedAt|a moment in universal time is needed",
                "\"step\": \"s2\",|``|$.recordings[1].step|the field is missing",
                "\"formatVersion\": 1|\"formatVersion\": 2|$.formatVersion|Update Ohmstead",
            })
    void namesThePlaceAndWhatWouldBeRight(String from, String to, String path, String sentence) {
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> read(GOOD.replace(from, to)));
        assertEquals(path, failure.jsonPath(), failure.getMessage());
        assertTrue(failure.getMessage().contains(sentence), failure.getMessage());
    }
}

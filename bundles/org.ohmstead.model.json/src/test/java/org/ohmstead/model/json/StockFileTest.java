// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PulseRule;

class StockFileTest {
    private static final String HEADER = "id,ohms,toleranceRatio,ratedWatts,ratedToCelsius,zeroPowerCelsius";
    private static final String PART =
            """
            {"id": "8R2", "ohms": 8.2, "toleranceRatio": 0.05, "ratedWatts": 100, "ratedToCelsius": 25,
             "zeroPowerCelsius": 250, "mounting": "heatSink", "count": 4, "traits": {"pulseRule":
             {"overloadRatio": 5, "durationSeconds": 5}}}""";

    @TempDir
    private Path folder;

    private Path file(String name, String content) throws IOException {
        return Files.writeString(folder.resolve(name), content);
    }

    @Test
    void readsAListAnObjectAndAProject() throws Exception {
        for (String content :
                List.of("[" + PART + "]", "{\"parts\": [" + PART + "]}", "{\"bench\": {\"parts\": [" + PART + "]}}")) {
            List<Part> parts = StockFile.read(file("stock.json", content));
            assertEquals(1, parts.size());
            assertEquals(8.2, parts.get(0).ohms());
            assertEquals(Optional.of(new PulseRule(5, 5)), parts.get(0).traits().pulseRule());
        }
    }

    @Test
    void readsATableWithUnits() throws Exception {
        List<Part> parts = StockFile.read(file(
                "stock.csv",
                HEADER + ",mounting,count,inductanceHenries,overloadRatio,durationSeconds,measured\n"
                        + "A,8R2,5 %,100 W,25,250,heatSinkWithFan,4,5 uH,5,5 s,true\n\n"
                        + "B,0.47,0.01,50,70,275,,,,,,\n"));
        Part first = parts.get(0);
        assertEquals(8.2, first.ohms());
        assertEquals(0.05, first.toleranceRatio(), 1e-15);
        assertEquals(Mounting.HEAT_SINK_WITH_FAN, first.mounting());
        assertEquals(4, first.count());
        assertEquals(5e-6, first.traits().inductanceHenries().getAsDouble(), 1e-18);
        assertTrue(first.traits().measured());
        Part second = parts.get(1);
        assertEquals(1, second.count());
        assertEquals(Mounting.FREE_AIR, second.mounting());
        assertEquals(OptionalDouble.empty(), second.traits().inductanceHenries());
        assertEquals(0.01, second.toleranceRatio());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "A,8R2,5 %,,25,250 | line 2, column \"ratedWatts\": the cell is empty",
                "A,-8.2,5 %,100,25,250 | line 2: ohms is -8.2",
                "A,0,5 %,100,25,250 | line 2: ohms is 0.0",
                "A,8 V,5 %,100,25,250 | line 2, column \"ohms\"",
                "A,8R2,5 %,100,250,25 | zeroPowerCelsius is 25.0",
                "A,8R2,5 %,100,25,250,7 | the row has 7 cells",
                "A,8,5 %,100,25,250; A,9,5 %,100,25,250 | the part id \"A\" twice",
                "'' | holds no part",
            })
    void saysWhatIsWrongWithATable(String rows, String expected) throws Exception {
        Path file = file("stock.csv", HEADER + "\n" + rows.replace("; ", "\n") + "\n");
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> StockFile.read(file));
        assertTrue(failure.getMessage().contains(expected), failure.getMessage());
    }

    @Test
    void saysWhichPartOfAListHasNoPowerRating() throws Exception {
        Path file = file("stock.json", "[" + PART.replace("\"ratedWatts\": 100,", "") + "]");
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> StockFile.read(file));
        assertTrue(failure.getMessage().contains("$[0].ratedWatts: the field is missing"), failure.getMessage());
    }

    @Test
    void refusesAnObjectWithoutParts() throws Exception {
        Path file = file("stock.json", "{}");
        ProjectFileException failure = assertThrows(ProjectFileException.class, () -> StockFile.read(file));
        assertTrue(failure.getMessage().contains("holds no list of parts"), failure.getMessage());
    }

    @Test
    void refusesUnknownAndMissingColumns() throws Exception {
        Path unknown = file("a.csv", HEADER + ",colour\n");
        assertTrue(assertThrows(ProjectFileException.class, () -> StockFile.read(unknown))
                .getMessage()
                .contains("\"colour\" is not known"));
        Path missing = file("b.csv", "id,ohms\nA,8\n");
        assertTrue(assertThrows(ProjectFileException.class, () -> StockFile.read(missing))
                .getMessage()
                .contains("\"toleranceRatio\" is missing"));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.workbench.session.ProblemPlace.Section;

class ProblemPlaceTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "$.amplifier.ratings[2].powerWatts; RATINGS; 2; powerWatts",
                "$.amplifier.ratings[10]; RATINGS; 10; ''",
                "$.amplifier.ratings; RATINGS; -1; ''",
                "$.amplifier.model; AMPLIFIER; -1; model",
                "$.amplifier.fuses[1].ratedAmps; AMPLIFIER; -1; fuses[1].ratedAmps",
                "$.amplifier; AMPLIFIER; -1; ''",
                "$.amplifierX; OTHER; -1; $.amplifierX",
                "$.bench.meters[0].calibrationDueOn; METERS; 0; calibrationDueOn",
                "$.bench.parts[3].ohms; PARTS; 3; ohms",
                "$.bench.cable.loopMetres; BENCH; -1; cable.loopMetres",
                "$.bench['odd name']; BENCH; -1; ['odd name']",
                "$.loads[0].branches[1].ohms; LOADS; 0; branches[1].ohms",
                "$.plan[7].loadId; PLAN; 7; loadId",
                "$.sheet.confidence; SHEET; -1; confidence",
                "$.title; OTHER; -1; $.title",
                "$; OTHER; -1; $",
                "log.db; LOG; -1; ''",
                "log.db#R0003; LOG; -1; R0003",
                "captures; OTHER; -1; captures",
                "$.plan[99999999999999].id; PLAN; -1; [99999999999999].id"
            })
    void readsTheSectionTheEntryAndTheField(String where, Section section, int index, String field) {
        OptionalInt expected = index < 0 ? OptionalInt.empty() : OptionalInt.of(index);
        assertEquals(new ProblemPlace(section, expected, field), ProblemPlace.parse(where));
    }
}

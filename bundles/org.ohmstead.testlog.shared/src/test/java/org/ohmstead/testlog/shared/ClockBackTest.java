// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.ohmstead.testlog.ClockStep;

/** Benches whose clocks are set back, seen from the shared log. */
@Timeout(120)
@ExtendWith(SharedServer.class)
class ClockBackTest {
    private final PostgresServer server = SharedServer.get();

    private static List<String> ids(List<ClockStep> steps) {
        return steps.stream().map(ClockStep::entryId).toList();
    }

    private LabVerifyReport checked(BenchRows... benches) throws Exception {
        try (SharedLab lab = SharedLab.connect(server.prepared(), PostgresServer.credentials())) {
            int number = 0;
            for (BenchRows bench : benches) {
                number++;
                new HandOver(lab, new ChainOrigin("bench " + number, "", "")).run(bench);
            }
            LabVerifyReport report = lab.verify(List.of());
            assertTrue(report.intact(), report.faults().toString());
            return report;
        }
    }

    private static BenchRows hourByHourBack(String text, int times) {
        BenchRows bench = new BenchRows();
        for (int number = 0; number <= times; number++) {
            bench.at(String.format(Locale.ROOT, "2026-03-%02dT%02d:00:00Z", 28 - number / 24, 23 - number % 24))
                    .note(text + number);
        }
        return bench;
    }

    @Test
    void eachChainHasAClockOfItsOwn() throws Exception {
        BenchRows ahead = new BenchRows().at("2030-01-01T00:00:00Z").notes("ahead", 2);
        BenchRows right = new BenchRows().at("2026-03-03T12:00:00Z").notes("right", 2);
        LabVerifyReport none = checked(ahead, right);
        assertEquals(0, none.clockStepCount());
        assertEquals(List.of(), none.clockSteps(100));
        ahead.at("2026-03-04T12:00:00Z").notes("set right", 2);
        LabVerifyReport one = checked(ahead, right);
        assertEquals(1, one.clockStepCount());
        assertEquals(1, one.chains().get(0).report().clockStepCount());
        ClockStep step = one.clockSteps(100).get(0);
        assertEquals("A/N0003", step.entryId());
        assertEquals(3, step.sequence());
        assertTrue(step.sentence().contains("2026-03-04T12:00:00Z"), step.sentence());
        assertTrue(step.sentence().contains("2030-01-01T00:00:00Z"), step.sentence());
    }

    @Test
    void aChainThatPartsGoesOnWithTheTimeOfItsBeginning() throws Exception {
        BenchRows bench = new BenchRows().notes("own", 3);
        BenchRows copy = bench.copy();
        bench.notes("more", 1);
        copy.at("2026-03-01T00:00:00Z").notes("copy", 2);
        LabVerifyReport report = checked(bench, copy);
        assertEquals(1, report.clockStepCount());
        assertEquals(List.of("B/N0004"), ids(report.clockSteps(100)));
    }

    @Test
    void aClockThatIsAlwaysSetBackDoesNotHideThatOfAnotherBench() throws Exception {
        LabVerifyReport report =
                checked(hourByHourBack("many", 130), hourByHourBack("few", 3), new BenchRows().notes("right", 1));
        assertEquals(133, report.clockStepCount());
        assertEquals(100, report.clockSteps(100).size());
        assertEquals(List.of("A/N0002", "A/N0003", "A/N0004", "B/N0002", "B/N0003"), ids(report.clockSteps(5)));
        assertEquals(
                List.of("B/N0002", "B/N0003", "B/N0004"),
                ids(report.clockSteps(100)).subList(97, 100));
        assertEquals(List.of("A/N0002"), ids(report.clockSteps(1)));
        assertEquals(103, report.clockSteps(1000).size());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FuseBankTest {
    private static FuseOpening.Within opening(FuseKind kind, double ratedAmps, double ratio) {
        return assertInstanceOf(
                FuseOpening.Within.class,
                FuseCurve.of(kind, ratedAmps).orElseThrow().opening(ratio));
    }

    /** Rows of ISO 8820-3 as remembered, and marked so. */
    @ParameterizedTest
    @CsvSource({
        "BLADE, 25, 1.35, .75, 600",
        "BLADE, 25, 1.6, .25, 50",
        "BLADE, 25, 2, .15, 5",
        "BLADE, 25, 3.5, .04, .5",
        "BLADE, 25, 6, .02, .1",
        "LARGE_BLADE, 60, 1.35, 60, 1800",
        "LARGE_BLADE, 60, 2, 2, 60",
        "LARGE_BLADE, 60, 3.5, .2, 7",
        "LARGE_BLADE, 60, 6, .04, 1"
    })
    void givesTheRowsOfTheTable(FuseKind kind, double ratedAmps, double ratio, double earliest, double latest) {
        FuseOpening.Within within = opening(kind, ratedAmps, ratio);
        assertEquals(earliest, within.earliestSeconds().orElseThrow(), 1e-12);
        assertEquals(latest, within.latestSeconds().orElseThrow(), 1e-12);
        assertTrue(within.citation().contains("ISO 8820-3") && within.citation().contains("from memory"));
        assertTrue(!within.extrapolated());
    }

    /** UL 248-14: opens at 135 % within an hour, at 200 % within 2 minutes up to 30 A, 4 minutes from 35 to 60 A. */
    @ParameterizedTest
    @CsvSource({"30, 1.35, 3600", "30, 2, 120", "35, 1.35, 3600", "35, 2, 240", "60, 2, 240"})
    void givesTheLatestTimesOfCartridgeFuses(double ratedAmps, double ratio, double latest) {
        FuseOpening.Within within = opening(FuseKind.CARTRIDGE, ratedAmps, ratio);
        assertEquals(latest, within.latestSeconds().orElseThrow(), 0);
        assertTrue(within.earliestSeconds().isEmpty());
        assertTrue(within.citation().contains("UL 248-14") && !within.citation().contains("memory"));
    }

    @Test
    void goesStraightInLogarithms() {
        // Half way in log(current) between 2 and 3.5 lies sqrt 7; half way in log(time) sqrt(0.15 x 0.04) and sqrt(5
        // x 0.5).
        FuseOpening.Within within = opening(FuseKind.BLADE, 25, Math.sqrt(7));
        assertEquals(Math.sqrt(0.15 * 0.04), within.earliestSeconds().orElseThrow(), 1e-12);
        assertEquals(Math.sqrt(5 * 0.5), within.latestSeconds().orElseThrow(), 1e-12);
        // Between 110 and 135 % a blade fuse need never open: there is an earliest time, but no latest.
        FuseOpening.Within low = opening(FuseKind.BLADE, 25, 1.2);
        assertTrue(low.latestSeconds().isEmpty() && low.earliestSeconds().isPresent());
    }

    @Test
    void keepsTheSquareOfCurrentTimesTimeWhenShort() {
        FuseOpening.Within within = opening(FuseKind.BLADE, 25, 12);
        assertTrue(within.extrapolated());
        assertEquals(0.02 / 4, within.earliestSeconds().orElseThrow(), 1e-15);
        assertEquals(0.1 / 4, within.latestSeconds().orElseThrow(), 1e-15);
        // A row of minutes is no adiabatic one: its time is kept as the latest.
        assertEquals(120, opening(FuseKind.CARTRIDGE, 20, 4).latestSeconds().orElseThrow(), 0);
        // (6 x 25 A)^2 x 20 ms.
        assertEquals(
                450,
                new FuseBank(FuseKind.BLADE, 25, 1).meltingAmpsSquaredSeconds().orElseThrow(),
                1e-9);
        assertTrue(new FuseBank(FuseKind.CARTRIDGE, 25, 1)
                .meltingAmpsSquaredSeconds()
                .isEmpty());
    }

    @Test
    void opensSoonerWithMoreCurrent() {
        for (FuseKind kind : FuseKind.values()) {
            double earliest = Double.MAX_VALUE;
            double latest = Double.MAX_VALUE;
            for (double ratio = 1.36; ratio < 20; ratio *= 1.01) {
                FuseOpening.Within within = opening(kind, 30, ratio);
                double early = within.earliestSeconds().orElse(0);
                double late = within.latestSeconds().orElseThrow();
                assertTrue(early <= earliest && late <= latest && early < late, kind + " at " + ratio);
                earliest = early;
                latest = late;
            }
        }
    }

    @Test
    void saysWhatASteadyCurrentDoes() {
        FuseBank bank = new FuseBank(FuseKind.BLADE, 40, 3);
        // 0.75 x 3 x 40 A.
        assertEquals(90, bank.continuousAmps(), 0);
        assertEquals(
                0.75,
                assertInstanceOf(FuseAnswer.Carries.class, bank.steady(90)).currentRatio(),
                1e-12);
        FuseAnswer.AboveContinuous hot = assertInstanceOf(FuseAnswer.AboveContinuous.class, bank.steady(110));
        assertTrue(hot.reason().contains("never opens within the table"), hot.reason());
        assertTrue(hot.reason().contains("from memory"));
        FuseAnswer.Opens opens = assertInstanceOf(FuseAnswer.Opens.class, bank.steady(240));
        assertEquals(0.15, opens.earliestSeconds().orElseThrow(), 1e-12);
        assertEquals(5, opens.latestSeconds().orElseThrow(), 1e-12);
        assertTrue(opens.reason().contains("0.150 s at the soonest, within 5.00 s at the latest"), opens.reason());
        assertTrue(opens.reason().contains("from memory") && opens.remedy().contains("never fit a larger fuse"));
    }

    @Test
    void namesNoTimeWhereTheTableHasNone() {
        FuseAnswer.Opens maybe =
                assertInstanceOf(FuseAnswer.Opens.class, new FuseBank(FuseKind.BLADE, 20, 1).steady(24));
        assertTrue(maybe.latestSeconds().isEmpty() && maybe.reason().contains("if at all"), maybe.reason());
        FuseAnswer.Opens late =
                assertInstanceOf(FuseAnswer.Opens.class, new FuseBank(FuseKind.CARTRIDGE, 20, 1).steady(40));
        assertTrue(late.reason().contains("opens within 2.00 min at the latest; UL 248-14"), late.reason());
    }

    @Test
    void judgesBurstsByTheirRms() {
        FuseBank bank = new FuseBank(FuseKind.BLADE, 30, 1);
        // 20 ms of 100 A in every 500 ms, 5 A between: RMS sqrt(424) = 20.6 A, 69 % of 30 A; 333 % opens after 0.04 s
        // at the soonest.
        assertEquals(
                Math.sqrt(424) / 30,
                assertInstanceOf(FuseAnswer.Carries.class, bank.bursts(100, 5, 0.02, 0.5))
                        .currentRatio(),
                1e-12);
        // Twice as often: RMS 28.6 A, which ages it.
        assertInstanceOf(FuseAnswer.AboveContinuous.class, bank.bursts(100, 5, 0.02, 0.25));
        // As much on average in bursts of 0.2 s: each may open it by itself.
        FuseAnswer.Opens single = assertInstanceOf(FuseAnswer.Opens.class, bank.bursts(100, 5, 0.2, 5));
        assertTrue(single.withinBurst() && single.reason().startsWith("During the burst"), single.reason());
        // RMS sqrt(0.5 x 80^2 + 0.5 x 20^2) = 58.3 A opens it, burst or not.
        assertTrue(!assertInstanceOf(FuseAnswer.Opens.class, bank.bursts(80, 20, 0.02, 0.04))
                .withinBurst());
    }

    @Test
    void saysWhereThereIsNoTable() {
        SupplyNoSolution none =
                assertInstanceOf(SupplyNoSolution.class, new FuseBank(FuseKind.CARTRIDGE, 80, 1).steady(10));
        assertTrue(none.reason().contains("60.0 A") && none.remedy().contains("maker"), none.reason());
        assertInstanceOf(SupplyNoSolution.class, new FuseBank(FuseKind.BLADE, 60, 1).bursts(10, 1, 1, 2));
        assertInstanceOf(
                FuseOpening.NotInTable.class,
                FuseCurve.of(FuseKind.LARGE_BLADE, 60).orElseThrow().opening(1.2));
    }

    @Test
    void readsTheStyleOfAnAmplifiersFuse() {
        assertEquals(Optional.of(FuseKind.BLADE), FuseKind.of("Blade"));
        assertEquals(Optional.of(FuseKind.LARGE_BLADE), FuseKind.of("large blade"));
        assertEquals(Optional.of(FuseKind.CARTRIDGE), FuseKind.of("glass"));
        assertTrue(FuseKind.of("").isEmpty());
    }

    @Test
    void rejectsWhatIsNoTable() {
        FuseBand row = new FuseBand(2, OptionalDouble.of(1), OptionalDouble.of(2), FuseProvenance.SOURCED, "a test");
        assertThrows(IllegalArgumentException.class, () -> new FuseCurve(FuseKind.BLADE, List.of()));
        assertThrows(IllegalArgumentException.class, () -> new FuseCurve(FuseKind.BLADE, List.of(row, row)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new FuseBand(2, OptionalDouble.of(3), OptionalDouble.of(2), FuseProvenance.SOURCED, "a test"));
        assertThrows(IllegalArgumentException.class, () -> new FuseBank(FuseKind.BLADE, 0, 1));
    }
}

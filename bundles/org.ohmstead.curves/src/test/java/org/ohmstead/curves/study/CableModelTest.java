// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.curves.study.CableModel.CurrentDraw;
import org.ohmstead.curves.study.CableModel.TerminalVolts;
import org.ohmstead.model.Mode;

class CableModelTest {

    @Test
    void classAbHasItsClosedForm() {
        // Closed form: V_pk = (V_s - V_sat)/(1 + 2R_c/(pi R)) at 14.4 V, 0.02 ohm, 2 ohm, 1.6 V.
        double peak = CableModel.classAbPeakVolts(14.4, 1.6, 2, 0.02);
        assertEquals(12.719028, peak, 1e-6);
        double watts = peak * peak / 4;
        assertEquals(40.443419, watts, 1e-6);
        // Read before the cable, that power must give the terminal voltage back: I 4.048592 A, V_b 14.319028 V.
        CableModel steady = new CableModel(0.02, new CurrentDraw.ClassAbBridgeTied(true), 1);
        TerminalVolts.Found found = assertInstanceOf(
                TerminalVolts.Found.class, steady.terminalVolts(StudyPoint.of(Mode.STEREO, 2, 14.4, watts, 0.1)));
        assertEquals(4.048592, found.supplyAmps(), 1e-6);
        assertEquals(14.319028, found.terminalVolts(), 1e-6);
        assertEquals(0.02 * 4.048592 * 4.048592, found.heatWatts(), 1e-6);
        // A rectified sine: RMS 1.110721 times the mean, so pi²/8 = 1.233701 times the loss (closed form).
        CableModel pulsed = new CableModel(0.02, new CurrentDraw.ClassAbBridgeTied(false), 1);
        TerminalVolts.Found heated = assertInstanceOf(
                TerminalVolts.Found.class, pulsed.terminalVolts(StudyPoint.of(Mode.STEREO, 2, 14.4, watts, 0.1)));
        assertEquals(1.233701, heated.heatWatts() / found.heatWatts(), 1e-6);
        assertEquals(0, CableModel.classAbPeakVolts(1, 1.6, 2, 0.02));
    }

    @Test
    void twoChannelsDrawTwiceTheCurrentOfOne() {
        CableModel cable = new CableModel(0.02, new CurrentDraw.ClassAbBridgeTied(true), 2);
        double both = amps(cable, StudyPoint.of(Mode.STEREO, 2, 14.4, 40, 0.1));
        assertEquals(2 * amps(cable, StudyPoint.of(Mode.SINGLE, 2, 14.4, 40, 0.1)), both, 1e-12);
        // 80 W bridged into 4 ohm are 40 W of each of two channels into 2 ohm.
        assertEquals(both, amps(cable, StudyPoint.of(Mode.BRIDGED, 4, 14.4, 80, 0.1)), 1e-12);
    }

    private static double amps(CableModel cable, StudyPoint point) {
        return assertInstanceOf(TerminalVolts.Found.class, cable.terminalVolts(point))
                .supplyAmps();
    }

    @Test
    void constantPowerHasItsClosedFormAndItsLimit() {
        // Closed form: V = (V_s + sqrt(V_s² - 4 R_c P))/2 at 14.4 V, 0.01 ohm, 600 W.
        TerminalVolts.Found found =
                assertInstanceOf(TerminalVolts.Found.class, CableModel.constantPower(14.4, 600, 0.01));
        assertEquals(13.970524, found.terminalVolts(), 1e-6);
        assertEquals(42.947565, found.supplyAmps(), 1e-6);
        assertInstanceOf(TerminalVolts.Found.class, CableModel.constantPower(14.4, 5183.9, 0.01));
        TerminalVolts.NoSolution none =
                assertInstanceOf(TerminalVolts.NoSolution.class, CableModel.constantPower(14.4, 5184.1, 0.01));
        assertEquals(5184, none.limitWatts(), 1e-9);
        assertTrue(none.reason().contains("at most 5184 W"), none.reason());
    }

    @Test
    void correctsReadingsAndRefusesWhatCannotBe() {
        CableModel cable = new CableModel(0.01, new CurrentDraw.ConstantPower(0.75), 1);
        CableModel.Corrected corrected = cable.correct(List.of(
                StudyPoint.of(Mode.STEREO, 2, 14.4, 450, 1),
                StudyPoint.of(Mode.STEREO, 2, 14.4, 4000, 1),
                StudyPoint.of(Mode.STEREO, 2, 0, 10, 1)));
        // 450 W at 75 % are 600 W at the terminals.
        assertEquals(13.970524, corrected.points().get(0).supplyVolts(), 1e-6);
        assertEquals(1, corrected.points().size());
        assertEquals(2, corrected.refused().size());
        assertTrue(corrected.refused().get(0).reason().contains("lets at most"));
        assertTrue(corrected.refused().get(1).reason().contains("Correct the reading"));
        CableModel lossy = new CableModel(1, new CurrentDraw.ClassAbBridgeTied(true), 4);
        assertInstanceOf(
                TerminalVolts.NoSolution.class, lossy.terminalVolts(StudyPoint.of(Mode.STEREO, 2, 14.4, 200, 1)));
    }

    @Test
    void rejectsImpossibleCables() {
        assertThrows(IllegalArgumentException.class, () -> new CableModel(-1, new CurrentDraw.ConstantPower(1), 1));
        assertThrows(IllegalArgumentException.class, () -> new CableModel(0, new CurrentDraw.ConstantPower(1), 0));
        assertThrows(IllegalArgumentException.class, () -> new CurrentDraw.ConstantPower(1.1));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.ohmstead.metrology.Tolerances.REL_1PPM;
import static org.ohmstead.metrology.Tolerances.REL_EXACT;
import static org.ohmstead.metrology.Tolerances.assertClose;

import java.util.List;
import org.junit.jupiter.api.Test;

class UncertaintyBudgetTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    @Test
    void powerFromVoltageAndResistance() {
        // Closed form: P = V²/R, V = 20 V +-(0.5 % + 0.03 V) rectangular, R = 4 ohm +-1 % rectangular.
        Estimate volts = Estimate.rectangular(20, 0.005 * 20 + 0.03);
        Estimate ohms = Estimate.rectangular(4, 0.04);
        assertClose(0.0750555, volts.standardUncertainty(), REL_1PPM);
        assertClose(0.0230940, ohms.standardUncertainty(), 2e-6);
        UncertaintyBudget budget = UncertaintyBudget.of(
                100,
                Contribution.of("voltage", 2 * 20 / 4.0, volts),
                Contribution.of("resistance", -20 * 20 / 16.0, ohms));
        Estimate watts = budget.combined();
        assertClose(0.9469248, watts.standardUncertainty(), REL_1PPM);
        assertClose(1.893850, 2 * watts.standardUncertainty(), REL_1PPM);
        assertEquals(INFINITE, watts.degreesOfFreedom());
        double voltageShare = Math.pow(0.750555 / 0.9469248, 2);
        assertClose(voltageShare, budget.rows().get(0).varianceShare(), 2e-6);
        assertClose(1 - voltageShare, budget.rows().get(1).varianceShare(), 2e-6);
        assertClose(-0.577350, budget.rows().get(1).effect(), 2e-6);
    }

    @Test
    void endGaugeOfTheGum() {
        // GUM H.1: lengths in nm. The difference d has three components of its own (H.1.3.2).
        Estimate difference = UncertaintyBudget.of(
                        215,
                        new Contribution("repeated observations", 1, 5.8, 24),
                        new Contribution("random effects of comparator", 1, 3.9, 5),
                        new Contribution("systematic effects of comparator", 1, 6.7, 8))
                .combined();
        assertEquals(9.68, difference.standardUncertainty(), 0.005);
        assertEquals(25.4, difference.degreesOfFreedom(), 0.05);
        Estimate length = UncertaintyBudget.of(
                        50_000_838,
                        new Contribution("standard", 1, 25, 18),
                        Contribution.of("difference", 1, difference),
                        new Contribution("expansion difference", 1, 2.9, 50),
                        new Contribution("temperature difference", 1, 16.6, 2))
                .combined();
        // Unrounded; the GUM goes on with 32 nm and prints 16.7, which it cuts off to 16.
        assertClose(Math.sqrt(25 * 25 + 93.74 + 2.9 * 2.9 + 16.6 * 16.6), length.standardUncertainty(), REL_EXACT);
        assertEquals(31.66, length.standardUncertainty(), 0.01);
        assertEquals(16.75, length.degreesOfFreedom(), 0.02);
        Estimate whole = new Estimate(length.value(), 32, Math.floor(length.degreesOfFreedom()));
        assertEquals(2.92, whole.coverageFactor(0.99), 0.005);
        assertEquals(93, whole.expandedUncertainty(0.99), 0.5);
    }

    @Test
    void effectiveDegreesOfFreedomOfTheGum() {
        // GUM G.4.1, example: y = b x1 x2 x3 with relative uncertainties of 0.25, 0.57 and 0.82 % from 10, 5 and 15
        // readings: u = 1.03 %, nu = 19.0, t95(19) = 2.09, U95 = 2.2 %.
        Estimate percent = UncertaintyBudget.of(
                        100,
                        new Contribution("x1", 1, 0.25, 9),
                        new Contribution("x2", 1, 0.57, 4),
                        new Contribution("x3", 1, 0.82, 14))
                .combined();
        assertEquals(1.03, percent.standardUncertainty(), 0.005);
        assertEquals(19.0, percent.degreesOfFreedom(), 0.05);
        assertEquals(2.09, percent.coverageFactor(0.95), 0.005);
        assertEquals(2.2, percent.expandedUncertainty(0.95), 0.05);
    }

    @Test
    void correlatedBudgetOfTheGum() {
        // GUM H.2: R = V/I cos(phi) with the correlations of table H.3; u(R) = 0.0710714 ohm unrounded (printed
        // 0.071), 0.1945 ohm if they are forgotten.
        double volts = 4.9990;
        double amperes = 0.0196610;
        double radians = 1.04446;
        double ohms = volts / amperes * Math.cos(radians);
        UncertaintyBudget forgotten = UncertaintyBudget.of(
                ohms,
                new Contribution("V", ohms / volts, 0.0032093613, 4),
                new Contribution("I", -ohms / amperes, 9.471008e-6, 4),
                new Contribution("phi", -ohms * Math.tan(radians), 7.520638e-4, 4));
        assertEquals(0.1945, forgotten.combined().standardUncertainty(), 0.00005);
        UncertaintyBudget budget = forgotten
                .withCorrelation("V", "I", -0.355311)
                .withCorrelation("V", "phi", 0.857624)
                .withCorrelation("I", "phi", -0.645111);
        assertEquals(127.732, budget.combined().value(), 0.0005);
        assertEquals(0.0710714, budget.combined().standardUncertainty(), 1e-6);
        assertEquals(4, budget.combined().degreesOfFreedom());
    }

    @Test
    void correlationsAddOrCancel() {
        UncertaintyBudget budget =
                UncertaintyBudget.of(0, new Contribution("a", 1, 3, INFINITE), new Contribution("b", -1, 2, 7));
        assertClose(Math.sqrt(13), budget.combined().standardUncertainty(), REL_EXACT);
        // GUM 5.2.2 note 1: with r = +1 the combined uncertainty is the plain sum of the effects.
        UncertaintyBudget together = budget.withCorrelation("b", "a", 1);
        assertClose(1, together.combined().standardUncertainty(), REL_EXACT);
        assertEquals(7, together.combined().degreesOfFreedom());
        double shares = together.rows().stream()
                .mapToDouble(UncertaintyBudget.Row::varianceShare)
                .sum();
        assertClose(1, shares, REL_EXACT);
        assertClose(5, budget.withCorrelation("a", "b", -1).combined().standardUncertainty(), REL_EXACT);
    }

    @Test
    void exactContributionsGiveAnExactResult() {
        Estimate exact = UncertaintyBudget.of(4, new Contribution("a", 1, 0, 3)).combined();
        assertEquals(0, exact.standardUncertainty());
        assertEquals(INFINITE, exact.degreesOfFreedom());
    }

    @Test
    void rejectsContradictions() {
        Contribution a = new Contribution("a", 1, 1, INFINITE);
        Contribution b = new Contribution("b", 1, 1, INFINITE);
        Contribution c = new Contribution("c", 1, 1, INFINITE);
        assertThrows(IllegalArgumentException.class, () -> UncertaintyBudget.of(1, a, a));
        assertThrows(IllegalArgumentException.class, () -> new UncertaintyBudget(1, List.of(), List.of()));
        UncertaintyBudget budget = UncertaintyBudget.of(1, a, b, c);
        assertThrows(IllegalArgumentException.class, () -> budget.withCorrelation("a", "x", 0.5));
        assertThrows(IllegalArgumentException.class, () -> budget.withCorrelation("a", "b", 1.5));
        UncertaintyBudget once = budget.withCorrelation("a", "b", 0.5);
        assertThrows(IllegalArgumentException.class, () -> once.withCorrelation("b", "a", 0.5));
        UncertaintyBudget impossible = budget.withCorrelation("a", "b", -1)
                .withCorrelation("b", "c", -1)
                .withCorrelation("a", "c", -1);
        assertThrows(IllegalArgumentException.class, impossible::combined);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.ohmstead.metrology.Tolerances.REL_EXACT;
import static org.ohmstead.metrology.Tolerances.assertClose;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvSource;

class GlobalRisksTest {

    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static ToleranceInterval interval(double lower, double upper) {
        if (upper == INFINITE) {
            return new ToleranceInterval.AtLeast(lower);
        }
        return lower == -INFINITE ? new ToleranceInterval.AtMost(upper) : new ToleranceInterval.Within(lower, upper);
    }

    // JCGM 106, clause 9, as rectangles of the bivariate normal distribution of true and measured value, SciPy 1.17.1:
    // multivariate_normal([m, m], [[s², s²], [s², s² + u²]]).cdf, and by scipy.integrate.quad over the prior.
    @ParameterizedTest
    @CsvSource({
        "1500, 0.12, 0.04, 1499.8, 1500.2, 1499.8, 1500.2, 0.018942206717105628, 0.03720780017813553",
        "1500, 0.12, 0.04, 1499.8, 1500.2, 1499.84, 1500.16, 0.004334072221801687, 0.11465657840794391",
        "105, 4, 1.5, 100, Infinity, 100, Infinity, 0.020284557370801124, 0.035552494322401075",
        "105, 4, 1.5, 100, Infinity, 102.467, Infinity, 0.0011992569496902144, 0.17216333206686085",
        "0.02, 0.01, 0.004, -Infinity, 0.03, -Infinity, 0.035, 0.08248249141071712, 0.00568022739570775",
        "0, 1, 0.001, -1, 2, -1.001, 1.999, 0.0002663919913667989, 0.0000787622938"
    })
    void risksAreRectanglesOfTheBivariateNormalDistribution(ArgumentsAccessor row) {
        GlobalRisks risks = GlobalRisks.of(
                new NormalPrior(row.getDouble(0), row.getDouble(1)),
                row.getDouble(2),
                interval(row.getDouble(3), row.getDouble(4)),
                interval(row.getDouble(5), row.getDouble(6)));
        double consumers = row.getDouble(7);
        double producers = row.getDouble(8);
        assertEquals(consumers, risks.consumersRisk(), 1e-9);
        assertEquals(producers, risks.producersRisk(), 1e-9);
        // Accepted = good - good but rejected + bad but accepted.
        assertEquals(risks.accepted(), risks.conforming() - producers + consumers, 1e-8);
    }

    @Test
    void perfectMeasurementHasNoRisk() {
        ToleranceInterval tolerance = new ToleranceInterval.AtLeast(-1);
        GlobalRisks risks = GlobalRisks.of(new NormalPrior(0, 1), 0, tolerance, tolerance);
        assertEquals(0, risks.consumersRisk());
        assertEquals(0, risks.producersRisk());
        assertEquals(0.8413447460685429, risks.accepted(), 1e-9);
        // Accepting from 0 on instead rejects the good ones between -1 and 0: Phi(0) - Phi(-1).
        GlobalRisks strict = GlobalRisks.of(new NormalPrior(0, 1), 0, tolerance, new ToleranceInterval.AtLeast(0));
        assertEquals(0.3413447460685429, strict.producersRisk(), 1e-12);
    }

    @Test
    void guardBandsKeepTheWantedRisk() {
        // Solved with SciPy 1.17.1: brentq(lambda g: risk(g) - wanted, 0, 5) with the risks above.
        NormalPrior watts = new NormalPrior(105, 4);
        ToleranceInterval rating = new ToleranceInterval.AtLeast(100);
        assertEquals(1.432344895133641, GlobalRisks.guardBandForConsumersRisk(watts, 1.5, rating, 0.005), 1e-7);
        assertEquals(1.2119938947393478, GlobalRisks.guardBandForProducersRisk(watts, 1.5, rating, 0.01), 1e-7);
        assertEquals(
                0.05561484915465933,
                GlobalRisks.guardBandForConsumersRisk(
                        new NormalPrior(1500, 0.12), 0.04, new ToleranceInterval.Within(1499.8, 1500.2), 0.002),
                1e-8);
        assertEquals(0, GlobalRisks.guardBandForConsumersRisk(watts, 1.5, rating, 0.05));
        assertEquals(0, GlobalRisks.guardBandForProducersRisk(watts, 1.5, rating, 0.05));
    }

    @Test
    void speaksOfTenThousandItems() {
        ToleranceInterval rating = new ToleranceInterval.AtLeast(100);
        assertEquals(
                "Of 10000 items tested about 202.8 would be accepted although they are bad, and about 355.5 would be"
                        + " rejected although they are good; 89.4 % of the items are good and 87.9 % would be accepted.",
                GlobalRisks.of(new NormalPrior(105, 4), 1.5, rating, rating).sentence());
    }

    @Test
    void priorAndMeasurementAreWeightedByTheirVariances() {
        // Weights 1/4 and 1/1: (100/4 + 110)/(1/4 + 1) = 108, variance 1/(1.25) = 0.8.
        Estimate posterior = new NormalPrior(100, 2).posterior(Estimate.of(110, 1));
        assertClose(108, posterior.value(), REL_EXACT);
        assertClose(Math.sqrt(0.8), posterior.standardUncertainty(), REL_EXACT);
        assertEquals(110, new NormalPrior(100, 2).posterior(Estimate.of(110, 0)).value());
        assertThrows(IllegalArgumentException.class, () -> new NormalPrior(0, 0));
        assertThrows(IllegalArgumentException.class, () -> new GlobalRisks(-0.1, 0, 0, 0));
    }
}

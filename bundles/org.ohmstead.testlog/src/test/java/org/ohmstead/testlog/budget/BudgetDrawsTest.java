// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.testlog.budget.BudgetSamples.channel;
import static org.ohmstead.testlog.budget.BudgetSamples.part;
import static org.ohmstead.testlog.budget.BudgetSamples.repeatability;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.AdaptiveMonteCarlo;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.IntervalKind;
import org.ohmstead.metrology.MethodComparison;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;

class BudgetDrawsTest {
    private static final long SEED = 20260411;
    private static final AdaptiveMonteCarlo.Settings MANY =
            new AdaptiveMonteCarlo.Settings(0.95, 3, IntervalKind.SYMMETRIC, 400_000);

    private static AdaptiveMonteCarlo draw(ChannelReading channel) {
        return ReadingBudget.of(channel).draw(MANY, SEED);
    }

    @Test
    void theModelIsDrawnAsItIsAndNotItsTangent() {
        // V normal with 5 %, R rectangular within +-10 %, Us rectangular within +-5 %. Exact moments of the product:
        // E V^2 = V^2 + u^2, E V^4 = V^4 + 6 V^2 u^2 + 3 u^4; E 1/R = ln((R+a)/(R-a))/2a, E 1/R^2 = 1/(R^2-a^2);
        // E 1/Us^2 = 1/(Us^2-b^2), E 1/Us^4 = ((Us-b)^-3 - (Us+b)^-3)/6b. The mean is 100.838, the deviation 13.0478,
        // also by SciPy
        // 1.17.1 (integrate.quad).
        double a = 0.1 * BudgetSamples.OHMS;
        double b = 0.05 * BudgetSamples.SUPPLY;
        AdaptiveMonteCarlo drawn = draw(channel(List.of(
                part("output volts", BudgetInput.OUTPUT_VOLTS, PartShape.NORMAL, 1),
                part("load resistance", BudgetInput.LOAD_OHMS, PartShape.RECTANGULAR, a / Math.sqrt(3)),
                part("supply volts", BudgetInput.SUPPLY_VOLTS, PartShape.RECTANGULAR, b / Math.sqrt(3)))));
        double volts = BudgetSamples.VOLTS;
        double ohms = BudgetSamples.OHMS;
        double supply = BudgetSamples.SUPPLY;
        double mean = (volts * volts + 1)
                * Math.log((ohms + a) / (ohms - a))
                / (2 * a)
                * supply
                * supply
                / (supply * supply - b * b);
        double square = (Math.pow(volts, 4) + 6 * volts * volts + 3)
                / (ohms * ohms - a * a)
                * Math.pow(supply, 4)
                * (Math.pow(supply - b, -3) - Math.pow(supply + b, -3))
                / (6 * b);
        double deviation = Math.sqrt(square - mean * mean);
        assertEquals(100.83828180491561, mean, 1e-9);
        assertEquals(13.047809924886343, deviation, 1e-6);
        double fiveErrors = 5 / Math.sqrt(drawn.trials());
        assertEquals(mean, drawn.result().mean(), fiveErrors * deviation);
        assertEquals(deviation, drawn.result().standardUncertainty(), fiveErrors * deviation);
        // The tangent's mean, 100, lies far outside.
        assertTrue(mean - 100 > 3 * fiveErrors * deviation);
    }

    @Test
    void aRulingRectangleIsToldByTheComparison() {
        // JCGM 101 9.2.4: three rectangles of standard deviation 1 and one of 10 make 95 % within +-17.0; the law of
        // propagation
        // says +-19.9.
        MethodComparison compared = ReadingBudget.of(channel(List.of(
                        part("one", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 1),
                        part("two", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 1),
                        part("three", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 1),
                        part("ten", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 10))))
                .monteCarlo(0.95, SEED);
        assertEquals(100 + 17.0, compared.monteCarloInterval().upper(), 0.1);
        assertEquals(100 - 17.0, compared.monteCarloInterval().lower(), 0.1);
        assertEquals(100 + 19.9, compared.gumInterval().upper(), 0.05);
        assertEquals(10.1, compared.monteCarlo().standardUncertainty(), 0.06);
        assertEquals(0.5, compared.tolerance());
        assertFalse(compared.agrees());
        assertTrue(compared.note("W").orElseThrow().contains("is too wide"), compared.sentence("W"));
    }

    @Test
    void aReadingRuledByItsMetersSpecificationGetsANote() {
        // 0.48 W rectangular beside small normal parts: +-0.987 W by the law of propagation, far less by drawing, since
        // a rectangle
        // of 0.48 W ends at 0.83 W.
        ReadingBudget budget = ReadingBudget.of(channel(List.of(
                part("output volts, specification", BudgetInput.OUTPUT_VOLTS, PartShape.RECTANGULAR, 0.048),
                part("load resistance", BudgetInput.LOAD_OHMS, PartShape.NORMAL, 0.004),
                part("supply volts, specification", BudgetInput.SUPPLY_VOLTS, PartShape.RECTANGULAR, 0.0036))));
        MethodComparison compared = budget.monteCarlo(0.95, SEED);
        assertFalse(compared.agrees());
        assertTrue(compared.note("W").orElseThrow().contains("is too wide"), compared.sentence("W"));
        assertEquals(
                budget.result().standardUncertainty(), compared.monteCarlo().standardUncertainty(), 0.005);
    }

    @Test
    void normalPartsLeaveNothingToRemark() {
        ReadingBudget budget = ReadingBudget.of(BudgetSamples.logged());
        MethodComparison compared = budget.monteCarlo(0.95, SEED);
        assertTrue(compared.agrees(), compared.sentence("W"));
        assertTrue(compared.note("W").isEmpty());
    }

    @Test
    void aNormalPartBesideARectangleOfTwice() {
        // Normal of 1 W and rectangle of 2 W: the 97.5 % quantile of the sum is 4.04774 W (SciPy 1.17.1,
        // integrate.quad, brentq).
        CoverageInterval interval = draw(channel(List.of(
                        part("normal", BudgetInput.POWER_WATTS, PartShape.NORMAL, 1),
                        part("rectangle", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 2))))
                .interval();
        assertEquals(104.0477, interval.upper(), 0.03);
        assertEquals(95.9523, interval.lower(), 0.03);
    }

    @Test
    void trianglesEndWhereTheyShould() {
        // Triangle of half-width sqrt 6: 97.5 % lie below sqrt 6 (1 - sqrt 0.05) (closed form).
        CoverageInterval interval = draw(channel(
                        List.of(part("triangle", BudgetInput.POWER_WATTS, PartShape.TRIANGULAR, 1))))
                .interval();
        assertEquals(100 + Math.sqrt(6) * (1 - Math.sqrt(0.05)), interval.upper(), 0.02);
    }

    @Test
    void fewDegreesOfFreedomAreDrawnFromStudentsDistribution() {
        // GUM table G.2: 95 % of a t distribution with 4 degrees of freedom lie within +-2.78.
        CoverageInterval interval = draw(channel(List.of(repeatability(1, 4)))).interval();
        assertEquals(102.776, interval.upper(), 0.04);
        assertEquals(97.224, interval.lower(), 0.04);
    }

    @Test
    void whollyCorrelatedErrorsCancelInTheModelToo() {
        ChannelReading channel = channel(
                List.of(
                        part("output volts", BudgetInput.OUTPUT_VOLTS, PartShape.RECTANGULAR, 0.2),
                        part("supply volts", BudgetInput.SUPPLY_VOLTS, PartShape.RECTANGULAR, 0.144),
                        part("rest", BudgetInput.POWER_WATTS, PartShape.NORMAL, 0.1)),
                new PartCorrelation("output volts", "supply volts", 1));
        AdaptiveMonteCarlo drawn = draw(channel);
        assertEquals(0.1, drawn.result().standardUncertainty(), 0.1 * 5 / Math.sqrt(drawn.trials()));
        assertEquals(100, drawn.result().mean(), 0.1 * 5 / Math.sqrt(drawn.trials()));
    }

    @Test
    void halfCorrelatedRectanglesKeepTheirShapeAndTheirCorrelation() {
        // sqrt(1 + 4 + 2 * 0.5 * 1 * 2) = sqrt 7, and no draw beyond the sum of the half-widths.
        ChannelReading channel = channel(
                List.of(
                        part("one", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 1),
                        part("two", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 2)),
                new PartCorrelation("one", "two", 0.5));
        AdaptiveMonteCarlo drawn = draw(channel);
        assertEquals(Math.sqrt(7), drawn.result().standardUncertainty(), 0.02);
        assertEquals(0, drawn.result().fractionAtLeast(100 + 3 * Math.sqrt(3) + 1e-9));
    }

    @Test
    void threePartsThatMoveTogetherAreTakenAsNormal() {
        // r = 0.5 between each two of three parts of 1 W: sqrt(3 + 6 * 0.5) = sqrt 6.
        ChannelReading channel = channel(
                List.of(
                        part("one", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 1),
                        part("two", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 1),
                        part("three", BudgetInput.POWER_WATTS, PartShape.RECTANGULAR, 1)),
                new PartCorrelation("one", "two", 0.5),
                new PartCorrelation("one", "three", 0.5),
                new PartCorrelation("two", "three", 0.5));
        ReadingBudget budget = ReadingBudget.of(channel);
        assertEquals(Math.sqrt(6), budget.result().standardUncertainty(), 1e-12);
        assertTrue(budget.notes().stream().anyMatch(note -> note.contains("all parts as normally distributed")));
        assertEquals(Math.sqrt(6), budget.draw(MANY, SEED).result().standardUncertainty(), 0.02);
    }

    @Test
    void theSameSeedGivesTheSameFigures() {
        ReadingBudget budget = ReadingBudget.of(BudgetSamples.logged());
        assertEquals(budget.monteCarlo(0.9, 7), budget.monteCarlo(0.9, 7));
    }
}

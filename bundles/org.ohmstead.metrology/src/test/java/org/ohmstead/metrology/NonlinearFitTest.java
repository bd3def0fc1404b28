// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.metrology.Tolerances.REL_1PPM;
import static org.ohmstead.metrology.Tolerances.assertClose;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class NonlinearFitTest {

    private static final double DIGITS = 6;

    static Stream<Arguments> certifiedSets() {
        return Stream.of(
                        "Misra1a",
                        "Misra1b",
                        "DanWood",
                        "Chwirut2",
                        "Roszman1",
                        "Kirby2",
                        "Eckerle4",
                        "Rat42",
                        "Rat43",
                        "MGH09",
                        "BoxBOD",
                        "Thurber",
                        "MGH10",
                        "Bennett5",
                        "Hahn1")
                .flatMap(name -> Stream.of(Arguments.of(name, 0), Arguments.of(name, 1)));
    }

    // NIST StRD nonlinear regression: every set, both official starts, the same settings for all.
    @ParameterizedTest
    @MethodSource("certifiedSets")
    void reachesCertifiedValues(String name, int start) throws IOException, FitException {
        NistProblem problem = NistProblem.read(name);
        FitResult result =
                NonlinearFit.of(NistModels.named(name), problem.starts()[start]).fit(problem.observations());
        assertTrue(result.converged());
        assertDigits(problem.rss(), result.rss(), "RSS");
        assertDigits(problem.residualStandardDeviation(), result.residualStandardDeviation(), "residual deviation");
        for (int j = 0; j < problem.certified().length; j++) {
            assertDigits(problem.certified()[j], result.parameter(j), "b" + (j + 1));
            assertDigits(
                    problem.standardDeviations()[j],
                    result.estimate(j).standardUncertainty(),
                    "standard deviation of b" + (j + 1));
        }
        assertEquals(problem.observations().size() - problem.certified().length, result.degreesOfFreedom());
    }

    private static void assertDigits(double certified, double actual, String what) {
        double found = NistProblem.correctDigits(actual, certified);
        assertTrue(found >= DIGITS, () -> what + " is " + actual + ", only " + found + " digits of " + certified);
    }

    @ParameterizedTest
    @MethodSource("certifiedSets")
    void testGradientsAgreeWithDifferences(String name, int start) throws IOException {
        // Guards the hand-made gradients of this test: a wrong one could converge too, but with wrong uncertainties.
        NistProblem problem = NistProblem.read(name);
        FitModel model = NistModels.named(name);
        double[] x = problem.observations().get(start).conditions();
        Propagation numeric = Propagation.numericScalar(
                b -> model.value(b, x),
                problem.certified(),
                Covariance.uncorrelated(new double[problem.certified().length]));
        double[] gradient = model.gradient(problem.certified(), x);
        double value = Math.abs(model.value(problem.certified(), x));
        for (int j = 0; j < gradient.length; j++) {
            double rounding = 1e-8 * value / Math.abs(problem.certified()[j]);
            double tolerance = rounding + 1e-6 * Math.abs(gradient[j]);
            assertEquals(numeric.sensitivity(0, j), gradient[j], tolerance, "b" + (j + 1));
        }
    }

    private static final FitModel LINE = new FitModel() {
        @Override
        public double value(double[] parameters, double[] conditions) {
            return parameters[0] + parameters[1] * conditions[0];
        }

        @Override
        public double[] gradient(double[] parameters, double[] conditions) {
            return new double[] {1, conditions[0]};
        }
    };

    private static List<Observation> line(double uncertainty) {
        // y = 2 + 0.5 x with residuals +1, -1, -1, +1 that a line cannot follow (they are orthogonal to 1 and x).
        return List.of(
                Observation.of(0, 3, uncertainty),
                Observation.of(1, 1.5, uncertainty),
                Observation.of(2, 2, uncertainty),
                Observation.of(3, 4.5, uncertainty));
    }

    @Test
    void bothBasesOfTheCovarianceHaveTheirClosedForm() throws FitException {
        // u²(slope) = sigma²/Sxx with Sxx = 5; sigma = 0.1 given, or s² = 4/2 from the scatter.
        FitResult result = NonlinearFit.of(LINE, 0, 0).fit(line(0.1));
        assertClose(2, result.parameter(0), REL_1PPM);
        assertClose(0.5, result.parameter(1), REL_1PPM);
        assertClose(4 / 0.01, result.rss(), REL_1PPM);
        assertClose(Math.sqrt(2.0 / 5), result.estimate(1).standardUncertainty(), REL_1PPM);
        assertEquals(2, result.estimate(1).degreesOfFreedom());
        assertClose(
                0.1 / Math.sqrt(5),
                result.covariance(CovarianceBasis.GIVEN_UNCERTAINTIES).standardUncertainty(1),
                REL_1PPM);
        FitResult given = NonlinearFit.of(LINE, 0, 0)
                .withBasis(CovarianceBasis.GIVEN_UNCERTAINTIES)
                .fit(line(0.1));
        assertClose(0.1 / Math.sqrt(5), given.standardUncertainties()[1], REL_1PPM);
        assertEquals(Double.POSITIVE_INFINITY, given.estimate(1).degreesOfFreedom());
        // r(intercept, slope) = -mean(x)/sqrt(mean(x²)) = -1.5/sqrt(3.5).
        assertClose(-1.5 / Math.sqrt(3.5), result.correlation(0, 1), REL_1PPM);
        assertClose(-1.5 / Math.sqrt(3.5), result.correlationMatrix()[1][0], REL_1PPM);
    }

    @Test
    void weightsPullTheFitToTheBetterReading() throws FitException {
        FitModel constant = new FitModel() {
            @Override
            public double value(double[] parameters, double[] conditions) {
                return parameters[0];
            }

            @Override
            public double[] gradient(double[] parameters, double[] conditions) {
                return new double[] {1};
            }
        };
        // Weighted mean, closed form: (10/1 + 20/4)/(1 + 1/4) = 12.
        List<Observation> unequal = List.of(Observation.of(0, 10, 1), Observation.of(0, 20, 2));
        FitResult result = NonlinearFit.of(constant, 1).fit(unequal);
        assertClose(12, result.parameter(0), REL_1PPM);
    }

    @Test
    void boundsInsideTheSolutionChangeNothing() throws IOException, FitException {
        // NIST StRD Misra1a; loose bounds of each kind.
        NistProblem problem = NistProblem.read("Misra1a");
        double infinite = Double.POSITIVE_INFINITY;
        NonlinearFit free = NonlinearFit.of(NistModels.named("Misra1a"), 250, 5e-4);
        List<NonlinearFit> bounded = List.of(
                free.withBounds(0, 0, infinite),
                free.withBounds(0, -infinite, 1000),
                free.withBounds(0, 10, 1000).withBounds(1, 0, 1e-2));
        for (NonlinearFit fit : bounded) {
            FitResult result = fit.fit(problem.observations());
            assertTrue(result.converged());
            assertTrue(result.parametersAtBounds().isEmpty());
            for (int j = 0; j < 2; j++) {
                assertClose(problem.certified()[j], result.parameter(j), REL_1PPM);
                assertClose(problem.standardDeviations()[j], result.standardUncertainties()[j], REL_1PPM);
            }
        }
    }

    @Test
    void aParameterOnItsBoundCountsAsFixed() throws FitException {
        // The best slope is 0.5; bounded to at most 0.2 the intercept becomes mean(y) - 0.2 mean(x) = 2.75 - 0.3.
        for (NonlinearFit fit : List.of(
                NonlinearFit.of(LINE, 0, 0).withBounds(1, -1, 0.2),
                NonlinearFit.of(LINE, 0, 0).withBounds(1, Double.NEGATIVE_INFINITY, 0.2))) {
            FitResult result = fit.fit(line(1));
            assertEquals(List.of(1), result.parametersAtBounds());
            assertClose(0.2, result.parameter(1), REL_1PPM);
            assertClose(2.45, result.parameter(0), REL_1PPM);
            assertEquals(0, result.standardUncertainties()[1]);
            assertClose(
                    0.5, result.covariance(CovarianceBasis.GIVEN_UNCERTAINTIES).standardUncertainty(0), REL_1PPM);
        }
    }

    @Test
    void stepsIntoUndefinedGroundAreTakenBack() throws FitException {
        // y = sqrt(b - x) is undefined for b < x; the first steps from b = 500 overshoot below the data.
        FitModel root = new FitModel() {
            @Override
            public double value(double[] parameters, double[] conditions) {
                return Math.sqrt(parameters[0] - conditions[0]);
            }

            @Override
            public double[] gradient(double[] parameters, double[] conditions) {
                return new double[] {0.5 / Math.sqrt(parameters[0] - conditions[0])};
            }
        };
        List<Observation> observations = new ArrayList<>();
        for (int x = 0; x < 5; x++) {
            observations.add(Observation.of(x, Math.sqrt(5.0 - x)));
        }
        FitResult result = NonlinearFit.of(root, 500).fit(observations);
        assertTrue(result.converged());
        assertClose(5, result.parameter(0), REL_1PPM);
        FitException exception =
                assertThrows(FitException.class, () -> NonlinearFit.of(root, 1).fit(observations));
        assertTrue(exception.getMessage().contains("no finite value"), exception.getMessage());
    }

    @Test
    void saysWhenItRanOutOfSteps() throws IOException, FitException {
        NistProblem problem = NistProblem.read("MGH10");
        FitResult result = NonlinearFit.of(NistModels.named("MGH10"), problem.starts()[0])
                .withMaximumIterations(5)
                .fit(problem.observations());
        assertFalse(result.converged());
        assertTrue(result.rss() > problem.rss());
    }

    @Test
    void saysWhichParameterTheDataDoNotDetermine() {
        List<Observation> samePlace = List.of(Observation.of(2, 1), Observation.of(2, 2), Observation.of(2, 3));
        FitException exception = assertThrows(
                FitException.class, () -> NonlinearFit.of(LINE, 0, 0).fit(samePlace));
        assertTrue(exception.getMessage().contains("parameter 2"), exception.getMessage());
    }

    @Test
    void rejectsTooFewObservationsAndStartsOutsideTheBounds() {
        List<Observation> one = List.of(Observation.of(1, 1));
        assertThrows(IllegalArgumentException.class, () -> NonlinearFit.of(LINE, 0, 0)
                .fit(one));
        assertThrows(IllegalArgumentException.class, () -> NonlinearFit.of(LINE, 0, 0)
                .withBounds(0, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> NonlinearFit.of(LINE, Double.NaN, 0));
    }

    @Test
    void exactFitHasNoScatterToScaleBy() throws FitException {
        FitResult exact =
                NonlinearFit.of(LINE, 0, 0).fit(List.of(Observation.of(0, 1, 0.1), Observation.of(1, 3, 0.1)));
        assertClose(2, exact.parameter(1), REL_1PPM);
        assertThrows(IllegalStateException.class, exact::covariance);
        // u²(y2 - y1) = 2 x 0.1².
        assertClose(
                Math.sqrt(0.02),
                exact.covariance(CovarianceBasis.GIVEN_UNCERTAINTIES).standardUncertainty(1),
                REL_1PPM);
    }
}

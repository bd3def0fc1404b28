// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.ohmstead.metrology.internal.Bounds;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.LeastSquaresAlgebra;
import org.ohmstead.metrology.internal.WeightedProblem;
import org.ohmstead.units.text.Messages;

/**
 * A fit of a {@link FitModel} by weighted nonlinear least squares: the sum of ((y - model)/u)² is made smallest by the
 * Levenberg-Marquardt method with the model's own gradient. It finds the minimum that the start leads to, so start
 * from a rough solution. Immutable.
 */
public final class NonlinearFit {

    private static final double TOLERANCE = 1e-14;
    private static final double STEP_BOUND_FACTOR = 100;
    private static final double RANKING_THRESHOLD = 1e-300;
    private static final int USUAL_ITERATIONS = 10_000;

    private final FitModel model;
    private final double[] start;
    private final List<Bounds> bounds;
    private final CovarianceBasis basis;
    private final int maximumIterations;

    /** How the search ended. */
    record Ending(int iterations, boolean converged, List<Integer> parametersAtBounds) {}

    private NonlinearFit(
            FitModel model, double[] start, List<Bounds> bounds, CovarianceBasis basis, int maximumIterations) {
        this.model = model;
        this.start = start;
        this.bounds = bounds;
        this.basis = basis;
        this.maximumIterations = maximumIterations;
    }

    /**
     * Returns a fit without bounds whose uncertainties come from the scatter ({@link
     * CovarianceBasis#RESIDUAL_SCATTER}).
     *
     * @param model the formula
     * @param start the first guess, one finite number per parameter
     */
    public static NonlinearFit of(FitModel model, double... start) {
        if (start.length == 0) {
            throw new IllegalArgumentException("start is empty but needs one number per parameter.");
        }
        List<Bounds> bounds = new ArrayList<>();
        for (double parameter : start) {
            Checks.finite("start", parameter);
            bounds.add(Bounds.NONE);
        }
        return new NonlinearFit(
                model, start.clone(), List.copyOf(bounds), CovarianceBasis.RESIDUAL_SCATTER, USUAL_ITERATIONS);
    }

    /**
     * Returns this fit with one parameter kept within bounds; the start must lie strictly between them.
     *
     * @param index which parameter, counted from 0
     * @param lower the lower bound or minus infinity
     * @param upper the upper bound or plus infinity
     */
    public NonlinearFit withBounds(int index, double lower, double upper) {
        Bounds bound = new Bounds(lower, upper);
        if (!bound.strictlyWithin(start[index])) {
            throw new IllegalArgumentException("start " + index + " is " + start[index]
                    + " but must lie strictly between its bounds " + lower + " and " + upper + ".");
        }
        List<Bounds> changed = new ArrayList<>(bounds);
        changed.set(index, bound);
        return new NonlinearFit(model, start, List.copyOf(changed), basis, maximumIterations);
    }

    /** Returns this fit with another source of its uncertainties. */
    public NonlinearFit withBasis(CovarianceBasis chosen) {
        return new NonlinearFit(model, start, bounds, chosen, maximumIterations);
    }

    /** Returns this fit with another limit of steps, at least 1 (usually 10000). */
    public NonlinearFit withMaximumIterations(int iterations) {
        Checks.positive("iterations", iterations);
        return new NonlinearFit(model, start, bounds, basis, iterations);
    }

    /**
     * Returns the parameters that fit best.
     *
     * @param observations at least as many as parameters
     * @throws FitException if the model has no finite value at the start, or if the data do not determine all
     * parameters
     */
    public FitResult fit(List<Observation> observations) throws FitException {
        if (observations.size() < start.length) {
            throw new IllegalArgumentException("observations has " + observations.size()
                    + " entries but must have at least as many as there are parameters, " + start.length + ".");
        }
        WeightedProblem problem = new WeightedProblem(model, observations, bounds);
        double[] inner = problem.inner(start);
        if (!problem.isFiniteAt(inner)) {
            throw new FitException(Messages.of(NonlinearFit.class).text("fit.start", Arrays.toString(start)));
        }
        boolean converged = true;
        int iterations;
        try {
            Optimum optimum = optimizer()
                    .optimize(new LeastSquaresBuilder()
                            .start(inner)
                            .target(problem.target())
                            .model(problem)
                            .maxEvaluations(Integer.MAX_VALUE)
                            .maxIterations(maximumIterations)
                            .build());
            iterations = optimum.getIterations();
        } catch (MathIllegalStateException stopped) {
            // The search ran out of iterations or of digits; the best point it saw is judged below.
            converged = false;
            iterations = maximumIterations;
        }
        return result(problem, observations.size(), converged, iterations);
    }

    private FitResult result(WeightedProblem problem, int count, boolean converged, int iterations)
            throws FitException {
        double[] parameters = problem.bestParameters();
        List<Integer> atBounds = new ArrayList<>();
        List<Integer> free = new ArrayList<>();
        for (int j = 0; j < parameters.length; j++) {
            (bounds.get(j).onBound(parameters[j]) ? atBounds : free).add(j);
        }
        double[][] unit = new double[parameters.length][parameters.length];
        if (!free.isEmpty()) {
            LeastSquaresAlgebra algebra = new LeastSquaresAlgebra(problem.jacobian(parameters, free));
            OptionalInt dependent = algebra.dependentColumn();
            if (dependent.isPresent()) {
                throw new FitException(Messages.of(NonlinearFit.class)
                        .text("fit.parameter", String.valueOf(free.get(dependent.getAsInt()) + 1)));
            }
            double[][] inverse = algebra.inverseNormalMatrix();
            for (int i = 0; i < inverse.length; i++) {
                for (int j = 0; j < inverse.length; j++) {
                    unit[free.get(i)][free.get(j)] = inverse[i][j];
                }
            }
        }
        Ending ending = new Ending(iterations, converged, atBounds);
        return new FitResult(
                parameters, Covariance.of(unit), basis, problem.bestRss(), count - parameters.length, ending);
    }

    private static LevenbergMarquardtOptimizer optimizer() {
        return new LevenbergMarquardtOptimizer(STEP_BOUND_FACTOR, TOLERANCE, TOLERANCE, TOLERANCE, RANKING_THRESHOLD);
    }
}

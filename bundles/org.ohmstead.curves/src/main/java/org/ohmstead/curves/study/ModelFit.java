// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.ohmstead.curves.internal.PeakPower;
import org.ohmstead.curves.internal.SmallSymmetric;
import org.ohmstead.curves.internal.StageCurve;
import org.ohmstead.curves.internal.StageFit;
import org.ohmstead.metrology.Covariance;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;

/** A supply model fitted to readings by weighted nonlinear least squares on the power. Immutable. */
public final class ModelFit {
    private static final Messages TEXTS = Messages.of(ModelFit.class);

    private static final double CHANCE = 0.95;
    private static final double CERTAIN = 1e-6;

    private final Terrain terrain;
    private final ModelForm form;
    private final StageFit fit;
    private final StudyRequest request;
    private final boolean fromScatter;
    private final double varianceFactor;
    private final double degreesOfFreedom;
    private final double conditionNumber;
    private final double relativeScatter;
    /** Made when first asked for; making it twice does no harm. */
    private volatile FitDiagnostics diagnostics;

    private volatile double highestLeverage = -1;

    ModelFit(Terrain terrain, ModelForm form, StageFit fit, StudyRequest request) {
        this.terrain = terrain;
        this.form = form;
        this.fit = fit;
        this.request = request;
        int freedom = freedom();
        this.fromScatter = fromScatter(request.basis(), fit.objective(), freedom);
        if (request.robust()) {
            varianceFactor = fit.covarianceFactor();
        } else {
            varianceFactor = fromScatter ? fit.objective() / freedom : 1;
        }
        boolean scattered = request.robust() ? fit.robustScale() > 1 && freedom > 0 : fromScatter;
        this.degreesOfFreedom = scattered ? freedom : Double.POSITIVE_INFINITY;
        this.conditionNumber = SmallSymmetric.scaledCondition(fit.solution().normal(), parameterCount());
        this.relativeScatter = relativeScatter(terrain.points());
    }

    private static boolean fromScatter(UncertaintyBasis basis, double chiSquared, int freedom) {
        if (freedom < 1 || basis == UncertaintyBasis.READINGS) {
            return false;
        }
        return basis == UncertaintyBasis.SCATTER
                || chiSquared > freedom
                        && new ChiSquaredDistribution(freedom).cumulativeProbability(chiSquared) > CHANCE;
    }

    private List<ResidualPoint> residuals() {
        double[] standardised =
                StageFit.residuals(terrain.data(), fit.solution().slots());
        double scale = deviationFactor();
        double[] gradient = new double[StageCurve.SLOTS];
        List<ResidualPoint> residuals = new ArrayList<>();
        for (int i = 0; i < standardised.length; i++) {
            StudyPoint point = terrain.points().get(i);
            double peakVolts = peak(
                    point.supplyVolts(), point.channelOhms(), terrain.data().progress()[i], gradient);
            double weight = fit.weights()[i];
            double leverage = leverage(i, peakVolts, gradient);
            double deviation = scale * Math.sqrt(Math.max(0, 1 - leverage));
            double residualWatts = standardised[i] * point.standardUncertaintyWatts();
            residuals.add(new ResidualPoint(
                    point,
                    point.powerWatts() - residualWatts,
                    residualWatts,
                    standardised[i],
                    leverage,
                    deviation > CERTAIN ? standardised[i] / deviation : 0,
                    weight));
        }
        return residuals;
    }

    private double peak(double supplyVolts, double channelOhms, double progress, double[] gradient) {
        return StageCurve.peakVolts(fit.solution().slots(), supplyVolts, channelOhms, progress, gradient);
    }

    private double leverage(int reading, double peakVolts, double[] gradient) {
        StudyPoint point = terrain.points().get(reading);
        double perVolt = point.channels() * peakVolts / point.channelOhms() / point.standardUncertaintyWatts();
        return Math.min(1, fit.weights()[reading] * perVolt * perVolt * unitVariance(gradient));
    }

    private double highestLeverage() {
        double highest = highestLeverage;
        if (highest < 0) {
            double[] gradient = new double[StageCurve.SLOTS];
            highest = 0;
            for (int i = 0; i < terrain.points().size(); i++) {
                StudyPoint point = terrain.points().get(i);
                double progress = terrain.data().progress()[i];
                double peakVolts = peak(point.supplyVolts(), point.channelOhms(), progress, gradient);
                highest = Math.max(highest, leverage(i, peakVolts, gradient));
            }
            highestLeverage = highest;
        }
        return highest;
    }

    private double unitVariance(double[] gradient) {
        double[][] inverse = fit.solution().covariance();
        int[] free = fit.solution().free();
        double sum = 0;
        for (int i = 0; i < free.length; i++) {
            for (int j = 0; j < free.length; j++) {
                sum += gradient[free[i]] * gradient[free[j]] * inverse[i][j];
            }
        }
        return Math.max(0, sum);
    }

    private double deviationFactor() {
        boolean robust = fit.robustScale() > 1 || fit.covarianceFactor() != 1;
        return robust || !fromScatter ? fit.robustScale() : Math.sqrt(varianceFactor);
    }

    /** Returns which kind of model was fitted. */
    public ModelKind kind() {
        return form.kind();
    }

    /** Returns the model with the values found. */
    public SupplyModel model() {
        return form.model(fit.solution().slots());
    }

    /** Returns the values found, in the order of the covariance matrix. */
    public List<FittedParameter> parameters() {
        Covariance covariance = covariance();
        List<FittedParameter> found = new ArrayList<>();
        for (int j = 0; j < form.parameters().size(); j++) {
            StageParameter parameter = form.parameters().get(j);
            double value = parameter.sign() * fit.solution().slots()[parameter.slot()];
            boolean atBound = fit.solution().atBound()[j];
            found.add(new FittedParameter(
                    parameter, new Estimate(value, covariance.standardUncertainty(j), degreesOfFreedom), atBound));
        }
        return List.copyOf(found);
    }

    /** Returns one of the values found, or an exception if this kind of model has none such. */
    public Estimate parameter(StageParameter parameter) {
        return parameters().stream()
                .filter(found -> found.parameter() == parameter)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "parameter is " + parameter + " but this fit has only " + form.parameters() + "."))
                .estimate();
    }

    /** Returns the covariance matrix of {@link #parameters()}, by linearization at the solution. */
    public Covariance covariance() {
        double[][] entries = new double[parameterCount()][parameterCount()];
        for (int i = 0; i < entries.length; i++) {
            for (int j = 0; j < entries.length; j++) {
                double sign = form.parameters().get(i).sign()
                        * form.parameters().get(j).sign();
                entries[i][j] = sign * varianceFactor * fit.solution().covariance()[i][j];
            }
        }
        return Covariance.of(entries);
    }

    /** Returns chi², or in a robust fit the sum of Huber's loss that takes its place. */
    public double chiSquared() {
        return fit.objective();
    }

    /** Returns the number of readings minus the number of values found. */
    public int freedom() {
        return terrain.points().size() - parameterCount();
    }

    /** Returns how well the uncertainties are known: infinite if they come from the readings' own. */
    public double degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /** Returns whether the uncertainties come from the scatter about the curve. */
    public boolean uncertaintyFromScatter() {
        return fromScatter;
    }

    /** Returns how many times more the readings scatter than their uncertainties say; absent without freedom. */
    public OptionalDouble scatterRatio() {
        return freedom() > 0 ? OptionalDouble.of(Math.sqrt(fit.objective() / freedom())) : OptionalDouble.empty();
    }

    /** Returns residuals, leverages and what they show. */
    public FitDiagnostics diagnostics() {
        FitDiagnostics made = diagnostics;
        if (made == null) {
            made = FitDiagnostics.of(residuals(), conditionNumber);
            diagnostics = made;
        }
        return made;
    }

    boolean onBound() {
        for (boolean bound : fit.solution().atBound()) {
            if (bound) {
                return true;
            }
        }
        return false;
    }

    double conditionNumber() {
        return conditionNumber;
    }

    int parameterCount() {
        return form.parameters().size();
    }

    Terrain terrain() {
        return terrain;
    }

    StageFit fit() {
        return fit;
    }

    StudyRequest request() {
        return request;
    }

    double[] slots() {
        return fit.solution().slots().clone();
    }

    /**
     * Returns the power, cold, at a supply voltage into a load, with its uncertainty, or why the readings do not say.
     *
     * @param supplyVolts at the terminals, above 0
     * @param loadOhms as connected, above 0
     * @param mode how the channels meet it
     */
    public PowerPrediction predict(double supplyVolts, double loadOhms, Mode mode) {
        StudyPoint place = StudyPoint.of(mode, loadOhms, supplyVolts, 0, 0);
        if (!(supplyVolts > 0) || !(loadOhms > 0)) {
            return new PowerPrediction.Unknown(TEXTS.text("predict.positive"));
        }
        double channelOhms = place.channelOhms();
        if (!terrain.severalLoads() && otherLoad(channelOhms)) {
            return new PowerPrediction.Unknown(TEXTS.text("predict.oneLoad"));
        }
        double[] gradient = new double[StageCurve.SLOTS];
        double peakVolts = peak(supplyVolts, channelOhms, 0, gradient);
        if (Double.isNaN(peakVolts)) {
            return new PowerPrediction.Unknown(TEXTS.text("predict.cancelled"));
        }
        double unitVariance = unitVariance(gradient);
        int channels = place.channels();
        double powerWatts = channels * PeakPower.watts(peakVolts, channelOhms);
        double curve =
                channels * PeakPower.standardUncertaintyWatts(peakVolts, varianceFactor * unitVariance, channelOhms);
        double relative = relativeScatter;
        double perVolt =
                relative > 0 && powerWatts > 0 ? channels * peakVolts / channelOhms / (relative * powerWatts) : 0;
        ExtrapolationDistance distance = new ExtrapolationDistance(
                outside(terrain.lowestVolts(), terrain.highestVolts(), supplyVolts),
                outside(terrain.lowestOhms(), terrain.highestOhms(), channelOhms),
                perVolt * perVolt * unitVariance / Math.max(CERTAIN, highestLeverage()));
        double scatter = relative * deviationFactor() * powerWatts;
        return new PowerPrediction.Predicted(
                supplyVolts,
                loadOhms,
                mode,
                powerWatts,
                curve,
                Math.hypot(curve, scatter),
                Math.hypot(curve, request.sharedRelativeUncertainty() * powerWatts),
                degreesOfFreedom,
                distance);
    }

    /** Root mean square of the readings' relative uncertainties. */
    private static double relativeScatter(List<StudyPoint> points) {
        double sum = 0;
        for (StudyPoint point : points) {
            double relative = point.standardUncertaintyWatts() / point.powerWatts();
            sum += relative * relative;
        }
        return Math.sqrt(sum / points.size());
    }

    private boolean otherLoad(double channelOhms) {
        return channelOhms > terrain.highestOhms() * Terrain.SAME_LOAD_RATIO
                || channelOhms * Terrain.SAME_LOAD_RATIO < terrain.lowestOhms();
    }

    private static double outside(double lowest, double highest, double value) {
        return Math.max(0, Math.max(lowest - value, value - highest));
    }

    /**
     * Returns the supply voltage at which a power is just reached, cold; absent when no supply voltage gives it or the
     * readings do not say.
     *
     * @param powerWatts above 0, per channel in stereo, in the load otherwise
     * @param loadOhms as connected, above 0
     * @param mode how the channels meet it
     */
    public OptionalDouble supplyVoltsFor(double powerWatts, double loadOhms, Mode mode) {
        StudyPoint place = StudyPoint.of(mode, loadOhms, 1, powerWatts, 0);
        double[] slots = fit.solution().slots();
        double channelOhms = place.channelOhms();
        double neededVolts = Math.sqrt(2 * channelOhms * powerWatts / place.channels());
        double totalOhms = channelOhms + slots[StageCurve.OUTPUT];
        boolean known = terrain.severalLoads() || !otherLoad(channelOhms);
        boolean possible =
                totalOhms > 0 && neededVolts <= slots[StageCurve.LIMIT] * channelOhms && slots[StageCurve.GAIN] > 0;
        if (!known || !possible) {
            return OptionalDouble.empty();
        }
        double openVolts = neededVolts * totalOhms / channelOhms;
        double volts = (openVolts + slots[StageCurve.SATURATION]) / slots[StageCurve.GAIN];
        return volts > 0 && volts <= slots[StageCurve.KNEE] ? OptionalDouble.of(volts) : OptionalDouble.empty();
    }

    /**
     * Returns by how many percent the power changes with one more volt of supply, with its uncertainty; absent where
     * there is no power.
     *
     * @param supplyVolts at the terminals, above 0
     * @param loadOhms as connected, above 0
     * @param mode how the channels meet it
     */
    public Optional<Estimate> percentPerVolt(double supplyVolts, double loadOhms, Mode mode) {
        double[] gradient = new double[StageCurve.SLOTS];
        double channelOhms = StudyPoint.of(mode, loadOhms, supplyVolts, 0, 0).channelOhms();
        double peakVolts = peak(supplyVolts, channelOhms, 0, gradient);
        if (!(peakVolts > 0)) {
            return Optional.empty();
        }
        double[] slots = fit.solution().slots();
        boolean steady = supplyVolts >= slots[StageCurve.KNEE] || gradient[StageCurve.LIMIT] > 0;
        if (steady) {
            return Optional.of(new Estimate(0, 0, degreesOfFreedom));
        }
        double gain = slots[StageCurve.GAIN];
        double saturation = slots[StageCurve.SATURATION];
        double openVolts = gain * supplyVolts - saturation;
        // d(200 g/(g V - V_s)) by g and V_s.
        double[] slope = new double[StageCurve.SLOTS];
        slope[StageCurve.GAIN] = -200 * saturation / (openVolts * openVolts);
        slope[StageCurve.SATURATION] = 200 * gain / (openVolts * openVolts);
        double uncertainty = Math.sqrt(varianceFactor * unitVariance(slope));
        return Optional.of(new Estimate(200 * gain / openVolts, uncertainty, degreesOfFreedom));
    }
}

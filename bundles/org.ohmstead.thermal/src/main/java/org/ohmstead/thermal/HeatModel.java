// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Everything that gets warm, as first-order modes that know nothing of one another: each follows the powers by dx/dt = (B P - x) / tau, and
 * the temperature of a point is that of the air, plus a weighted sum of modes, plus what powers add at once. While the powers do not change
 * the modes are moved by their exact solution, so that a step of a day is as right as one of a millisecond.
 *
 * <p>The state is an array of {@link #modeCount} temperature rises in kelvins that the caller owns; {@link #cold} makes one. A model itself
 * never changes, so threads may share it.
 */
public final class HeatModel {
    private final double[] tauSeconds;
    private final int[][] modeSources;
    private final double[][] modeKelvinPerWatt;
    private final List<String> sources;
    private final List<HeatPoint> points;
    private final int[][] pointModes;
    private final double[][] pointWeights;
    private final int[][] pointSources;
    private final double[][] pointKelvinPerWatt;

    private HeatModel(Builder from) {
        tauSeconds = from.tauSeconds.stream().mapToDouble(Double::doubleValue).toArray();
        modeSources = from.modeSources.toArray(int[][]::new);
        modeKelvinPerWatt = from.modeKelvinPerWatt.toArray(double[][]::new);
        sources = List.copyOf(from.sources.keySet().stream()
                .sorted((one, other) -> from.sources.get(one) - from.sources.get(other))
                .toList());
        points = List.copyOf(from.points);
        pointModes = from.pointModes.toArray(int[][]::new);
        pointWeights = from.pointWeights.toArray(double[][]::new);
        pointSources = from.pointSources.toArray(int[][]::new);
        pointKelvinPerWatt = from.pointKelvinPerWatt.toArray(double[][]::new);
    }

    private HeatModel(HeatModel like, List<HeatPoint> points) {
        tauSeconds = like.tauSeconds;
        modeSources = like.modeSources;
        modeKelvinPerWatt = like.modeKelvinPerWatt;
        sources = like.sources;
        this.points = points;
        pointModes = like.pointModes;
        pointWeights = like.pointWeights;
        pointSources = like.pointSources;
        pointKelvinPerWatt = like.pointKelvinPerWatt;
    }

    /**
     * Returns this model with lower limits: for mean powers while bursts swing the points about the mean.
     *
     * @param kelvin by how much, by the id of a point; others keep their limits
     */
    public HeatModel withLimitsLowered(Map<String, Double> kelvin) {
        List<HeatPoint> lowered = points.stream()
                .map(point -> point.lowered(kelvin.getOrDefault(point.id(), 0.0)))
                .toList();
        return new HeatModel(this, lowered);
    }

    /** Returns the number of modes: the length of a state. */
    public int modeCount() {
        return tauSeconds.length;
    }

    /** Returns the time constant of a mode in seconds. */
    public double tauSeconds(int mode) {
        return tauSeconds[mode];
    }

    /** Returns the ids of what gives off heat, in the order of the powers. */
    public List<String> sources() {
        return sources;
    }

    /** Returns the number of a source, or -1 when there is none of that id. */
    public int sourceIndex(String id) {
        return sources.indexOf(id);
    }

    /** Returns the places that are watched. */
    public List<HeatPoint> points() {
        return points;
    }

    /** Returns the number of a point, or -1 when there is none of that id. */
    public int pointIndex(String id) {
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).id().equals(id)) {
                return i;
            }
        }
        return -1;
    }

    /** Returns the state in which everything has the air's temperature. */
    public double[] cold() {
        return new double[tauSeconds.length];
    }

    /** Returns the state that constant powers in watts lead to in the end. */
    public double[] settled(double[] watts) {
        double[] state = cold();
        for (int mode = 0; mode < state.length; mode++) {
            state[mode] = target(mode, watts);
        }
        return state;
    }

    /**
     * Moves a state on, exactly, by a time in which the powers do not change.
     *
     * @param state what to change
     * @param watts power of each source in watts
     * @param seconds how long, at least 0
     */
    public void advance(double[] state, double[] watts, double seconds) {
        for (int mode = 0; mode < state.length; mode++) {
            double target = target(mode, watts);
            state[mode] = target + (state[mode] - target) * Math.exp(-seconds / tauSeconds[mode]);
        }
    }

    /**
     * Returns the temperature of a point above that of the air, in kelvins.
     *
     * @param point its number
     * @param state the modes
     * @param watts power of each source at this moment, in watts
     */
    public double riseKelvin(int point, double[] state, double[] watts) {
        double kelvin = 0;
        int[] modes = pointModes[point];
        double[] weights = pointWeights[point];
        for (int i = 0; i < modes.length; i++) {
            kelvin += weights[i] * state[modes[i]];
        }
        int[] direct = pointSources[point];
        for (int i = 0; i < direct.length; i++) {
            kelvin += pointKelvinPerWatt[point][i] * watts[direct[i]];
        }
        return kelvin;
    }

    /** Returns the temperature of a point in degrees Celsius that constant powers lead to in the end. */
    public double settledCelsius(int point, double[] watts, double airCelsius) {
        return airCelsius + riseKelvin(point, settled(watts), watts);
    }

    /**
     * Returns the hottest that a point gets while powers do not change, found exactly, however often the temperature turns.
     *
     * @param point its number
     * @param state the modes at the start; not changed
     * @param watts power of each source in watts
     * @param seconds how long, at least 0; may be infinite
     */
    public HeatPeak peak(int point, double[] state, double[] watts, double seconds) {
        if (Double.isNaN(seconds) || seconds < 0) {
            throw new IllegalArgumentException("seconds is " + seconds + "; it must be at least 0");
        }
        ModeSum sum = course(point, state, watts);
        double when = sum.highestAt(seconds);
        return new HeatPeak(sum.at(when), when);
    }

    /**
     * Returns when a point is first as hot as asked, or hotter, while powers do not change.
     *
     * @param point its number
     * @param state the modes at the start; not changed
     * @param watts power of each source in watts
     * @param riseKelvin what to wait for, in kelvins above the air
     */
    public ReachTime heatsTo(int point, double[] state, double[] watts, double riseKelvin) {
        ModeSum sum = course(point, state, watts);
        return answer(sum, sum.firstAtOrAbove(riseKelvin));
    }

    /** Returns when a point is first as cool as asked, or cooler, while powers do not change; as {@link #heatsTo}. */
    public ReachTime coolsTo(int point, double[] state, double[] watts, double riseKelvin) {
        ModeSum sum = course(point, state, watts);
        return answer(sum, sum.firstAtOrBelow(riseKelvin));
    }

    private static ReachTime answer(ModeSum sum, OptionalDouble when) {
        return when.isPresent() ? new ReachTime.At(when.getAsDouble()) : new ReachTime.Never(sum.settled());
    }

    private ModeSum course(int point, double[] state, double[] watts) {
        int[] modes = pointModes[point];
        double[] taus = new double[modes.length];
        double[] amplitudes = new double[modes.length];
        for (int i = 0; i < modes.length; i++) {
            taus[i] = tauSeconds[modes[i]];
            amplitudes[i] = pointWeights[point][i] * (state[modes[i]] - target(modes[i], watts));
        }
        return ModeSum.of(riseKelvin(point, settled(watts), watts), taus, amplitudes);
    }

    /** Returns what a mode tends to under constant powers, in kelvins. */
    double target(int mode, double[] watts) {
        double kelvin = 0;
        int[] from = modeSources[mode];
        double[] gains = modeKelvinPerWatt[mode];
        for (int i = 0; i < from.length; i++) {
            kelvin += gains[i] * watts[from[i]];
        }
        return kelvin;
    }

    int[] modesOf(int point) {
        return pointModes[point];
    }

    double[] weightsOf(int point) {
        return pointWeights[point];
    }

    /** Puts a model together; used once. */
    public static final class Builder {
        private final Map<String, Integer> sources = new HashMap<>();
        private final List<Double> tauSeconds = new ArrayList<>();
        private final List<int[]> modeSources = new ArrayList<>();
        private final List<double[]> modeKelvinPerWatt = new ArrayList<>();
        private final List<HeatPoint> points = new ArrayList<>();
        private final List<int[]> pointModes = new ArrayList<>();
        private final List<double[]> pointWeights = new ArrayList<>();
        private final List<int[]> pointSources = new ArrayList<>();
        private final List<double[]> pointKelvinPerWatt = new ArrayList<>();

        /** Returns the number of a source, adding it when it is new. */
        public int source(String id) {
            Checks.named(id, "id");
            return sources.computeIfAbsent(id, any -> sources.size());
        }

        /**
         * Adds a mode and returns its number.
         *
         * @param tau its time constant in seconds, above 0
         * @param from numbers of the sources that drive it
         * @param kelvinPerWatt where one watt of each leads it to in the end; may be below 0
         */
        public int mode(double tau, int[] from, double[] kelvinPerWatt) {
            tauSeconds.add(Checks.positive(tau, "tau"));
            modeSources.add(sameLength(from, kelvinPerWatt).clone());
            modeKelvinPerWatt.add(kelvinPerWatt.clone());
            return tauSeconds.size() - 1;
        }

        /**
         * Adds a point that is a weighted sum of modes, and of what powers add at once.
         *
         * @param point its name and limit
         * @param modes numbers of the modes
         * @param weights of each
         * @param from numbers of sources that act at once
         * @param kelvinPerWatt of each
         */
        public Builder point(HeatPoint point, int[] modes, double[] weights, int[] from, double[] kelvinPerWatt) {
            if (points.stream().anyMatch(other -> other.id().equals(point.id()))) {
                throw new IllegalArgumentException("point \"" + point.id() + "\" is there twice");
            }
            points.add(point);
            pointModes.add(sameLength(modes, weights).clone());
            pointWeights.add(weights.clone());
            pointSources.add(sameLength(from, kelvinPerWatt).clone());
            pointKelvinPerWatt.add(kelvinPerWatt.clone());
            return this;
        }

        /** Adds a point that a single source warms through a Foster chain to the air. */
        public Builder chain(HeatPoint point, String source, FosterChain chain) {
            int from = source(source);
            int[] modes = new int[chain.stages().size()];
            for (int i = 0; i < modes.length; i++) {
                FosterStage stage = chain.stages().get(i);
                modes[i] = mode(stage.tauSeconds(), new int[] {from}, new double[] {stage.kelvinPerWatt()});
            }
            double[] weights = new double[modes.length];
            Arrays.fill(weights, 1);
            return point(point, modes, weights, new int[0], new double[0]);
        }

        /** Returns the model. */
        public HeatModel build() {
            return new HeatModel(this);
        }

        private static int[] sameLength(int[] numbers, double[] values) {
            if (numbers.length != values.length) {
                throw new IllegalArgumentException(
                        "there are " + numbers.length + " numbers and " + values.length + " values; they go in pairs");
            }
            return numbers;
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * Least-squares fit of direct voltage, fundamental and harmonics at one common frequency, with that frequency as an
 * unknown. The window is the weight of the squares: it keeps components that are not modelled (hum, tones, folded
 * harmonics) out of the result.
 */
final class HarmonicFit {
    private static final int MAX_STEPS = 15;
    private static final int MAX_ORDERS = 100;
    private static final double[] START_OFFSETS_BINS = {0, -0.25, 0.25};
    /** Change of the angle over the whole record at which a frequency is found: what is left is far smaller. */
    private static final double FOUND_ANGLE = 1e-8;

    /** Change at which it is near enough to go on with more orders. */
    private static final double NEAR_ANGLE = 1e-5;
    /** Searches that come this close to one another are in the same valley. */
    private static final double SAME_ANGLE = 1e-3;

    private final double radiansPerSample;
    private final int orders;
    private final double[] factors;
    private final double[] amplitudesVolts;
    private final double[] samples;
    private double[] residual;

    private HarmonicFit(double radiansPerSample, int orders, double[] factors, double[] samples) {
        this.radiansPerSample = radiansPerSample;
        this.orders = orders;
        this.factors = factors;
        this.samples = samples;
        this.amplitudesVolts = new double[orders + 1];
        for (int n = 1; n <= orders; n++) {
            amplitudesVolts[n] = Math.sqrt(factors[n] * factors[n] + factors[orders + n] * factors[orders + n]);
        }
    }

    /**
     * Fits the samples.
     *
     * @param samples the record
     * @param startRadiansPerSample frequency to start from, right to about half a cycle over the record
     * @param atLeastOrders orders to model if half the sample rate allows
     * @param refineFrequency whether the frequency is an unknown
     */
    static HarmonicFit of(double[] samples, double startRadiansPerSample, int atLeastOrders, boolean refineFrequency) {
        double cycles = samples.length * startRadiansPerSample / (2 * Math.PI);
        Window window = windowFor(cycles);
        int orders = ordersFor(samples.length, startRadiansPerSample, window, atLeastOrders);
        double frequency = startRadiansPerSample;
        if (!refineFrequency || window == Window.BLACKMAN_HARRIS_4) {
            double[] products = window.centredProducts(samples);
            double found = refineFrequency ? refineFirst(products, window, frequency) : frequency;
            return linear(samples, window, products, orders, found);
        }
        WeightedRecord record = WeightedRecord.of(samples, window);
        frequency = refine(record, 1, frequency, NEAR_ANGLE);
        // A narrow window lets harmonics pull the frequency unless they are fitted too. With few cycles and strong
        // harmonics the pull may end in a wrong valley, so the fit is started from three places.
        HarmonicFit best = null;
        double[] tried = new double[START_OFFSETS_BINS.length];
        for (int i = 0; i < tried.length; i++) {
            double offset = START_OFFSETS_BINS[i] * 2 * Math.PI / samples.length;
            double from = Math.max(0.5 * frequency, frequency + offset);
            tried[i] = refine(record, Math.min(5, orders), from, NEAR_ANGLE);
            if (isNearOneOf(tried, i, SAME_ANGLE / samples.length)) {
                continue;
            }
            // The highest orders come last: from a start that is too low they would be beyond half the sample rate.
            double second = refine(record, Math.max(1, orders * 4 / 5), tried[i], NEAR_ANGLE);
            int allOrders = ordersFor(samples.length, second, window, atLeastOrders);
            double last = refine(record, allOrders, second, FOUND_ANGLE);
            HarmonicFit fit = linear(samples, window, record.products(), allOrders, last);
            best = best == null || fit.residualSquare() < best.residualSquare() ? fit : best;
        }
        return best;
    }

    /** A fit that was made elsewhere, with what it leaves of the samples. */
    static HarmonicFit known(
            double radiansPerSample, int orders, double[] factors, double[] samples, double[] residual) {
        HarmonicFit fit = new HarmonicFit(radiansPerSample, orders, factors, samples);
        fit.residual = residual;
        return fit;
    }

    private static boolean isNearOneOf(double[] values, int index, double reach) {
        for (int i = 0; i < index; i++) {
            if (Math.abs(values[i] - values[index]) < reach) {
                return true;
            }
        }
        return false;
    }

    private static HarmonicFit linear(
            double[] samples, Window window, double[] products, int orders, double frequency) {
        HarmonicBasis basis = new HarmonicBasis(samples.length, frequency, orders);
        return new HarmonicFit(frequency, orders, basis.normal(window).solve(basis.project(products)), samples);
    }

    /** Finds the frequency with the fundamental alone, from sums of blocks. */
    private static double refineFirst(double[] products, Window window, double start) {
        int size = products.length;
        double plain = Sums.of(products, 0, size);
        double frequency = start;
        double largest = Math.PI / size;
        BlockMoments moments = new BlockMoments(products, frequency);
        for (int step = 0; step < MAX_STEPS; step++) {
            if (!moments.reaches(frequency)) {
                moments = new BlockMoments(products, frequency);
            }
            double[] sums = moments.sums(frequency);
            // The sum of the moments themselves has no part in a step.
            FrequencyStep found = new FrequencyStep(
                    size, frequency, window, new double[] {plain, sums[0], sums[1]}, new double[] {0, sums[2], sums[3]
                    });
            if (!found.isDetermined()) {
                return frequency;
            }
            double change = Math.max(-largest, Math.min(largest, found.radiansPerSample()));
            frequency = Math.max(0.25 * start, Math.min(0.999 * Math.PI, frequency + change));
            if (Math.abs(change) * size < FOUND_ANGLE) {
                return frequency;
            }
        }
        return frequency;
    }

    private double residualSquare() {
        double sum = 0;
        for (double value : residual()) {
            sum += value * value;
        }
        return sum;
    }

    static Window windowFor(double cycles) {
        if (cycles >= 8) {
            return Window.BLACKMAN_HARRIS_4;
        }
        return cycles >= 4.5 ? Window.HANN : Window.RECTANGULAR;
    }

    /** How many orders can be told apart. */
    static int ordersFor(int size, double radiansPerSample, Window window, int atLeastOrders) {
        // Close to half the sample rate sine and cosine can no longer be told apart.
        double highest = Math.PI - window.mainLobeHalfWidthBins() * Math.PI / size;
        int fitting = (int) Math.floor(highest / radiansPerSample);
        int wanted = window == Window.BLACKMAN_HARRIS_4 ? atLeastOrders : MAX_ORDERS;
        int supported = Math.max(1, size / 6);
        return Math.max(1, Math.min(Math.min(fitting, Math.max(wanted, atLeastOrders)), supported));
    }

    private static double refine(WeightedRecord record, int orders, double start, double smallestAngle) {
        int size = record.samples().length;
        double frequency = start;
        double largest = Math.PI / size;
        for (int step = 0; step < MAX_STEPS; step++) {
            HarmonicBasis basis = new HarmonicBasis(size, frequency, orders);
            FrequencyStep found = new FrequencyStep(basis, record.window(), record.products(), record.moments());
            if (!found.isDetermined()) {
                return frequency;
            }
            double change = Math.max(-largest, Math.min(largest, found.radiansPerSample()));
            frequency = Math.max(0.25 * start, Math.min(0.999 * Math.PI / orders, frequency + change));
            if (Math.abs(change) * size < smallestAngle) {
                return frequency;
            }
        }
        return frequency;
    }

    /**
     * A record and what is made of it once for all steps.
     *
     * @param samples the record
     * @param window weight of the squares
     * @param products samples times weight
     * @param moments products times the instant, counted from the middle of the record
     */
    private record WeightedRecord(double[] samples, Window window, double[] products, double[] moments) {
        static WeightedRecord of(double[] samples, Window window) {
            double[] products = window.centredProducts(samples);
            double[] moments = new double[samples.length];
            double middle = 0.5 * (samples.length - 1);
            for (int i = 0; i < samples.length; i++) {
                moments[i] = products[i] * (i - middle);
            }
            return new WeightedRecord(samples, window, products, moments);
        }
    }

    double radiansPerSample() {
        return radiansPerSample;
    }

    int orders() {
        return orders;
    }

    double dcVolts() {
        return factors[0];
    }

    /** Factor of the cosine of one order, with time counted from the middle of the record. */
    double cosineVolts(int order) {
        return factors[order];
    }

    /** Factor of its sine. */
    double sineVolts(int order) {
        return factors[orders + order];
    }

    /**
     * The sum of the wave without direct voltage and the sum of its squares, in closed form.
     *
     * @param from the first sample that counts
     * @param count how many
     */
    double[] waveSums(int from, int count) {
        double angle = radiansPerSample * (from + 0.5 * (count - 1) - 0.5 * (samples.length - 1));
        double[] kernel = new double[2 * orders + 1];
        for (int m = 0; m <= 2 * orders; m++) {
            kernel[m] = DirichletKernel.value(count, m * radiansPerSample);
        }
        double[] cosines = new double[orders + 1];
        double[] sines = new double[orders + 1];
        double[] sums = new double[2];
        for (int n = 1; n <= orders; n++) {
            double cosine = Math.cos(n * angle);
            double sine = Math.sin(n * angle);
            cosines[n] = cosineVolts(n) * cosine + sineVolts(n) * sine;
            sines[n] = sineVolts(n) * cosine - cosineVolts(n) * sine;
            sums[0] += cosines[n] * kernel[n];
        }
        for (int m = 1; m <= orders; m++) {
            for (int n = 1; n <= orders; n++) {
                double near = kernel[Math.abs(m - n)];
                double far = kernel[m + n];
                sums[1] += 0.5 * (cosines[m] * cosines[n] * (near + far) + sines[m] * sines[n] * (near - far));
            }
        }
        return sums;
    }

    /** Peak volts of one order. */
    double amplitudeVolts(int order) {
        return amplitudesVolts[order];
    }

    /** Phase of one order as a sine, with the time origin where the fundamental crosses zero upwards. */
    double sinePhaseRadians(int order) {
        double phase = Math.atan2(factors[order], factors[orders + order]);
        double fundamental = Math.atan2(factors[1], factors[orders + 1]);
        return Math.IEEEremainder(phase - order * fundamental, 2 * Math.PI);
    }

    /** Phase of the fundamental as a sine, with the time origin in the middle of the record. */
    double middlePhaseRadians() {
        return Math.atan2(factors[1], factors[orders + 1]);
    }

    /** Samples minus the fitted wave. */
    double[] residual() {
        if (residual == null) {
            double[] rest = new HarmonicBasis(samples.length, radiansPerSample, orders).synthesize(factors);
            for (int i = 0; i < rest.length; i++) {
                rest[i] = samples[i] - rest[i];
            }
            residual = rest;
        }
        return residual;
    }
}

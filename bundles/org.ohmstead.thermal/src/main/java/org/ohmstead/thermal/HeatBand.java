// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.ohmstead.model.Range;

/**
 * A forecast of a temperature with everything that is unknown carried through: the lowest and highest of the temperatures that all
 * combinations of the ends of the ranges give, and that of the middles.
 *
 * <p>While powers only rise or only fall the temperature of a body is monotone in its resistance, its capacity, the power and the air, and
 * the band is exact. After powers have gone up and down, a capacity between its ends may lead slightly outside. Immutable.
 */
public final class HeatBand {
    private static final int MOST_UNKNOWNS = 8;

    private final List<HeatCase> corners;
    private final HeatCase middle;

    private HeatBand(List<HeatCase> corners, HeatCase middle) {
        this.corners = corners;
        this.middle = middle;
    }

    /**
     * Returns the band over some unknowns.
     *
     * @param unknowns their ranges, at most 8 of which are not known exactly
     * @param maker makes the case for a choice of all unknowns, in their order
     */
    public static HeatBand of(List<Range> unknowns, Function<double[], HeatCase> maker) {
        long open = unknowns.stream().filter(range -> !range.known()).count();
        if (open > MOST_UNKNOWNS) {
            throw new IllegalArgumentException(
                    "unknowns has " + open + " open ranges; at most " + MOST_UNKNOWNS + " can be combined");
        }
        List<double[]> choices = new ArrayList<>();
        choices.add(new double[unknowns.size()]);
        for (int i = 0; i < unknowns.size(); i++) {
            List<double[]> more = new ArrayList<>();
            for (double[] choice : choices) {
                more.add(with(choice, i, unknowns.get(i).low()));
                if (!unknowns.get(i).known()) {
                    more.add(with(choice, i, unknowns.get(i).high()));
                }
            }
            choices = more;
        }
        double[] middles = unknowns.stream().mapToDouble(Range::middle).toArray();
        return new HeatBand(choices.stream().map(maker).toList(), maker.apply(middles));
    }

    private static double[] with(double[] choice, int index, double value) {
        double[] changed = Arrays.copyOf(choice, choice.length);
        changed[index] = value;
        return changed;
    }

    /** Returns the case of the middles of all ranges. */
    public HeatCase middle() {
        return middle;
    }

    /**
     * Returns the band of a point from a cold start, in degrees Celsius.
     *
     * @param point its number
     * @param times in seconds from 0 on, in rising order
     */
    public List<HeatBandPoint> celsius(int point, double[] times) {
        double[] centre = celsius(middle, point, times);
        double[] low = centre.clone();
        double[] high = centre.clone();
        for (HeatCase corner : corners) {
            double[] course = celsius(corner, point, times);
            for (int i = 0; i < times.length; i++) {
                low[i] = Math.min(low[i], course[i]);
                high[i] = Math.max(high[i], course[i]);
            }
        }
        List<HeatBandPoint> band = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            band.add(new HeatBandPoint(times[i], low[i], centre[i], high[i]));
        }
        return List.copyOf(band);
    }

    /** Returns the range of the hottest that a point gets from a cold start to the end of the profile, in degrees Celsius. */
    public Range peakCelsius(int point) {
        double low = peak(middle, point);
        double high = low;
        for (HeatCase corner : corners) {
            double peak = peak(corner, point);
            low = Math.min(low, peak);
            high = Math.max(high, peak);
        }
        return new Range(low, high);
    }

    private static double peak(HeatCase heat, int point) {
        HeatModel model = heat.model();
        return heat.airCelsius()
                + heat.profile().peak(model, point, model.cold()).riseKelvin();
    }

    private static double[] celsius(HeatCase heat, int point, double[] times) {
        HeatModel model = heat.model();
        double[] course = heat.profile().risesKelvin(model, point, model.cold(), times);
        for (int i = 0; i < course.length; i++) {
            course[i] += heat.airCelsius();
        }
        return course;
    }
}

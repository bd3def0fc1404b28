// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.CombinedParts;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Reading;

/** Sorts readings by kind of power, mode, load, channel and end point, and fits a curve to each group. */
public final class LoadCurves {
    /**
     * A reading is not taken to repeat better than this, relative (common practice, no source); scatter beyond it
     * shows in the residuals and widens the curve's band.
     */
    static final double LEAST_OWN_RELATIVE = 0.0005;

    private LoadCurves() {}

    private record Key(
            PowerKind kind, Mode mode, double nominalLoadOhms, String channel, EndPoint endPoint, double frequencyHz) {}

    private record Item(ChannelReading channel, double powerWatts, double nominalLoadOhms) {}

    /**
     * Returns the curves of readings, sorted by kind, mode, falling load, channel. Channels that did not reach their
     * end point, or were beyond it from the first level on, give only bounds and are left out.
     *
     * @param readings valid readings; voided ones are not to be passed in
     */
    public static List<LoadCurve> fit(List<Reading> readings) {
        Map<Key, List<Item>> groups = new LinkedHashMap<>();
        for (Reading reading : readings) {
            for (ChannelReading channel : reading.channels()) {
                if (counts(channel)) {
                    groups.computeIfAbsent(key(reading, channel), unused -> new ArrayList<>())
                            .add(item(channel, reading.nominalLoadOhms()));
                }
            }
        }
        return groups.entrySet().stream()
                .map(group -> curve(group.getKey(), group.getValue()))
                .sorted(Comparator.comparing(LoadCurve::kind)
                        .thenComparing(LoadCurve::mode)
                        .thenComparing(LoadCurve::nominalLoadOhms, Comparator.reverseOrder())
                        .thenComparing(LoadCurve::channel))
                .toList();
    }

    /**
     * Returns where each point of a curve comes from: for each of {@link LoadCurve#points()}, in their order, the index of its reading.
     *
     * @param curve one of the curves that {@link #fit} made
     * @param readings the very readings that the curve was fitted to, in the same order
     * @throws IllegalArgumentException when the readings give another number of points than the curve has
     */
    public static List<Integer> readingIndexes(LoadCurve curve, List<Reading> readings) {
        Key wanted = new Key(
                curve.kind(),
                curve.mode(),
                curve.nominalLoadOhms(),
                curve.channel(),
                curve.endPoint(),
                curve.frequencyHz());
        List<Integer> indexes = new ArrayList<>();
        for (int index = 0; index < readings.size(); index++) {
            Reading reading = readings.get(index);
            for (ChannelReading channel : reading.channels()) {
                if (counts(channel) && key(reading, channel).equals(wanted)) {
                    indexes.add(index);
                }
            }
        }
        if (indexes.size() != curve.points().size()) {
            throw new IllegalArgumentException("readings give " + indexes.size() + " points for the curve, which has "
                    + curve.points().size() + "; pass the readings that it was fitted to");
        }
        return List.copyOf(indexes);
    }

    private static boolean counts(ChannelReading channel) {
        return channel.outcome() == EndPointOutcome.REACHED && channel.powerWatts() > 0;
    }

    private static Key key(Reading reading, ChannelReading channel) {
        return new Key(
                reading.stimulus().powerKind(),
                reading.mode(),
                reading.nominalLoadOhms(),
                channel.channel(),
                reading.endPoint(),
                reading.stimulus().frequencyHz());
    }

    /** The output voltage hardly changes with so small a change of load, so the power goes with the conductance. */
    private static Item item(ChannelReading channel, double nominalLoadOhms) {
        return new Item(channel, channel.powerWatts() * channel.loadOhms() / nominalLoadOhms, nominalLoadOhms);
    }

    private static LoadCurve curve(Key key, List<Item> items) {
        List<PowerPoint> points = new ArrayList<>();
        double sharedSquares = 0;
        for (Item item : items) {
            ChannelReading channel = item.channel();
            double own = relative(channel, false);
            points.add(new PowerPoint(
                    channel.supplyVolts(),
                    item.powerWatts(),
                    Math.max(own, LEAST_OWN_RELATIVE) * item.powerWatts(),
                    key.channel()));
            double shared = relative(channel, true);
            // Half of the correction to the nominal load is allowed for sag, as a rectangular bound.
            double correction = 0.5 * Math.abs(channel.loadOhms() / item.nominalLoadOhms() - 1) / Math.sqrt(3);
            sharedSquares += shared * shared + correction * correction;
        }
        return new LoadCurve(
                key.kind(),
                key.mode(),
                key.nominalLoadOhms(),
                key.channel(),
                key.endPoint(),
                key.frequencyHz(),
                points,
                Math.sqrt(sharedSquares / items.size()),
                PowerCurveFit.fit(points, key.nominalLoadOhms()));
    }

    private static double relative(ChannelReading channel, boolean shared) {
        return CombinedParts.of(channel).watts(shared) / channel.powerWatts();
    }
}

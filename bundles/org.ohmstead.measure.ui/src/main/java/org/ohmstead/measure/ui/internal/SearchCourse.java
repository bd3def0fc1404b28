// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SweepPoint;

/**
 * The levels that were tried: distortion over power.
 *
 * @param levels of each channel by its name, in the order in which they were taken
 * @param limitRatio the distortion that is looked for, when it is one
 */
record SearchCourse(Map<String, List<Level>> levels, OptionalDouble limitRatio) {
    /** Below this a log axis has no room. */
    private static final double LEAST = 1e-7;

    /**
     * A level.
     *
     * @param powerWatts output power, above 0
     * @param thdRatio harmonics over the fundamental, above 0
     */
    record Level(double powerWatts, double thdRatio) {}

    static SearchCourse of(EndPoint endPoint) {
        OptionalDouble limit = endPoint instanceof EndPoint.DistortionLimit distortion
                ? OptionalDouble.of(distortion.ratio())
                : OptionalDouble.empty();
        return new SearchCourse(Map.of(), limit);
    }

    /** Returns this with one more recording. */
    SearchCourse with(AcquisitionLook look) {
        Map<String, List<Level>> more = new LinkedHashMap<>(levels);
        for (AcquisitionLook.Channel channel : look.channels()) {
            if (channel.powerWatts().isPresent()) {
                List<Level> course = new ArrayList<>(more.getOrDefault(channel.name(), List.of()));
                course.add(level(
                        channel.powerWatts().getAsDouble(), channel.thdRatio().orElse(0)));
                more.put(channel.name(), List.copyOf(course));
            }
        }
        return new SearchCourse(more, limitRatio);
    }

    /** Returns the whole course as it stands in a reading. */
    SearchCourse of(Reading reading) {
        Map<String, List<Level>> whole = new LinkedHashMap<>();
        for (ChannelReading channel : reading.channels()) {
            List<Level> course = new ArrayList<>();
            for (SweepPoint point : channel.sweep()) {
                course.add(level(point.powerWatts(), point.thdFRatio()));
            }
            whole.put(channel.channel(), List.copyOf(course));
        }
        return new SearchCourse(whole, limitRatio);
    }

    private static Level level(double watts, double ratio) {
        return new Level(Math.max(LEAST, watts), Math.max(LEAST, ratio));
    }

    /** Returns how many levels were tried. */
    int count() {
        return levels.values().stream().mapToInt(List::size).max().orElse(0);
    }
}

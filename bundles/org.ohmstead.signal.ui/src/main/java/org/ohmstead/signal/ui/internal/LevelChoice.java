// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.workbench.look.Numbers;

/**
 * One capture of a reading as the user chooses it.
 *
 * @param used the capture
 * @param points what each channel gave there, by the channel's name
 * @param endPointOf the channels whose end point lies nearest to this level
 */
public record LevelChoice(CaptureUsed used, Map<String, SweepPoint> points, List<String> endPointOf) {
    /** Power below this is no power; the logarithm needs a bottom. */
    private static final double LEAST_WATTS = 1e-12;

    /** Returns the captures of a reading, lowest level first. */
    public static List<LevelChoice> of(Reading reading) {
        List<LevelChoice> choices = new ArrayList<>();
        for (CaptureUsed used : reading.provenance().captures()) {
            Map<String, SweepPoint> points = new TreeMap<>();
            List<String> endPointOf = new ArrayList<>();
            for (ChannelReading channel : reading.channels()) {
                for (SweepPoint point : channel.sweep()) {
                    if (point.captureSha256().equals(used.sha256())) {
                        points.put(channel.channel(), point);
                    }
                }
                if (points.containsKey(channel.channel()) && nearest(channel).equals(points.get(channel.channel()))) {
                    endPointOf.add(channel.channel());
                }
            }
            choices.add(new LevelChoice(used, points, List.copyOf(endPointOf)));
        }
        choices.sort(Comparator.comparingDouble(LevelChoice::driveDb));
        return choices;
    }

    /** The end point's power is interpolated in its logarithm, so the nearest level is the nearest there. */
    private static SweepPoint nearest(ChannelReading channel) {
        double wanted = Math.log(Math.max(LEAST_WATTS, channel.powerWatts()));
        return channel.sweep().stream()
                .min(Comparator.comparingDouble(
                        point -> Math.abs(Math.log(Math.max(LEAST_WATTS, point.powerWatts())) - wanted)))
                .orElseThrow();
    }

    private double driveDb() {
        return points.values().stream()
                .mapToDouble(SweepPoint::driveDb)
                .findFirst()
                .orElse(0);
    }

    /** Returns whether the end point of any channel lies nearest to this level. */
    public boolean isEndPoint() {
        return !endPointOf.isEmpty();
    }

    /** Returns one line that tells this level from the others. */
    public String text(int channelCount) {
        if (points.isEmpty()) {
            return used.fileName();
        }
        boolean clipped = points.values().stream().anyMatch(SweepPoint::clipped);
        return Texts.say(
                "level.watts",
                Numbers.format("%.2f dB", driveDb()),
                joined("%.4g", point -> point.powerWatts()),
                joined("%.3g", point -> 100 * point.thdFRatio()),
                clipped ? Texts.say("level.clipped") : "",
                endPointWords(channelCount));
    }

    private String endPointWords(int channelCount) {
        if (!isEndPoint()) {
            return "";
        }
        return endPointOf.size() < channelCount
                ? Texts.say("level.endPointOf", String.join(", ", endPointOf))
                : Texts.say("level.endPoint");
    }

    private String joined(String format, ToDoubleFunction<SweepPoint> figure) {
        return String.join(
                " / ",
                points.values().stream()
                        .map(point -> Numbers.format(format, figure.applyAsDouble(point)))
                        .toList());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.signal.LoadImpedance;

/**
 * Which capture is wanted, and what must be known to read and analyse it.
 *
 * @param title what the user calls it
 * @param place the file itself, or for a logged capture the project's folder of captures
 * @param sha256 hash that a logged capture must have, 64 hexadecimal digits; empty for a file of the user's choice
 * @param voltsPerFullScale one value, or one for each channel
 * @param channels what is known of the channels; empty for all channels of the file without a load
 * @param frequencyHz the tone, when known
 */
public record CaptureOrder(
        String title,
        Path place,
        Optional<String> sha256,
        List<Double> voltsPerFullScale,
        List<Channel> channels,
        OptionalDouble frequencyHz) {
    private static final int MOST_CHANNELS = 32;
    private static final int LETTERS = 26;

    public CaptureOrder {
        voltsPerFullScale = List.copyOf(voltsPerFullScale);
        channels = List.copyOf(channels);
    }

    /**
     * A channel of the capture, in the order of the file.
     *
     * @param name what it is called, such as "A"
     * @param load what it worked into, when known
     */
    public record Channel(String name, Optional<LoadImpedance> load) {}

    /** Returns the order for a capture that a reading depended on. */
    public static CaptureOrder logged(Reading reading, CaptureUsed used, Path capturesFolder, Project project) {
        List<Channel> channels = new ArrayList<>();
        for (int i = 0; i < reading.channels().size(); i++) {
            ChannelReading channel = reading.channels().get(i);
            channels.add(new Channel(channel.channel(), Optional.of(impedance(reading, channel, i, project))));
        }
        return new CaptureOrder(
                used.fileName(),
                capturesFolder,
                Optional.of(used.sha256()),
                used.voltsPerFullScale(),
                channels,
                OptionalDouble.of(reading.stimulus().frequencyHz()));
    }

    /** The reading knows the resistance; the inductance counts only while the project still has that very load. */
    private static LoadImpedance impedance(Reading reading, ChannelReading channel, int index, Project project) {
        double henries = project.load(reading.loadId())
                .map(BenchLoad::branches)
                .filter(branches -> index < branches.size())
                .map(branches -> branches.get(index))
                .filter(branch -> Double.compare(branch.ohms(), channel.loadOhms()) == 0)
                .map(branch -> branch.inductanceHenries())
                .orElse(0.0);
        return henries > 0
                ? new LoadImpedance.SeriesInductance(channel.loadOhms(), henries)
                : new LoadImpedance.Resistance(channel.loadOhms());
    }

    /** Returns the order for a file of the user's choice, all channels into the same load when one is given. */
    public static CaptureOrder file(Path file, double voltsPerFullScale, OptionalDouble loadOhms) {
        List<Channel> channels = new ArrayList<>();
        if (loadOhms.isPresent()) {
            LoadImpedance load = new LoadImpedance.Resistance(loadOhms.getAsDouble());
            for (int i = 0; i < MOST_CHANNELS; i++) {
                channels.add(new Channel(channelName(i), Optional.of(load)));
            }
        }
        return new CaptureOrder(
                String.valueOf(file.getFileName()),
                file,
                Optional.empty(),
                List.of(voltsPerFullScale),
                channels,
                OptionalDouble.empty());
    }

    /** Returns the channel at a place of the file, also one that the order does not name. */
    Channel channel(int index) {
        return index < channels.size() ? channels.get(index) : new Channel(channelName(index), Optional.empty());
    }

    private static String channelName(int index) {
        return index < LETTERS ? String.valueOf((char) ('A' + index)) : String.valueOf(index + 1);
    }
}

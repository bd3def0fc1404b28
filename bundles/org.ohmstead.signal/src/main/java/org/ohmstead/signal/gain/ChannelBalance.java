// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.ohmstead.units.Decibels;

/**
 * How alike channels are that are fed alike and work into like loads.
 *
 * @param channels at least two, of different names
 * @param toleranceDb how far the loudest may lie above the softest, in dB, at least 0
 */
public record ChannelBalance(List<Channel> channels, double toleranceDb) {
    /** A tolerance that is common practice, in dB. */
    public static final double USUAL_TOLERANCE_DB = 0.5;

    private static final double WIDEST_TOLERANCE_DB = 60;

    /**
     * What one channel gives.
     *
     * @param name such as "A"; not blank
     * @param voltsRms at its load, above 0
     */
    public record Channel(String name, double voltsRms) {
        /** Checks the name and the volts. */
        public Channel {
            Objects.requireNonNull(name, "name");
            if (name.isBlank()) {
                throw new IllegalArgumentException("name is blank; a channel needs one");
            }
            Checks.positive(voltsRms, "voltsRms");
        }
    }

    /** Checks and copies. */
    public ChannelBalance {
        channels = List.copyOf(channels);
        if (channels.size() < 2) {
            throw new IllegalArgumentException(
                    "channels has " + channels.size() + " entries; at least 2 are needed to compare them");
        }
        Set<String> names = new HashSet<>();
        for (Channel each : channels) {
            if (!names.add(each.name())) {
                throw new IllegalArgumentException("channels has \"" + each.name() + "\" twice");
            }
        }
        Checks.within(toleranceDb, 0, WIDEST_TOLERANCE_DB, "toleranceDb");
    }

    /** Returns the balance of two channels named A and B. */
    public static ChannelBalance of(double firstVoltsRms, double secondVoltsRms, double toleranceDb) {
        return new ChannelBalance(
                List.of(new Channel("A", firstVoltsRms), new Channel("B", secondVoltsRms)), toleranceDb);
    }

    /** Returns the channel with the most volts. */
    public Channel loudest() {
        return channels.stream()
                .max(Comparator.comparingDouble(Channel::voltsRms))
                .orElseThrow();
    }

    /** Returns the channel with the fewest volts. */
    public Channel softest() {
        return channels.stream()
                .min(Comparator.comparingDouble(Channel::voltsRms))
                .orElseThrow();
    }

    /** Returns by how many dB the loudest lies above the softest, at least 0. */
    public double spreadDb() {
        return Decibels.ofFieldRatio(loudest().voltsRms() / softest().voltsRms());
    }

    /** Returns the power of the loudest over that of the softest in like loads, at least 1. */
    public double powerRatio() {
        double ratio = loudest().voltsRms() / softest().voltsRms();
        return ratio * ratio;
    }

    /** Returns whether all lie within the tolerance. */
    public boolean matched() {
        return spreadDb() <= toleranceDb;
    }

    /** Returns by how many dB a channel, counted from 0, lies above the first; below 0 when it is softer. */
    public double differenceDb(int channel) {
        return Decibels.ofFieldRatio(
                channels.get(channel).voltsRms() / channels.get(0).voltsRms());
    }
}

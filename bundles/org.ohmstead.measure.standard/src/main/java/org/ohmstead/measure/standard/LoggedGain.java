// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Meter;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.signal.gain.ChannelBalance;
import org.ohmstead.signal.gain.GainFit;
import org.ohmstead.signal.gain.GainPoint;
import org.ohmstead.signal.gain.SourceLevels;

/**
 * The gain that an amplifier had according to its log: as {@link GainAndSensitivity} measured it, or out of the clean levels of a power
 * reading when it is known how many volts the source gives at full scale.
 *
 * @param stepId the step of the plan that was run
 * @param mode how the channels met the load; in {@link Mode#BRIDGED} the gain is that from the input to the load
 * @param takenAt when
 * @param measured whether output and input were both measured; else the input follows from the source's full scale
 * @param channels what each channel has; at least one
 */
public record LoggedGain(String stepId, Mode mode, Instant takenAt, boolean measured, List<Channel> channels) {
    /** Levels with more distortion and noise than this are no longer taken for proportional. */
    public static final double MOST_DISTORTION_RATIO = 0.01;

    private static final String GAIN_MEASUREMENT = "org.ohmstead.gain";
    private static final String GAIN_FIGURE = "gain";

    /**
     * The gain of one channel.
     *
     * @param name such as "A"
     * @param gainDb from its input to its load in dB
     * @param standardUncertaintyDb of it in dB, when it is known; without that of the source's full scale
     * @param levels out of how many levels it comes, at least 1
     * @param slope dB of output for each dB of input, when the levels tell it
     */
    public record Channel(
            String name, double gainDb, OptionalDouble standardUncertaintyDb, int levels, OptionalDouble slope) {
        /** Checks that the gain is finite. */
        public Channel {
            Objects.requireNonNull(name, "name");
            if (!Double.isFinite(gainDb)) {
                throw new IllegalArgumentException("gainDb is " + gainDb + "; it must be finite");
            }
            Objects.requireNonNull(standardUncertaintyDb, "standardUncertaintyDb");
            Objects.requireNonNull(slope, "slope");
        }
    }

    /** Copies the channels. */
    public LoggedGain {
        Objects.requireNonNull(stepId, "stepId");
        Objects.requireNonNull(mode, "mode");
        Objects.requireNonNull(takenAt, "takenAt");
        channels = List.copyOf(channels);
        if (channels.isEmpty()) {
            throw new IllegalArgumentException("channels is empty; a gain belongs to at least one channel");
        }
    }

    /** Returns the gains that a measurement of gain found; empty when the figures are of another measurement. */
    public static Optional<LoggedGain> of(MeasuredFigures figures) {
        if (!figures.measurementId().equals(GAIN_MEASUREMENT)) {
            return Optional.empty();
        }
        List<Channel> channels = new ArrayList<>();
        for (MeasuredFigure figure : figures.figures()) {
            if (figure.id().equals(GAIN_FIGURE)) {
                channels.add(new Channel(
                        figure.channel(), figure.value(), figure.standardUncertainty(), 1, OptionalDouble.empty()));
            }
        }
        return channels.isEmpty()
                ? Optional.empty()
                : Optional.of(new LoggedGain(figures.stepId(), figures.mode(), figures.takenAt(), true, channels));
    }

    /**
     * Returns the gains out of the levels of a power reading that are not clipped and have at most 1 % of distortion and noise.
     *
     * @param fullScaleVoltsRms what the source gives at full scale, to which the levels' drive is relative, above 0
     * @param outputMeter the meter that read the output, whose uncertainty all levels share, when there is one
     * @return empty when no channel has a clean level
     */
    public static Optional<LoggedGain> of(Reading reading, double fullScaleVoltsRms, Optional<Meter> outputMeter) {
        List<Channel> channels = new ArrayList<>();
        for (ChannelReading each : reading.channels()) {
            List<SweepPoint> clean = cleanLevels(each);
            if (!clean.isEmpty()) {
                GainFit fit = GainFit.of(
                        clean.stream()
                                .map(level -> new GainPoint(
                                        SourceLevels.voltsAt(level.driveDb(), fullScaleVoltsRms),
                                        level.outputVoltsRms()))
                                .toList(),
                        outputMeter.map(meter -> sharedRelative(meter, clean)).orElse(0.0));
                channels.add(new Channel(
                        each.channel(), fit.gainDb(), fit.standardUncertaintyDb(), fit.levels(), fit.slope()));
            }
        }
        return channels.isEmpty()
                ? Optional.empty()
                : Optional.of(new LoggedGain(reading.stepId(), reading.mode(), reading.takenAt(), false, channels));
    }

    /**
     * Returns how alike the channels of a power reading are at the highest drive at which all of them are clean.
     *
     * @param toleranceDb how far apart they may be, in dB, at least 0
     * @return empty when there are not two channels that share a clean level
     */
    public static Optional<ChannelBalance> balance(Reading reading, double toleranceDb) {
        if (reading.channels().size() < 2) {
            return Optional.empty();
        }
        List<SweepPoint> first = cleanLevels(reading.channels().get(0));
        for (int i = first.size() - 1; i >= 0; i--) {
            List<ChannelBalance.Channel> channels =
                    channelsAt(reading, first.get(i).driveDb());
            if (channels.size() == reading.channels().size()) {
                return Optional.of(new ChannelBalance(channels, toleranceDb));
            }
        }
        return Optional.empty();
    }

    /** Returns the gain in dB of the channel that has most of it: that one reaches the end point first. */
    public Channel highest() {
        return channels.stream()
                .max((one, other) -> Double.compare(one.gainDb(), other.gainDb()))
                .orElseThrow();
    }

    /** Returns whether the gain is that of a load between two channels. */
    public boolean bridged() {
        return mode == Mode.BRIDGED;
    }

    private static List<ChannelBalance.Channel> channelsAt(Reading reading, double driveDb) {
        List<ChannelBalance.Channel> channels = new ArrayList<>();
        for (ChannelReading each : reading.channels()) {
            cleanLevels(each).stream()
                    .filter(level -> level.driveDb() == driveDb)
                    .findFirst()
                    .ifPresent(
                            level -> channels.add(new ChannelBalance.Channel(each.channel(), level.outputVoltsRms())));
        }
        return channels;
    }

    private static List<SweepPoint> cleanLevels(ChannelReading channel) {
        return channel.sweep().stream()
                .filter(level -> !level.clipped()
                        && level.thdPlusNoiseRRatio() <= MOST_DISTORTION_RATIO
                        && level.outputVoltsRms() > 0)
                .toList();
    }

    /** The levels are read on one meter: its share at the highest, where it matters least, is common to all. */
    private static double sharedRelative(Meter meter, List<SweepPoint> clean) {
        double highest =
                clean.stream().mapToDouble(SweepPoint::outputVoltsRms).max().orElseThrow();
        return meter.accuracy().standardUncertainty(highest) / highest;
    }
}

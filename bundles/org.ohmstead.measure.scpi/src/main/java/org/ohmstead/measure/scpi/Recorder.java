// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.text.Messages;

/** An oscilloscope at the amplifier: finds the range, and turns its channels into those of the amplifier. */
final class Recorder {
    private static final Messages TEXTS = Messages.of(Recorder.class);
    /** A peak that is this near to the end of the range may have been cut off. */
    private static final double FULL = 0.97;

    /** The part of a range that a record should fill at most, so that the next one fits too. */
    private static final double COMFORTABLE = 0.85;

    private static final double SHORTEST = 0.99;
    private static final int FEWEST_POINTS = 16;

    private final Oscilloscope oscilloscope;
    private final Wiring wiring;
    private final List<Double> ranges;
    private final double sampleRateHz;
    private final int mostPoints;
    private final Duration patience;
    private int range;

    /**
     * What is connected to what.
     *
     * @param output the oscilloscope's channels at the amplifier's outputs
     * @param input the one at its input
     * @param attenuation amplifier volts over oscilloscope volts at the output
     * @param inputAttenuation the same at the input
     * @param inputPeakVolts the most that comes to the oscilloscope's channel at the input
     * @param bridgedAsDifference whether a bridged output is the first channel less the second
     * @param metersApart whether the meters have links of their own, so that they can be read while a record is made
     */
    record Wiring(
            List<String> output,
            Optional<String> input,
            double attenuation,
            double inputAttenuation,
            double inputPeakVolts,
            boolean bridgedAsDifference,
            boolean metersApart) {
        Wiring {
            output = List.copyOf(output);
        }
    }

    /** The meters, looked at while the record is made. */
    interface Meters {
        Observation observe() throws MeasurementException, InterruptedException;
    }

    /** A record in one range. */
    private record Take(
            List<Waveform> output, Optional<Waveform> input, double peakVolts, double fullVolts, Observation during) {}

    Recorder(
            Oscilloscope oscilloscope,
            Wiring wiring,
            List<Double> ranges,
            double sampleRateHz,
            int mostPoints,
            Duration patience) {
        this.oscilloscope = oscilloscope;
        this.wiring = wiring;
        this.ranges = List.copyOf(ranges);
        this.sampleRateHz = sampleRateHz;
        this.mostPoints = mostPoints;
        this.patience = patience;
        range = ranges.size() - 1;
    }

    Oscilloscope oscilloscope() {
        return oscilloscope;
    }

    boolean recordsInput() {
        return wiring.input().isPresent();
    }

    /**
     * Records in the smallest range in which nothing is cut off; a record that does not fit its range is made again.
     *
     * @param seconds at least how long
     * @param mode how the channels meet the load
     * @param channelCount the amplifier's channels
     */
    Acquisition record(double seconds, Mode mode, int channelCount, Meters meters)
            throws MeasurementException, InterruptedException {
        List<String> channels = channels(mode, channelCount);
        double exact = Math.ceil(seconds * sampleRateHz);
        if (exact > mostPoints) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "record.tooLong", Show.said(seconds), Show.said(sampleRateHz), String.valueOf(mostPoints)));
        }
        int points = Math.max(FEWEST_POINTS, (int) exact);
        oscilloscope.setTime(points, sampleRateHz);
        Take take = take(channels, seconds, meters);
        boolean loweredBefore = false;
        while (true) {
            int better = better(take, loweredBefore);
            if (better == range) {
                return acquisition(take, mode);
            }
            loweredBefore |= better < range;
            range = better;
            take = take(channels, seconds, meters);
        }
    }

    /** Returns the range to record in, that of the record if it fits. */
    private int better(Take take, boolean loweredBefore) {
        if (take.peakVolts() >= FULL * take.fullVolts()) {
            return Math.min(range + 1, ranges.size() - 1);
        }
        // Once lowered, it only goes up again: a level that moves must not keep it busy.
        for (int lower = 0; lower < range && !loweredBefore; lower++) {
            if (take.peakVolts() <= COMFORTABLE * ranges.get(lower)) {
                return lower;
            }
        }
        return range;
    }

    private List<String> channels(Mode mode, int channelCount) throws MeasurementException {
        int needed =
                switch (mode) {
                    case STEREO -> channelCount;
                    case BRIDGED -> wiring.bridgedAsDifference() ? 2 : 1;
                    case SINGLE -> 1;
                };
        if (wiring.output().size() < needed) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "record.channels." + mode.name(),
                    String.valueOf(wiring.output().size()),
                    String.valueOf(needed)));
        }
        return wiring.output().subList(0, needed);
    }

    private Take take(List<String> channels, double seconds, Meters meters)
            throws MeasurementException, InterruptedException {
        double full = Double.MAX_VALUE;
        for (String channel : channels) {
            full = Math.min(full, oscilloscope.setRange(channel, ranges.get(range)));
        }
        if (wiring.input().isPresent()) {
            oscilloscope.setRange(wiring.input().get(), inputRange());
        }
        oscilloscope.arm();
        Duration wait = patience.plusNanos(Math.round(seconds * 1e9));
        // On a link that both share the meters would wait for the record, so there they are read right behind it.
        Optional<Observation> during = wiring.metersApart() ? Optional.of(meters.observe()) : Optional.empty();
        oscilloscope.await(wait);
        Observation observed = during.isPresent() ? during.get() : meters.observe();
        List<Waveform> waveforms = new ArrayList<>();
        double peak = 0;
        for (String channel : channels) {
            Waveform waveform = whole(oscilloscope.fetch(channel, wait), channel, seconds, waveforms);
            waveforms.add(waveform);
            for (int i = 0; i < waveform.size(); i++) {
                peak = Math.max(peak, Math.abs(waveform.voltsAt(i)));
            }
        }
        Optional<Waveform> input = Optional.empty();
        if (wiring.input().isPresent()) {
            String channel = wiring.input().get();
            input = Optional.of(whole(oscilloscope.fetch(channel, wait), channel, seconds, waveforms));
        }
        return new Take(waveforms, input, peak, full, observed);
    }

    private double inputRange() {
        return ranges.stream()
                .filter(each -> each * COMFORTABLE >= wiring.inputPeakVolts())
                .findFirst()
                .orElse(ranges.get(ranges.size() - 1));
    }

    private Waveform whole(Waveform waveform, String channel, double seconds, List<Waveform> before)
            throws MeasurementException {
        if (waveform.durationSeconds() < SHORTEST * seconds) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "record.short",
                    oscilloscope.address(),
                    Show.said(waveform.durationSeconds()),
                    channel,
                    Show.said(seconds)));
        }
        if (!before.isEmpty() && before.get(0).size() != waveform.size()) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "record.otherLength",
                    oscilloscope.address(),
                    String.valueOf(waveform.size()),
                    channel,
                    String.valueOf(before.get(0).size())));
        }
        if (!before.isEmpty() && before.get(0).sampleRateHz() != waveform.sampleRateHz()) {
            throw MeasurementException.of(() -> TEXTS.text("record.otherRate", oscilloscope.address(), channel));
        }
        return waveform;
    }

    private Acquisition acquisition(Take take, Mode mode) {
        boolean difference = mode == Mode.BRIDGED && wiring.bridgedAsDifference();
        List<Waveform> output = new ArrayList<>();
        if (difference) {
            output.add(less(take.output().get(0), take.output().get(1), wiring.attenuation()));
        } else {
            take.output().forEach(each -> output.add(times(each, wiring.attenuation())));
        }
        // These two are kept with the capture, so they are English whoever records.
        String source = "oscilloscope at " + oscilloscope.address();
        String format = String.format(
                Locale.ROOT,
                "command set %s, %d samples, %s Hz",
                oscilloscope.set().id(),
                output.get(0).size(),
                Show.number(output.get(0).sampleRateHz()));
        Optional<Capture> input =
                take.input().map(each -> new Capture(List.of(times(each, wiring.inputAttenuation())), source, format));
        // In a difference, each of the two channels clips at its own range, and the sum of both is twice that.
        double fullVolts = take.fullVolts() * wiring.attenuation() * (difference ? 2 : 1);
        Acquisition acquisition = Acquisition.of(new Capture(output, source, format), fullVolts, take.during());
        return input.map(acquisition::withInput).orElse(acquisition);
    }

    private static Waveform times(Waveform waveform, double factor) {
        double[] samples = waveform.toArray();
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= factor;
        }
        return Waveform.of(waveform.sampleRateHz(), samples);
    }

    private static Waveform less(Waveform first, Waveform second, double factor) {
        double[] samples = first.toArray();
        for (int i = 0; i < samples.length; i++) {
            samples[i] = factor * (samples[i] - second.voltsAt(i));
        }
        return Waveform.of(first.sampleRateHz(), samples);
    }
}

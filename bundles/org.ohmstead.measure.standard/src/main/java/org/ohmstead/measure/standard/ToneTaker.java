// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import java.util.OptionalInt;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.SineFit;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.text.Said;

/** Records tones and fits a sine to each channel (IEEE Std 1057), all at the frequency of the strongest. */
final class ToneTaker {
    private static final double LEAST_CYCLES = 12;
    /** A fitted sine above this many times its standard deviation is there. */
    private static final double SURE = 6;
    /** A tone that stands out less than this from the rest is none. */
    private static final double TONE_RATIO = 0.5;

    private final BenchRun run;
    private final Subject subject;
    private final double recordSeconds;

    /**
     * A tone as it was found.
     *
     * @param acquisition where
     * @param frequencyHz of the strongest channel
     * @param fits of each channel
     * @param inputFits of each channel's input; empty when the bench does not record it
     */
    record Taken(Acquisition acquisition, double frequencyHz, List<SineFit> fits, List<SineFit> inputFits) {
        double voltsRms(int channel) {
            return fits.get(channel).amplitudeVolts() / Math.sqrt(2);
        }

        /** Volts out over volts in, or volts out alone when the input is not recorded. */
        double gainRatio(int channel) {
            double in = inputFits.isEmpty()
                    ? 1
                    : inputFits.get(Math.min(channel, inputFits.size() - 1)).amplitudeVolts() / Math.sqrt(2);
            return voltsRms(channel) / in;
        }

        /** Standard deviation of a channel's volts by what the fit leaves over. */
        double deviationVoltsRms(int channel) {
            return fits.get(channel).residualVoltsRms()
                    / Math.sqrt(acquisition.output().size());
        }

        boolean sure(int channel) {
            return voltsRms(channel) > SURE * deviationVoltsRms(channel);
        }
    }

    ToneTaker(BenchRun run, Subject subject, double recordSeconds) {
        this.run = run;
        this.subject = subject;
        this.recordSeconds = recordSeconds;
    }

    /** Feeds all channels. */
    Taken take(double frequencyHz, double driveDb) throws MeasurementException, InterruptedException {
        return take(frequencyHz, driveDb, OptionalInt.empty());
    }

    Taken take(double frequencyHz, double driveDb, OptionalInt only) throws MeasurementException, InterruptedException {
        Acquisition acquisition = run.record(
                new Feed.Tone(frequencyHz, driveDb, only), Math.max(recordSeconds, LEAST_CYCLES / frequencyHz));
        List<Waveform> channels = acquisition.output().channels();
        if (channels.size() < subject.channelCount()) {
            throw Faults.of("tone.channels", channels.size(), subject.channelCount());
        }
        double halfRateHz = acquisition.output().sampleRateHz() / 2;
        if (frequencyHz >= halfRateHz) {
            throw Faults.of("tone.tooHigh", Said.number("%.5g", frequencyHz), Said.number("%.0f", 2 * halfRateHz));
        }
        SineFit strongest = null;
        for (Waveform channel : channels) {
            SineFit fit = SineFit.fourParameter(channel.toArray(), channel.sampleRateHz(), frequencyHz);
            strongest = strongest == null || fit.amplitudeVolts() > strongest.amplitudeVolts() ? fit : strongest;
        }
        if (strongest == null
                || !strongest.converged()
                || !(strongest.amplitudeVolts() > TONE_RATIO * strongest.residualVoltsRms())
                || Math.abs(strongest.frequencyHz() - frequencyHz) > 0.1 * frequencyHz
                || strongest.frequencyHz() >= halfRateHz) {
            throw Faults.of("tone.none", Said.number("%.5g", frequencyHz), Said.number("%.1f", driveDb));
        }
        double foundHz = strongest.frequencyHz();
        return new Taken(
                acquisition,
                foundHz,
                fits(acquisition.output(), foundHz),
                acquisition.input().map(input -> fits(input, foundHz)).orElse(List.of()));
    }

    private static List<SineFit> fits(Capture capture, double frequencyHz) {
        return capture.channels().stream()
                .map(channel -> SineFit.threeParameter(channel.toArray(), channel.sampleRateHz(), frequencyHz))
                .toList();
    }

    /**
     * Returns the drive at which the strongest channel gives a power, reckoned from a safe level in a straight line; at most 0 dB.
     *
     * @param watts wanted, in one channel
     */
    double driveDbFor(double watts, double frequencyHz, double startDb)
            throws MeasurementException, InterruptedException {
        return driveDbFor(watts, take(frequencyHz, startDb), startDb);
    }

    double driveDbFor(double watts, Taken at, double driveDb) {
        double strongest = 0;
        for (int channel = 0; channel < subject.channelCount(); channel++) {
            double ohms = subject.load().branches().get(channel).ohms();
            strongest = Math.max(strongest, at.voltsRms(channel) * at.voltsRms(channel) / ohms);
        }
        return Math.max(Feed.LOWEST_DB, Math.min(0, driveDb + 10 * Math.log10(watts / strongest)));
    }
}

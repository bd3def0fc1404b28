// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;

/** Another amplifier: all outputs and currents are larger by a ratio. */
public final class LouderBench extends PassingBench {
    private final double outputRatio;

    public LouderBench(Bench bench, double outputRatio) {
        super(bench);
        this.outputRatio = outputRatio;
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        Acquisition all = super.acquire(seconds);
        List<Double> ranges =
                all.voltsPerFullScale().stream().map(each -> outputRatio * each).toList();
        return new Acquisition(louder(all.output()), all.input(), ranges, seen(all.during()));
    }

    private Capture louder(Capture capture) {
        List<Waveform> channels = new ArrayList<>();
        for (Waveform channel : capture.channels()) {
            double[] volts = channel.toArray();
            for (int i = 0; i < volts.length; i++) {
                volts[i] *= outputRatio;
            }
            channels.add(Waveform.of(channel.sampleRateHz(), volts));
        }
        return new Capture(channels, capture.sourceName(), capture.formatText());
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        return seen(super.observe());
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        SoundObservation heard = super.observeSound(weighting, position, seconds);
        return new SoundObservation(
                heard.at(),
                heard.levelDb() + 20 * Math.log10(outputRatio),
                heard.weighting(),
                heard.standardUncertaintyDb());
    }

    private Observation seen(Observation all) {
        OptionalDouble amps = all.supplyAmps().isPresent()
                ? OptionalDouble.of(outputRatio * all.supplyAmps().getAsDouble())
                : OptionalDouble.empty();
        return new Observation(all.at(), all.supplyVolts(), amps, all.caseCelsius(), all.ambientCelsius());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.FrequencyWeighting;

/** Passes every call on to another bench. */
public abstract class PassingBench implements Bench {
    private final Bench bench;

    protected PassingBench(Bench bench) {
        this.bench = bench;
    }

    @Override
    public Set<Ability> abilities() {
        return bench.abilities();
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
        bench.connect(mode, load);
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        bench.setSupplyVolts(supplyVolts);
    }

    @Override
    public void feed(Feed feed) throws MeasurementException, InterruptedException {
        bench.feed(feed);
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        return bench.acquire(seconds);
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        return bench.observe();
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        return bench.observeSound(weighting, position, seconds);
    }

    @Override
    public void standDown() throws MeasurementException {
        bench.standDown();
    }

    @Override
    public void close() throws MeasurementException {
        bench.close();
    }
}

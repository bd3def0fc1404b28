// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.FrequencyWeighting;

/** The bench and the progress of one run; each call passes a gate, and what matters of it is remembered. */
public final class WatchedBench extends PassingBench implements Progress {
    private final Gate gate;
    private final List<String> faults = Collections.synchronizedList(new ArrayList<>());
    private final List<Figure> live = Collections.synchronizedList(new ArrayList<>());
    private volatile boolean fed;
    private double sinceCheckpointSeconds;
    private double longestSinceCheckpointSeconds;
    private double recordedSeconds;
    private double waitedSeconds;

    public WatchedBench(Bench bench, Gate gate) {
        super(bench);
        this.gate = gate;
    }

    public boolean fed() {
        return fed;
    }

    /** Returns what was wrong with its progress. */
    public List<String> faults() {
        return List.copyOf(faults);
    }

    public List<Figure> liveFigures() {
        return List.copyOf(live);
    }

    /** Returns the longest time of recordings behind a checkpoint before the next recording began. */
    public synchronized double longestSinceCheckpointSeconds() {
        return longestSinceCheckpointSeconds;
    }

    /** Returns by how much the recordings would have taken longer on a bench that is no faster than time. */
    public synchronized double savedSeconds() {
        return Math.max(0, recordedSeconds - waitedSeconds);
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
        gate.pass();
        fed = false;
        super.connect(mode, load);
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        gate.pass();
        super.setSupplyVolts(supplyVolts);
    }

    @Override
    public void feed(Feed feed) throws MeasurementException, InterruptedException {
        gate.pass();
        fed = !(feed instanceof Feed.Silence);
        super.feed(feed);
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        long start = begin();
        Acquisition acquisition = super.acquire(seconds);
        end(start, seconds);
        return acquisition;
    }

    private long begin() throws InterruptedException {
        gate.pass();
        synchronized (this) {
            longestSinceCheckpointSeconds = Math.max(longestSinceCheckpointSeconds, sinceCheckpointSeconds);
        }
        return System.nanoTime();
    }

    private synchronized void end(long startNanos, double seconds) {
        sinceCheckpointSeconds += seconds;
        recordedSeconds += seconds;
        waitedSeconds += (System.nanoTime() - startNanos) / (double) TimeUnit.SECONDS.toNanos(1);
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        long start = begin();
        SoundObservation heard = super.observeSound(weighting, position, seconds);
        end(start, seconds);
        return heard;
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        gate.pass();
        return super.observe();
    }

    @Override
    public void standDown() throws MeasurementException {
        fed = false;
        super.standDown();
    }

    @Override
    public void at(double doneRatio, String what) {
        if (!(doneRatio >= 0 && doneRatio <= 1)) {
            faults.add("it said that " + doneRatio + " is done; it must lie between 0 and 1");
        }
        if (what == null || what.isBlank()) {
            faults.add("it did not say what it does at " + doneRatio);
        }
    }

    @Override
    public void live(Figure figure) {
        live.add(figure);
    }

    @Override
    public void recorded(Acquisition acquisition) {
        if (acquisition == null) {
            faults.add("it handed in a recording that is null");
        }
    }

    @Override
    public void checkpoint() throws InterruptedException {
        synchronized (this) {
            sinceCheckpointSeconds = 0;
        }
        gate.pass();
    }
}

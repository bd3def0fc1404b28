// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

/** A bench of a few lines that does what a test tells it to, and remembers whether it is safe. */
final class FakeDriver implements BenchDriver {
    static final String ID = "org.example.bench";

    /** What the bench does at a call, beside its work. */
    interface Trick {
        void at(String call) throws MeasurementException, InterruptedException;
    }

    final AtomicInteger opened = new AtomicInteger();
    final AtomicInteger closed = new AtomicInteger();
    final AtomicInteger stoodDown = new AtomicInteger();
    final AtomicInteger observed = new AtomicInteger();
    volatile boolean fed;
    volatile boolean nothing;
    volatile double supplyAmps = 5;
    volatile double outputVoltsPeak = 4;
    volatile double supplyVolts;
    volatile DriverInfo.Kind kind = DriverInfo.Kind.SIMULATED;
    volatile boolean asksPerson;
    volatile Set<Ability> abilities = EnumSet.allOf(Ability.class);
    volatile Trick trick = call -> {};

    @Override
    public DriverInfo info() {
        return new DriverInfo(ID, "1.0.0", "Tiny bench", "A bench for tests.", kind, List.of(), asksPerson);
    }

    @Override
    public Bench open(Subject subject, Settings settings) throws MeasurementException, InterruptedException {
        trick.at("open");
        opened.incrementAndGet();
        return new TinyBench();
    }

    private final class TinyBench implements Bench {
        @Override
        public Set<Ability> abilities() {
            return abilities;
        }

        @Override
        public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
            trick.at("connect");
        }

        @Override
        public void setSupplyVolts(double volts) throws MeasurementException, InterruptedException {
            trick.at("setSupplyVolts");
            supplyVolts = volts;
        }

        @Override
        public void feed(Feed feed) throws MeasurementException, InterruptedException {
            trick.at(feed instanceof Feed.Silence ? "silence" : "feed");
            fed = !(feed instanceof Feed.Silence);
        }

        @Override
        public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
            trick.at("acquire");
            if (nothing) {
                return null;
            }
            double[] volts = new double[480];
            for (int i = 0; i < volts.length; i++) {
                volts[i] = outputVoltsPeak * Math.sin(2 * Math.PI * 1000 * i / 48_000);
            }
            Waveform wave = Waveform.of(48_000, volts);
            return Acquisition.of(new Capture(List.of(wave, wave), "tiny", "made up"), 20, seen());
        }

        @Override
        public Observation observe() throws MeasurementException, InterruptedException {
            trick.at("observe");
            observed.incrementAndGet();
            return seen();
        }

        private Observation seen() {
            return new Observation(
                    Instant.parse("2026-03-02T09:14:05Z"),
                    OptionalDouble.of(14.4),
                    OptionalDouble.of(supplyAmps),
                    OptionalDouble.of(30),
                    OptionalDouble.of(22));
        }

        @Override
        public void standDown() throws MeasurementException {
            stoodDown.incrementAndGet();
            fed = false;
            atEnd("standDown");
        }

        @Override
        public void close() throws MeasurementException {
            closed.incrementAndGet();
            fed = false;
            atEnd("close");
        }

        private void atEnd(String call) throws MeasurementException {
            try {
                trick.at(call);
            } catch (InterruptedException told) {
                Thread.currentThread().interrupt();
            }
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
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
import org.ohmstead.units.text.Said;

/** The bench as a measurement sees it: for its run alone, with deadlines, and with the stop limits watched. */
final class GuardedBench implements Bench {
    private final BenchLink link;
    private final RunToken token;
    private final RunLimits limits;
    private final LimitWatch watch;
    private final Set<Ability> abilities;
    private final Consumer<Observation> meters;
    private volatile boolean feeding;
    private volatile long lastSeenNanos = System.nanoTime();
    private volatile Optional<Observation> last = Optional.empty();

    GuardedBench(
            BenchLink link,
            RunToken token,
            RunLimits limits,
            LimitWatch watch,
            Set<Ability> abilities,
            Consumer<Observation> meters) {
        this.link = link;
        this.token = token;
        this.limits = limits;
        this.watch = watch;
        this.abilities = abilities;
        this.meters = meters;
    }

    Optional<Observation> last() {
        return last;
    }

    @Override
    public Set<Ability> abilities() {
        return abilities;
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
        feeding = false;
        use("connect a load", link.callLimit(), bench -> {
            bench.connect(mode, load);
            return true;
        });
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        use("set the supply", link.callLimit(), bench -> {
            bench.setSupplyVolts(supplyVolts);
            return true;
        });
    }

    @Override
    public void feed(Feed feed) throws MeasurementException, InterruptedException {
        boolean silence = feed instanceof Feed.Silence;
        feeding |= !silence;
        use("feed", link.callLimit(), bench -> {
            bench.feed(feed);
            return true;
        });
        feeding = !silence;
        lastSeenNanos = System.nanoTime();
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        Duration limit = limitFor(seconds);
        Acquisition acquisition = use("record", limit, bench -> required(bench.acquire(seconds), "recording"));
        keep(acquisition.during());
        end(watch.passed(acquisition));
        return acquisition;
    }

    private Duration limitFor(double seconds) {
        if (!Double.isFinite(seconds) || seconds <= 0 || seconds > limitSeconds()) {
            throw new IllegalArgumentException(
                    "seconds is " + seconds + "; it must be above 0 and at most " + limitSeconds());
        }
        return link.callLimit().plusMillis((long) Math.ceil(seconds * 1000));
    }

    // Nothing can be seen of a bench while it records, so a recording is not to be longer than any measurement.
    private double limitSeconds() {
        return token.measurement().info().longest().toMillis() / 1000.0;
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        Observation seen = use("read the meters", link.callLimit(), bench -> required(bench.observe(), "reading"));
        return looked(seen);
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        return use(
                "read the sound level",
                limitFor(seconds),
                bench -> required(bench.observeSound(weighting, position, seconds), "sound level"));
    }

    private Observation looked(Observation seen) throws InterruptedException {
        keep(seen);
        end(watch.passed(seen));
        return seen;
    }

    private void keep(Observation seen) {
        last = Optional.of(seen);
        lastSeenNanos = System.nanoTime();
        meters.accept(seen);
    }

    /** Reads the meters when something is fed and nobody has looked for a while. */
    void lookIfDue() throws MeasurementException, InterruptedException {
        boolean due = System.nanoTime() - lastSeenNanos > limits.observeEvery().toNanos();
        if (feeding && due && watch.needsMeters() && !link.asksPerson()) {
            Optional<Observation> seen =
                    link.useIfFree(token, "read the meters", bench -> required(bench.observe(), "reading"));
            if (seen.isPresent()) {
                looked(seen.get());
            }
        }
    }

    private void end(Optional<RunOutcome.Stopped> passed) throws InterruptedException {
        if (passed.isPresent()) {
            List<Said> wrong = link.standDown();
            feeding = false;
            token.end(passed.get().with(wrong));
            token.stopIfEnded();
        }
    }

    private <T> T use(String what, Duration limit, BenchLink.BenchWork<T> work)
            throws MeasurementException, InterruptedException {
        token.refuseIfOver("bench");
        return link.use(token, what, limit, work);
    }

    private static <T> T required(T value, String what) {
        if (value == null) {
            throw new IllegalStateException("it gave no " + what);
        }
        return value;
    }

    @Override
    public void standDown() throws MeasurementException {
        token.refuseIfOver("bench");
        feeding = false;
        List<Said> wrong = link.standDown();
        if (!wrong.isEmpty()) {
            throw MeasurementException.of(() -> wrong.stream().map(Said::text).collect(Collectors.joining(" ")));
        }
    }

    /** Makes the bench safe; letting it go is not the measurement's business. */
    @Override
    public void close() throws MeasurementException {
        standDown();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Keeps the shared log in step with a bench's own in the background: hands over when entries were added, and after a failure that may
 * pass tries again, each time after twice as long, up to five minutes. Has no thread of its own: the work is done by an executor, and
 * {@link #run} is to be called now and then, about every second, from wherever there is a clock.
 *
 * <p>All methods may be called from any thread and return at once.
 */
public final class LabSync implements Runnable {
    private static final Messages TEXTS = Messages.of(LabSync.class);
    private static final Duration FIRST_PAUSE = Duration.ofSeconds(2);
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(5);
    private static final double LEAST_SHARE = 0.75;
    private static final double SPREAD = 0.5;

    /** One hand-over. */
    @FunctionalInterface
    public interface Work {
        /** Hands over what is new. */
        HandOverReport handOver() throws SharedLabException, TestLogException;
    }

    private final Work work;
    private final Executor executor;
    private final InstantSource clock;
    private final RandomGenerator random;
    private final Consumer<LabSyncState> listener;
    private LabSyncState.Kind kind = LabSyncState.Kind.WAITING;
    private boolean due = true;
    private long added;
    private long addedWhenBegun;
    private Optional<Instant> since = Optional.empty();
    private Optional<Instant> sinceBegun = Optional.empty();
    private Optional<Instant> nextTry = Optional.empty();
    private Duration pause = FIRST_PAUSE;
    private String why = "";

    /**
     * Makes one that begins with the first {@link #run}.
     *
     * @param work what is done
     * @param executor by whom
     * @param clock the time
     * @param random spreads the pauses, so that all benches of a laboratory do not come back at the same moment
     * @param listener told of every change of the state, on the thread that brings it about
     */
    public LabSync(
            Work work,
            Executor executor,
            InstantSource clock,
            RandomGenerator random,
            Consumer<LabSyncState> listener) {
        this.work = Objects.requireNonNull(work, "work");
        this.executor = Objects.requireNonNull(executor, "executor");
        this.clock = Objects.requireNonNull(clock, "clock");
        this.random = Objects.requireNonNull(random, "random");
        this.listener = Objects.requireNonNull(listener, "listener");
    }

    /** Says that entries were added to the bench's log; hands them over at once unless a pause is being kept. */
    public void appended(int entries) {
        synchronized (this) {
            added += entries;
            if (since.isEmpty()) {
                since = Optional.of(clock.instant());
            }
            due |= kind == LabSyncState.Kind.IN_STEP || kind == LabSyncState.Kind.HANDING_OVER;
        }
        run();
    }

    /** Tries again now, after somebody has put right what was wrong or does not want to wait. */
    public void retry() {
        synchronized (this) {
            due = true;
            pause = FIRST_PAUSE;
        }
        run();
    }

    /** Begins a hand-over if one is due and none is going on. */
    @Override
    public void run() {
        synchronized (this) {
            due |= nextTry.filter(this::passed).isPresent();
            if (!due || kind == LabSyncState.Kind.HANDING_OVER) {
                return;
            }
            due = false;
            nextTry = Optional.empty();
            addedWhenBegun = added;
            sinceBegun = since;
            since = Optional.empty();
            kind = LabSyncState.Kind.HANDING_OVER;
        }
        listener.accept(state());
        try {
            executor.execute(this::handOver);
        } catch (RejectedExecutionException closing) {
            failed(TEXTS.text("sync.closing"), false);
        }
    }

    /** Returns whether a time has come; one further away than any pause is one that the clock was set back from. */
    private boolean passed(Instant time) {
        Instant now = clock.instant();
        return !time.isAfter(now) || time.isAfter(now.plus(LONGEST_PAUSE.multipliedBy(2)));
    }

    private void handOver() {
        boolean ended = false;
        try {
            work.handOver();
            succeeded();
            ended = true;
        } catch (SharedLabException failure) {
            failed(failure.getMessage(), failure.reason().passing());
            ended = true;
        } catch (TestLogException failure) {
            failed(failure.getMessage(), failure.causedOutside());
            ended = true;
        } finally {
            if (!ended) {
                failed(TEXTS.text("sync.fault"), false);
            }
        }
    }

    private void succeeded() {
        boolean more;
        synchronized (this) {
            added -= addedWhenBegun;
            kind = LabSyncState.Kind.IN_STEP;
            why = "";
            pause = FIRST_PAUSE;
            more = due;
        }
        listener.accept(state());
        if (more) {
            run();
        }
    }

    private void failed(String sentences, boolean passing) {
        synchronized (this) {
            since = sinceBegun.or(() -> since);
            why = sentences;
            due = false;
            kind = passing ? LabSyncState.Kind.WAITING : LabSyncState.Kind.STOPPED;
            if (passing) {
                nextTry = Optional.of(clock.instant().plus(spread(pause)));
                pause = pause.multipliedBy(2).compareTo(LONGEST_PAUSE) > 0 ? LONGEST_PAUSE : pause.multipliedBy(2);
            }
        }
        listener.accept(state());
    }

    private Duration spread(Duration length) {
        return Duration.ofMillis(Math.round(length.toMillis() * (LEAST_SHARE + SPREAD * random.nextDouble())));
    }

    /** Returns how things stand. */
    public synchronized LabSyncState state() {
        return new LabSyncState(kind, added, since.isPresent() ? since : waitingSince(), why, nextTry);
    }

    private Optional<Instant> waitingSince() {
        return kind == LabSyncState.Kind.HANDING_OVER ? sinceBegun : Optional.empty();
    }
}

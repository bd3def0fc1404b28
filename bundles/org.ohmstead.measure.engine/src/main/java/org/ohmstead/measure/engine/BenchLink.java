// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.text.Said;

/** An open bench with the thread that alone uses it. A call that takes too long ends the run, and the bench is given up. */
final class BenchLink {
    private static final Set<Ability> SETS_ITSELF = Set.of(Ability.SELECT_LOAD, Ability.SET_SUPPLY_VOLTS);
    private static final long SLICE_NANOS = TimeUnit.MILLISECONDS.toNanos(20);

    private final Plugin<BenchDriver, DriverInfo> driver;
    private final Settings settings;
    private final RunLimits limits;
    private final ThreadGroup group;
    private final ExecutorService thread;
    private final ReentrantLock oneCall = new ReentrantLock();
    private volatile Bench bench;
    private volatile boolean broken;
    private volatile Optional<Subject> openedFor = Optional.empty();
    private volatile boolean madeSafe;
    private volatile long askedNanos;
    private volatile OptionalLong askingSince = OptionalLong.empty();
    private volatile Optional<Throwable> lastFailure = Optional.empty();

    BenchLink(Plugin<BenchDriver, DriverInfo> driver, Settings settings, RunLimits limits) {
        this.driver = driver;
        this.settings = settings;
        this.limits = limits;
        this.group = new ThreadGroup("ohmstead bench " + driver.id());
        this.thread = Executors.newSingleThreadExecutor(work -> {
            Thread made = new Thread(group, work, "ohmstead bench " + driver.id());
            made.setDaemon(true);
            return made;
        });
    }

    Plugin<BenchDriver, DriverInfo> driver() {
        return driver;
    }

    Settings settings() {
        return settings;
    }

    boolean isClosed() {
        return bench == null;
    }

    boolean broken() {
        return broken;
    }

    /** Returns whether a failure came from the bench, though the measurement passed it on. */
    boolean isOurs(Throwable failure) {
        return lastFailure
                .filter(last -> last == failure || last == failure.getCause())
                .isPresent();
    }

    /** Returns the longest time for a call. */
    Duration callLimit() {
        return asksPerson() ? limits.personCall() : limits.benchCall();
    }

    boolean asksPerson() {
        return driver.info().asksPerson();
    }

    /** Returns how long a person was waited for in all calls together, in nanoseconds. */
    long personNanos() {
        OptionalLong since = askingSince;
        return asksPerson() ? askedNanos + (since.isPresent() ? System.nanoTime() - since.getAsLong() : 0) : 0;
    }

    /** Returns whether the open bench can be used for a subject, or must be opened anew because a person sets it. */
    boolean fits(RunToken token, Subject subject) throws MeasurementException, InterruptedException {
        return abilities(token).containsAll(SETS_ITSELF)
                || !madeSafe && openedFor.filter(subject::equals).isPresent();
    }

    /** Closes the bench, to be opened anew. */
    void reopen(RunToken token, Subject subject) throws MeasurementException, InterruptedException {
        Bench old = bench;
        try {
            call(token, "close", callLimit(), () -> {
                old.close();
                return true;
            });
        } finally {
            bench = null;
        }
        open(token, subject);
    }

    /** Opens the bench. */
    void open(RunToken token, Subject subject) throws MeasurementException, InterruptedException {
        madeSafe = false;
        openedFor = Optional.of(subject);
        call(token, "open", callLimit(), () -> {
            Bench made = required(driver.instance().open(subject, settings), "bench");
            if (broken) {
                // Nobody waits for it any more.
                made.close();
                throw new IllegalStateException("the bench came too late");
            }
            bench = made;
            return made;
        });
    }

    Set<Ability> abilities(RunToken token) throws MeasurementException, InterruptedException {
        return call(token, "abilities", limits.question(), () -> Set.copyOf(required(bench.abilities(), "abilities")));
    }

    /** What is to be done with the bench. */
    interface BenchWork<T> {
        T of(Bench bench) throws MeasurementException, InterruptedException;
    }

    <T> T use(RunToken token, String what, Duration limit, BenchWork<T> work)
            throws MeasurementException, InterruptedException {
        return call(token, what, limit, () -> work.of(bench));
    }

    /** Does it when nobody else uses the bench at this moment. */
    <T> Optional<T> useIfFree(RunToken token, String what, BenchWork<T> work)
            throws MeasurementException, InterruptedException {
        if (!oneCall.tryLock()) {
            return Optional.empty();
        }
        try {
            return Optional.of(use(token, what, callLimit(), work));
        } finally {
            oneCall.unlock();
        }
    }

    private <T> T call(RunToken token, String what, Duration limit, Callable<T> work)
            throws MeasurementException, InterruptedException {
        oneCall.lockInterruptibly();
        try {
            token.stopIfEnded();
            if (broken) {
                throw new InterruptedException("The bench was given up.");
            }
            Attempt<T> task = new Attempt<>(work);
            thread.execute(task);
            askingSince = OptionalLong.of(System.nanoTime());
            return answer(token, what, limit, task);
        } finally {
            askedNanos = personNanos();
            askingSince = OptionalLong.empty();
            oneCall.unlock();
        }
    }

    private <T> T answer(RunToken token, String what, Duration limit, Attempt<T> task)
            throws MeasurementException, InterruptedException {
        long end = System.nanoTime() + limit.toNanos();
        Optional<Contained.Answer<T>> answer;
        try {
            answer = task.within(SLICE_NANOS);
            while (answer.isEmpty()) {
                if (System.nanoTime() - end > 0) {
                    token.end(token.failure(
                            driver, true, "bench.silent", Sentences.call(what), limit.toMillis() / 1000.0));
                }
                token.stopIfEnded();
                answer = task.within(SLICE_NANOS);
            }
        } catch (InterruptedException told) {
            task.cancel(true);
            giveUpUnlessFree();
            throw told;
        }
        if (answer.get() instanceof Contained.Answer.Value<T> value) {
            return value.value();
        }
        throw fault(token, what, ((Contained.Answer.Threw<T>) answer.get()).cause());
    }

    // The thread is free again when it comes to do something else.
    private void giveUpUnlessFree() {
        CountDownLatch free = new CountDownLatch(1);
        thread.execute(free::countDown);
        boolean interrupted = Thread.interrupted();
        long end = System.nanoTime() + limits.grace().toNanos();
        boolean done = false;
        while (!done && System.nanoTime() - end < 0) {
            try {
                done = free.await(end - System.nanoTime(), TimeUnit.NANOSECONDS);
            } catch (InterruptedException again) {
                interrupted = true;
            }
        }
        broken |= !done;
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Passes on what a measurement may hear of, and ends the run for what it may not. */
    private InterruptedException fault(RunToken token, String what, Throwable cause) throws MeasurementException {
        lastFailure = Optional.of(cause);
        if (cause instanceof MeasurementException orderly) {
            throw orderly;
        }
        if (cause instanceof IllegalArgumentException wrong) {
            throw wrong;
        }
        broken = true;
        token.end(token.failure(driver, true, "bench.failed", Contained.words(cause), Sentences.call(what)));
        return new InterruptedException("The bench failed.");
    }

    private static <T> T required(T value, String what) {
        if (value == null) {
            throw new IllegalStateException("it gave no " + what);
        }
        return value;
    }

    /** Makes the bench safe from any thread, without waiting for its own; returns what went wrong. */
    List<Said> standDown() {
        madeSafe = true;
        Bench open = bench;
        if (open == null) {
            return List.of();
        }
        return asked("stand down", limits.question(), () -> {
            open.standDown();
            return true;
        });
    }

    /** Lets the bench go; returns what went wrong. */
    List<Said> close() {
        Bench open = bench;
        List<Said> wrong = new ArrayList<>();
        if (open != null) {
            wrong.addAll(asked("stand down", limits.question(), () -> {
                open.standDown();
                return true;
            }));
            wrong.addAll(asked("close", callLimit(), () -> {
                open.close();
                return true;
            }));
        }
        bench = null;
        broken = true;
        thread.shutdownNow();
        wrong.addAll(new LeftThreads(group, limits).found(driver));
        return wrong;
    }

    private List<Said> asked(String what, Duration limit, Callable<Boolean> work) {
        // An interrupt of whoever makes the bench safe must not keep him from it.
        boolean interrupted = Thread.interrupted();
        Contained.Answer<Boolean> answer = Contained.call("ohmstead bench " + driver.id() + " " + what, limit, work);
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        if (answer instanceof Contained.Answer.Value<Boolean>) {
            return List.of();
        }
        broken = true;
        return List.of(
                answer instanceof Contained.Answer.Threw<Boolean> threw
                        ? Sentences.of(
                                "bench.unsafe.failed", driver, Contained.words(threw.cause()), Sentences.call(what))
                        : Sentences.of("bench.unsafe.late", driver, limit.toMillis() / 1000.0, Sentences.call(what)));
    }
}

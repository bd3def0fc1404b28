// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.RunLimits;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.BackgroundWork;

/** Opens the plan that is wanted and closes it again, one after the other and never on the user interface's thread. */
final class RunOpening {
    private static final Messages TEXTS = Messages.of(RunOpening.class);

    private static final long LONGEST_END_SECONDS = 20;

    private final BackgroundWork work;
    private final Catalog catalog;
    private final Plans plans;
    private final EmergencyStop stop;
    private final Consumer<Optional<OpenRun>> taken;
    private final Consumer<Exception> failed;
    private final Object lock = new Object();
    private final AtomicLong wanted = new AtomicLong();
    private Optional<OpenRun> held = Optional.empty();
    private Optional<OpenRun.Order> order = Optional.empty();
    private Optional<OpenRun> open = Optional.empty();
    /** Closes what was dropped last; one that was never begun has nothing to close. */
    private Thread closing = new Thread();

    RunOpening(
            BackgroundWork work,
            Catalog catalog,
            Plans plans,
            EmergencyStop stop,
            Consumer<Optional<OpenRun>> taken,
            Consumer<Exception> failed) {
        this.work = work;
        this.catalog = catalog;
        this.plans = plans;
        this.stop = stop;
        this.taken = taken;
        this.failed = failed;
    }

    /** Returns the plan that is open. */
    Optional<OpenRun> open() {
        return open;
    }

    /** Returns whether a plan is being opened. */
    boolean busy() {
        return order.isPresent()
                && open.filter(now -> now.order().equals(order.get())).isEmpty();
    }

    /** Has a plan opened in the place of what is open; does nothing when it is that already, or on its way. */
    void want(OpenRun.Order wish) {
        if (order.filter(wish::equals).isPresent()) {
            return;
        }
        order = Optional.of(wish);
        long mine = wanted.incrementAndGet();
        Thread before = closing;
        work.start(
                TEXTS.text("job.preparing"),
                progress -> {
                    // What was dropped is closed first, and nothing that comes after it.
                    before.join();
                    Optional<OpenRun> made = open(wish, mine);
                    made.ifPresent(now -> work.later(() -> take(mine, now)));
                    return made;
                },
                made -> {},
                failure -> {
                    if (wanted.get() == mine) {
                        order = Optional.empty();
                        show(Optional.empty());
                        failed.accept(failure);
                    }
                });
    }

    private Optional<OpenRun> open(OpenRun.Order wish, long mine) throws TestLogException {
        synchronized (lock) {
            if (wanted.get() != mine) {
                return Optional.empty();
            }
            Optional<OpenRun> before = held;
            held = Optional.empty();
            held = Optional.of(OpenRun.open(wish, before, catalog, plans, RunLimits.usual()));
            return held;
        }
    }

    private void take(long mine, OpenRun made) {
        if (wanted.get() == mine) {
            stop.aim(Optional.of(made));
            show(Optional.of(made));
        }
    }

    private void show(Optional<OpenRun> now) {
        open = now;
        taken.accept(now);
    }

    /**
     * Closes what is open: ends what runs, waits for its end, makes the bench safe and lets it go.
     *
     * @param going counts down when the run that goes on has ended
     * @return the thread that does so
     */
    Thread drop(Optional<CountDownLatch> going) {
        order = Optional.empty();
        wanted.incrementAndGet();
        open.ifPresent(now -> now.run().cancel(""));
        if (open.isPresent()) {
            show(Optional.empty());
        }
        Thread before = closing;
        closing = new Thread(() -> close(before, going), "ohmstead run close");
        closing.start();
        return closing;
    }

    private void close(Thread before, Optional<CountDownLatch> going) {
        try {
            before.join();
            closeHeld(going);
        } catch (TestLogException notClosed) {
            work.later(() -> failed.accept(notClosed));
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
    }

    private void closeHeld(Optional<CountDownLatch> going) throws TestLogException, InterruptedException {
        synchronized (lock) {
            Optional<OpenRun> last = held;
            held = Optional.empty();
            if (last.isPresent()) {
                if (going.isPresent() && !going.get().await(LONGEST_END_SECONDS, TimeUnit.SECONDS)) {
                    last.get().runner().close();
                }
                last.get().close();
                // Not before: as long as it is being closed there may be something to stop.
                stop.aim(Optional.empty());
            }
        }
    }
}

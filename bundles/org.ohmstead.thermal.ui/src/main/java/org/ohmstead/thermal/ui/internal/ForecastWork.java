// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.BackgroundWork;

/**
 * Makes forecasts in the background, one at a time; of those that are asked for meanwhile only the latest is made. User interface thread
 * only.
 */
final class ForecastWork {
    private static final Messages TEXTS = Messages.of(ForecastWork.class);

    private final BackgroundWork work;
    private final Consumer<Exception> failed;
    private Optional<Asked> waiting = Optional.empty();
    private AtomicBoolean outdated = new AtomicBoolean();
    private boolean busy;
    private long newest;

    /** A forecast that is wanted. */
    private record Asked(Function<BooleanSupplier, Forecast> make, Consumer<Forecast> taken) {}

    ForecastWork(BackgroundWork work, Consumer<Exception> failed) {
        this.work = work;
        this.failed = failed;
    }

    /**
     * Asks for a forecast.
     *
     * @param make makes it, told how to ask whether nobody wants it any more
     * @param taken gets it
     */
    void ask(Function<BooleanSupplier, Forecast> make, Consumer<Forecast> taken) {
        waiting = Optional.of(new Asked(make, taken));
        if (!busy) {
            start();
        }
    }

    /** Nobody wants any more what was asked for. */
    void forget() {
        newest++;
        outdated.set(true);
        waiting = Optional.empty();
        busy = false;
    }

    /** Returns whether everything that was asked for has been handed over, or is not wanted any more. */
    boolean done() {
        return !busy && waiting.isEmpty();
    }

    private void start() {
        Asked asked = waiting.orElseThrow();
        waiting = Optional.empty();
        busy = true;
        newest++;
        long mine = newest;
        AtomicBoolean old = new AtomicBoolean();
        outdated = old;
        // The forecast is handed over from within, since work that is cancelled in the Progress view gives none.
        work.start(
                TEXTS.text("forecast.job"),
                progress -> {
                    Forecast made = asked.make().apply(() -> old.get() || progress.cancelled());
                    work.later(() -> end(mine, () -> asked.taken().accept(made)));
                    return made;
                },
                made -> {},
                failure -> end(mine, () -> failed.accept(failure)));
    }

    private void end(long mine, Runnable then) {
        if (mine == newest) {
            busy = false;
            then.run();
            if (waiting.isPresent() && !busy) {
                start();
            }
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.swt.widgets.Display;

/**
 * Works things out away from the user interface, one at a time; of the questions that come meanwhile only the latest counts. Used on the
 * user interface's thread only.
 *
 * @param <Q> what is asked
 * @param <A> what comes of it
 */
final class LatestWork<Q, A> {
    private static final int SLOW_MILLISECONDS = 4000;
    /** As many threads as are needed: the model of a module that hangs must not keep other lessons waiting. */
    private static final Executor BACKGROUND = Executors.newCachedThreadPool(work -> {
        Thread thread = new Thread(work, "Ohmstead lessons");
        thread.setDaemon(true);
        return thread;
    });

    private final Display display;
    private final Function<Q, A> work;
    private final BiConsumer<Q, A> done;
    private final Consumer<Optional<Throwable>> late;
    private Optional<Q> waiting = Optional.empty();
    private boolean busy;
    private boolean stopped;
    private long started;

    /**
     * Has nothing to do yet.
     *
     * @param work what to do with each question
     * @param done gets each question with what came of it
     * @param late gets what went wrong, or nothing when an answer takes long
     */
    LatestWork(Display display, Function<Q, A> work, BiConsumer<Q, A> done, Consumer<Optional<Throwable>> late) {
        this.display = display;
        this.work = work;
        this.done = done;
        this.late = late;
    }

    /** Asks; a question that is still waiting is forgotten. */
    void ask(Q question) {
        waiting = Optional.of(question);
        if (!busy) {
            start();
        }
    }

    /** Tells nothing from now on. */
    void stop() {
        stopped = true;
        waiting = Optional.empty();
    }

    private void start() {
        Q question = waiting.orElseThrow();
        waiting = Optional.empty();
        busy = true;
        started++;
        long number = started;
        CompletableFuture.supplyAsync(() -> work.apply(question), BACKGROUND).whenComplete((answer, failure) -> {
            if (!display.isDisposed()) {
                display.asyncExec(() -> finish(question, answer, failure));
            }
        });
        display.timerExec(SLOW_MILLISECONDS, () -> {
            if (busy && number == started && !stopped) {
                late.accept(Optional.empty());
            }
        });
    }

    private void finish(Q question, A answer, Throwable failure) {
        busy = false;
        if (stopped) {
            return;
        }
        if (waiting.isPresent()) {
            start();
        }
        if (failure == null) {
            done.accept(question, answer);
        } else {
            boolean wrapped = failure instanceof CompletionException && failure.getCause() != null;
            late.accept(Optional.of(wrapped ? failure.getCause() : failure));
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.WorkProgress;

/** Which of many forecasts that are asked for are made, with work that is done when the test says so. */
class ForecastWorkTest extends ForecastStage {
    private final Deque<Runnable> started = new ArrayDeque<>();
    private final List<String> made = new ArrayList<>();
    private final List<String> taken = new ArrayList<>();
    private final List<Exception> failures = new ArrayList<>();
    private final ForecastWork work = new ForecastWork(new ByHand(), failures::add);
    private BooleanSupplier cancelled = () -> false;

    private final class ByHand implements BackgroundWork {
        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            started.add(new FutureTask<T>(() -> task.run(new Going())) {
                @Override
                protected void done() {
                    deliver(this, done, failed);
                }
            });
        }

        private static <T> void deliver(FutureTask<T> ended, Consumer<T> done, Consumer<Exception> failed) {
            try {
                done.accept(ended.get());
            } catch (ExecutionException failure) {
                failed.accept((Exception) failure.getCause());
            } catch (InterruptedException interrupted) {
                throw new IllegalStateException("nobody interrupts a test", interrupted);
            }
        }

        @Override
        public void later(Runnable action) {
            action.run();
        }
    }

    private static final class Going implements WorkProgress {
        @Override
        public void step(int done, int total, String what) {
            // Nobody looks.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    }

    private Forecast make() {
        return Forecast.of(
                stage.project(), LIKE_PARTS, ForecastReadings.of(LogSnapshot.NONE, stage.project()), () -> false);
    }

    private void ask(String name) {
        work.ask(
                asked -> {
                    cancelled = asked;
                    made.add(name);
                    return make();
                },
                forecast -> taken.add(name));
    }

    @Test
    void ofThoseAskedForMeanwhileOnlyTheLatestIsMade() throws Exception {
        stage.withProject().open();
        ask("one");
        ask("two");
        ask("three");
        assertEquals(1, started.size());
        started.remove().run();
        started.remove().run();
        assertTrue(started.isEmpty());
        assertEquals(List.of("one", "three"), made);
        assertEquals(List.of("one", "three"), taken);
    }

    @Test
    void whatIsForgottenIsToldToEndAndNotTaken() throws Exception {
        stage.withProject().open();
        ask("one");
        ask("two");
        Runnable first = started.remove();
        work.forget();
        ask("three");
        assertEquals(1, started.size());
        first.run();
        assertTrue(cancelled.getAsBoolean());
        started.remove().run();
        assertFalse(cancelled.getAsBoolean());
        assertEquals(List.of("three"), taken);
        assertTrue(started.isEmpty());
    }

    @Test
    void aFailureIsToldAndTheNextIsMade() throws Exception {
        stage.withProject().open();
        work.ask(
                asked -> {
                    throw new IllegalArgumentException("no such load");
                },
                forecast -> taken.add("never"));
        ask("two");
        started.remove().run();
        assertEquals("no such load", failures.get(0).getMessage());
        started.remove().run();
        assertEquals(List.of("two"), taken);
    }
}

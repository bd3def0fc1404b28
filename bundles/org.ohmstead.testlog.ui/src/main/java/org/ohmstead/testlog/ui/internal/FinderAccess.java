// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.IndexState;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.WorkProgress;

/** The finder of one log, used by one background thread after the other; opened when it is first asked. */
final class FinderAccess {
    private static final Messages TEXTS = Messages.of(FinderAccess.class);
    private static final long FIRST_BITE_NANOSECONDS = 200_000_000L;
    private static final int SCALE = 1000;

    private final Path logFile;
    private final EntryFinder.Opening opening;
    /** Fair, so that whoever looks for something waits for one bite of the indexing only. */
    private final ReentrantLock lock = new ReentrantLock(true);

    private Optional<EntryFinder> finder = Optional.empty();
    private boolean closed;

    /** What is asked of a finder. */
    @FunctionalInterface
    interface Question<T> {
        T of(EntryFinder finder) throws TestLogException;
    }

    /** Hears how far the indexing is, on the thread that does it. */
    @FunctionalInterface
    interface Told {
        void state(IndexState state);
    }

    FinderAccess(Path logFile, EntryFinder.Opening opening) {
        this.logFile = logFile;
        this.opening = opening;
    }

    /** Asks; empty when there is no log or this was closed. */
    <T> Optional<T> ask(Question<T> question) throws TestLogException {
        lock.lock();
        try {
            if (closed || finder.isEmpty() && !Files.exists(logFile)) {
                return Optional.empty();
            }
            if (finder.isEmpty()) {
                finder = Optional.of(opening.open(logFile));
            }
            return Optional.of(question.of(finder.get()));
        } finally {
            lock.unlock();
        }
    }

    /** Brings the index up to date, a bite at a time. */
    void catchUp(WorkProgress progress, Told told) throws TestLogException {
        long bite = FIRST_BITE_NANOSECONDS;
        long before = -1;
        boolean more = true;
        while (more) {
            progress.stopIfCancelled();
            long length = bite;
            Optional<IndexState> state = ask(each -> {
                each.refresh(new Bite(progress, System.nanoTime() + length));
                return each.state();
            });
            state.ifPresent(told::state);
            more = state.isPresent() && !state.get().upToDate();
            if (more) {
                long indexed = state.get().indexed();
                bite = indexed > before ? bite : 2 * bite;
                before = indexed;
                long total = Math.max(1, state.get().total());
                progress.step(
                        (int) (SCALE * indexed / total),
                        SCALE,
                        TEXTS.text("index.done", Long.toString(indexed), Long.toString(total)));
            }
        }
    }

    /** Stops the indexing when its time is over. */
    private record Bite(WorkProgress progress, long endNanos) implements IndexProgress {
        @Override
        public void indexed(long done, long total) {
            // Told after the bite.
        }

        @Override
        public boolean cancelled() {
            return progress.cancelled() || System.nanoTime() - endNanos > 0;
        }
    }

    /** Closes the finder; whatever is asked afterwards gets no answer. */
    void close() throws TestLogException {
        lock.lock();
        try {
            closed = true;
            if (finder.isPresent()) {
                finder.get().close();
            }
            finder = Optional.empty();
        } finally {
            lock.unlock();
        }
    }
}

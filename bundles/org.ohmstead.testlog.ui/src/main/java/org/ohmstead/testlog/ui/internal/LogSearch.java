// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;
import java.util.function.Consumer;
import org.ohmstead.testlog.search.IndexState;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/**
 * The search index of the open project's log, shared by all views of a desk. It follows the log in the background by itself. User
 * interface's thread only.
 */
final class LogSearch {
    private static final Messages TEXTS = Messages.of(LogSearch.class);

    /** How much of the log is known to the index when nothing is. */
    static final IndexState NOTHING = new IndexState(0, 0, true, "");

    private static final Map<ProjectDesk, LogSearch> OF_DESKS = new WeakHashMap<>();

    private final BackgroundWork work;
    private final EntryFinder.Opening opening;
    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<FinderAccess> access = Optional.empty();
    private IndexState state = NOTHING;
    private String failure = "";
    private boolean running;
    private boolean again;

    LogSearch(ProjectDesk desk, EntryFinder.Opening opening) {
        // The desk itself is not kept: it keeps this.
        this.work = desk.work();
        this.opening = opening;
        desk.listen(new Hears());
        turnTo(desk.session());
    }

    /** Returns the search that all views of a desk share. */
    static LogSearch of(ProjectDesk desk) {
        return OF_DESKS.computeIfAbsent(desk, key -> new LogSearch(key, IndexFinder::new));
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            turnTo(session);
        }

        @Override
        public void logChanged(LogSnapshot log) {
            if (log.state() != LogState.READING) {
                catchUp();
            }
        }
    }

    private void turnTo(Optional<ProjectSession> session) {
        Optional<Path> wanted = session.map(ProjectSession::logFile);
        access.ifPresent(before -> work.start(
                TEXTS.text("index.closing"),
                progress -> {
                    before.close();
                    return before;
                },
                closed -> {},
                this::fail));
        access = wanted.map(file -> new FinderAccess(file, opening));
        state = NOTHING;
        failure = "";
        running = false;
        again = false;
        tell();
        catchUp();
    }

    /** Returns how much of the log the index knows. */
    IndexState state() {
        return state;
    }

    /** Returns whether the index learns what is new at this moment. */
    boolean catchingUp() {
        return running;
    }

    /** Returns why the index cannot be used, as a whole sentence; empty when it can. */
    String failure() {
        return failure;
    }

    /** Hears of each step of the index; what was found before may be out of date then. */
    Registration listen(Runnable listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }

    /** Learns what is new in the log. */
    void catchUp() {
        if (access.isEmpty()) {
            return;
        }
        if (running) {
            again = true;
            return;
        }
        running = true;
        FinderAccess mine = access.get();
        work.start(
                TEXTS.text("index.indexing"),
                progress -> {
                    try {
                        mine.catchUp(progress, reached -> work.later(() -> answer(mine, () -> reach(reached))));
                        return mine;
                    } finally {
                        // Also when the user stops it.
                        work.later(() -> answer(mine, this::ended));
                    }
                },
                done -> {},
                why -> answer(mine, () -> {
                    fail(why);
                    tell();
                }));
    }

    private void reach(IndexState reached) {
        state = reached;
        failure = "";
        tell();
    }

    private void ended() {
        running = false;
        tell();
        if (again) {
            again = false;
            catchUp();
        }
    }

    private void fail(Exception why) {
        failure = why.getMessage() == null ? why.toString() : why.getMessage();
    }

    /** What is answered about a log that is no longer open is of no interest. */
    private void answer(FinderAccess asked, Runnable action) {
        if (access.filter(now -> now == asked).isPresent()) {
            action.run();
        }
    }

    /**
     * Asks the index in the background.
     *
     * @param title what the user sees of it
     * @param done hears the answer, unless another log is open by then; empty when there is no log
     * @param failed hears why there is none
     */
    <T> void ask(
            String title, FinderAccess.Question<T> question, Consumer<Optional<T>> done, Consumer<Exception> failed) {
        if (access.isEmpty()) {
            done.accept(Optional.empty());
            return;
        }
        FinderAccess mine = access.get();
        work.start(
                title,
                progress -> {
                    Optional<T> result = mine.ask(question);
                    // Not by the task's result: that is lost when the user cancels late.
                    work.later(() -> answer(mine, () -> done.accept(result)));
                    return result;
                },
                result -> {},
                why -> answer(mine, () -> failed.accept(why)));
    }
}

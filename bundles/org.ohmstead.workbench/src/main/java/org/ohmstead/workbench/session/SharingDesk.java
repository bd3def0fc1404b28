// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.ohmstead.jobs.LabSharing;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Project;
import org.ohmstead.model.SharedLog;
import org.ohmstead.workbench.session.LogSnapshot.LogState;

/**
 * The part of the desk that keeps the laboratory's shared log in step with the open project's own log, as the project was saved: what is
 * still being typed is not yet asked of a server. User interface's thread only; the work is done by an alarm's thread.
 */
final class SharingDesk {
    static final Duration TICK = Duration.ofSeconds(1);

    /** A hand-over; as {@link LabSharing} does it, or a test by hand. */
    interface Sharing {
        void appended(int entries);

        void retry();

        void tick();

        void close();
    }

    /** Makes hand-overs; empty for a project that names no shared log. */
    interface Maker {
        Optional<Sharing> make(Project project, Path folder, Executor executor, Consumer<SharingState> told);
    }

    /** What a hand-over is made from; another one is made when it changes. */
    private record Made(Path folder, Optional<SharedLog> settings, String title, String amplifier) {
        static Made of(ProjectSession session) {
            Project project = session.project();
            return new Made(
                    session.folder(),
                    project.sharedLog(),
                    project.title(),
                    project.amplifier().fullName());
        }
    }

    private final BackgroundWork work;
    private final Alarm alarm;
    private final DeskListeners listeners;
    private final Supplier<Optional<ProjectSession>> session;
    private final Maker maker;
    private Optional<Made> made = Optional.empty();
    private Optional<Sharing> sharing = Optional.empty();
    private Optional<Registration> ticking = Optional.empty();
    private SharingState state = SharingState.OFF;
    private boolean logRead;
    private long entries;
    private String headHash = "";
    private int latest;

    /**
     * Makes a desk that hands nothing over yet.
     *
     * @param alarm whose thread does the work, which may take a minute; nobody else's
     * @param session the open project
     */
    SharingDesk(
            BackgroundWork work,
            Alarm alarm,
            DeskListeners listeners,
            Supplier<Optional<ProjectSession>> session,
            Maker maker) {
        this.work = work;
        this.alarm = alarm;
        this.listeners = listeners;
        this.session = session;
        this.maker = maker;
    }

    /** Makes hand-overs with the credentials of the environment, or of a password file. */
    static Optional<Sharing> usual(Project project, Path folder, Executor executor, Consumer<SharingState> told) {
        // What talks to a server is not even loaded for a project that has none.
        return project.sharedLog().isEmpty()
                ? Optional.empty()
                : LabSharing.of(project, folder, System.getenv(), executor, told)
                        .map(Usual::new);
    }

    private record Usual(LabSharing lab) implements Sharing {
        @Override
        public void appended(int entries) {
            lab.appended(entries);
        }

        @Override
        public void retry() {
            lab.retry();
        }

        @Override
        public void tick() {
            lab.tick();
        }

        @Override
        public void close() {
            lab.close();
        }
    }

    SharingState state() {
        return state;
    }

    /** Hears that another project may be open, or that it may have been edited or saved. */
    void follow() {
        Optional<ProjectSession> open = session.get();
        if (open.isEmpty()) {
            stop();
            made = Optional.empty();
            logRead = false;
            return;
        }
        boolean sameProject =
                made.filter(known -> known.folder().equals(open.get().folder())).isPresent();
        if (sameProject && open.get().dirty()) {
            return;
        }
        if (!sameProject) {
            stop();
            made = Optional.empty();
            logRead = false;
            if (open.get().dirty()) {
                return;
            }
        }
        Made wanted = Made.of(open.get());
        if (made.filter(wanted::equals).isEmpty()) {
            stop();
            made = Optional.of(wanted);
            start(open.get());
        }
    }

    private void start(ProjectSession open) {
        latest++;
        int mine = latest;
        sharing = maker.make(
                open.project(),
                open.folder(),
                alarm::soon,
                now -> work.later(() -> {
                    if (mine == latest) {
                        show(now);
                    }
                }));
        sharing.ifPresent(begun -> {
            begun.tick();
            ticking = Optional.of(alarm.every(TICK, begun::tick));
        });
    }

    private void stop() {
        latest++;
        ticking.ifPresent(Registration::close);
        ticking = Optional.empty();
        sharing.ifPresent(Sharing::close);
        sharing = Optional.empty();
        show(SharingState.OFF);
    }

    private void show(SharingState now) {
        if (!now.equals(state)) {
            state = now;
            listeners.tell(listener -> listener.sharingChanged(now));
        }
    }

    /** Hears that the log was read anew; what has come since the last time is to be handed over. */
    void logRead(LogSnapshot log) {
        if (log.state() != LogState.WHOLE && log.state() != LogState.NONE) {
            return;
        }
        long total = log.total();
        if (logRead && !log.headHash().equals(headHash)) {
            long added = Math.max(1, total - entries);
            sharing.ifPresent(begun -> begun.appended((int) Math.min(added, Integer.MAX_VALUE)));
        }
        logRead = true;
        entries = total;
        headHash = log.headHash();
    }

    /** Hands over now, without waiting for the next try. */
    void retry() {
        sharing.ifPresent(Sharing::retry);
    }

    /** Ends for good. */
    void dispose() {
        stop();
        alarm.close();
    }
}

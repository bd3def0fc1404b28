// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.shared.HandOverReport;
import org.ohmstead.testlog.shared.LabCredentials;
import org.ohmstead.testlog.shared.LabProject;
import org.ohmstead.testlog.shared.LabSync;
import org.ohmstead.testlog.shared.LabSyncState;
import org.ohmstead.testlog.shared.SharedLabException;

/**
 * Keeps the laboratory's shared log in step with the log of one project. It only ever reads the project's log, so nothing that is measured
 * depends on it. It begins with the first {@link #tick}; whoever has it calls that about every second, and {@link #appended} when entries
 * were added.
 *
 * <p>All methods but {@link #settle} may be called from any thread and return at once.
 */
public final class LabSharing implements AutoCloseable {
    private final String place;
    private final LabSync sync;
    private final AtomicLong handedOver = new AtomicLong();
    private final Consumer<SharingState> listener;
    private final Object changes = new Object();
    private volatile boolean closed;

    LabSharing(
            String place, LabSync.Work work, Executor executor, InstantSource clock, Consumer<SharingState> listener) {
        this.place = place;
        this.listener = Objects.requireNonNull(listener, "listener");
        this.sync = new LabSync(() -> counted(work), executor, clock, new SplittableRandom(), this::changed);
    }

    /**
     * Returns the hand-over of a project; empty when it names no shared log.
     *
     * @param project as it was saved
     * @param folder its folder
     * @param environment variables in which the credentials are looked for before a password file in the user's home
     * @param executor does the work, which may take a minute when the server does not answer
     * @param listener told of every change of the state, on the thread that brings it about, until this is closed
     */
    public static Optional<LabSharing> of(
            Project project,
            Path folder,
            Map<String, String> environment,
            Executor executor,
            Consumer<SharingState> listener) {
        return LabProject.of(project, folder)
                .map(lab -> new LabSharing(
                        place(lab), () -> handOver(lab, environment), executor, InstantSource.system(), listener));
    }

    private static String place(LabProject lab) {
        return lab.settings().host() + ":" + lab.settings().port() + "/"
                + lab.settings().database();
    }

    private static HandOverReport handOver(LabProject lab, Map<String, String> environment)
            throws SharedLabException, TestLogException {
        Path home = Path.of(System.getProperty("user.home", ""));
        return lab.handOver(LabCredentials.find(lab.address(), environment, home));
    }

    private HandOverReport counted(LabSync.Work work) throws SharedLabException, TestLogException {
        HandOverReport report = work.handOver();
        handedOver.addAndGet(report.handedOver());
        return report;
    }

    /** Says that so many entries were added to the project's log. */
    public void appended(int entries) {
        if (!closed) {
            sync.appended(entries);
        }
    }

    /** Hands over now, after somebody has put right what was wrong or does not want to wait. */
    public void retry() {
        if (!closed) {
            sync.retry();
        }
    }

    /** Begins a hand-over if one is due and none is going on. */
    public void tick() {
        if (!closed) {
            sync.run();
        }
    }

    /** Returns how things stand. */
    public SharingState state() {
        return state(sync.state());
    }

    private SharingState state(LabSyncState state) {
        SharingState.Kind kind =
                switch (state.kind()) {
                    case OFF -> SharingState.Kind.OFF;
                    case IN_STEP -> SharingState.Kind.IN_STEP;
                    case HANDING_OVER -> SharingState.Kind.HANDING_OVER;
                    case WAITING -> SharingState.Kind.WAITING;
                    case STOPPED -> SharingState.Kind.STOPPED;
                };
        return new SharingState(
                kind, place, state.waiting(), handedOver.get(), state.since(), state.why(), state.nextTry());
    }

    private void changed(LabSyncState state) {
        synchronized (changes) {
            changes.notifyAll();
        }
        if (!closed) {
            listener.accept(state(state));
        }
    }

    /**
     * Hands over what waits, unless people must put something right first, and waits for it, but not longer than said.
     *
     * @param atMost how long
     * @return how things stand then
     * @throws InterruptedException when the thread is interrupted; what waits goes on waiting
     */
    public SharingState settle(Duration atMost) throws InterruptedException {
        long end = System.nanoTime() + atMost.toNanos();
        if (state().kind() == SharingState.Kind.WAITING) {
            retry();
        }
        synchronized (changes) {
            for (long left = end - System.nanoTime(); left > 0 && !settled(); left = end - System.nanoTime()) {
                changes.wait(Duration.ofNanos(left).toMillis() + 1);
            }
        }
        return state();
    }

    private boolean settled() {
        LabSyncState state = sync.state();
        return state.kind() == LabSyncState.Kind.STOPPED
                || state.kind() == LabSyncState.Kind.WAITING
                || state.kind() == LabSyncState.Kind.IN_STEP && state.waiting() == 0;
    }

    /** Ends it. A hand-over that is going on comes to its own end; nobody is told any more, and none is begun. */
    @Override
    public void close() {
        closed = true;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.ohmstead.jobs.LabSharing;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.measure.engine.RunListener;
import org.ohmstead.testlog.LogEntry;

/**
 * Hands what a word logs over to the laboratory's shared log, beside the word's own work. Neither a server that does not answer nor one that
 * refuses makes a word fail; at the end it is waited for a short while only. For a project without a shared log it does nothing.
 */
final class HandingOver implements RunListener, AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(5);
    private static final Duration TICK = Duration.ofSeconds(1);

    private final Optional<ScheduledThreadPoolExecutor> thread;
    private final Optional<LabSharing> sharing;

    private HandingOver(Optional<ScheduledThreadPoolExecutor> thread, Optional<LabSharing> sharing) {
        this.thread = thread;
        this.sharing = sharing;
    }

    /** Begins in the background. */
    static HandingOver begin(ProjectFolder folder) {
        if (folder.project().sharedLog().isEmpty()) {
            return new HandingOver(Optional.empty(), Optional.empty());
        }
        ScheduledThreadPoolExecutor thread = new ScheduledThreadPoolExecutor(1, task -> {
            Thread made = new Thread(task, "Ohmstead shared log");
            made.setDaemon(true); // a silent server does not keep the program from ending
            return made;
        });
        thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
        Optional<LabSharing> sharing =
                LabSharing.of(folder.project(), folder.folder(), System.getenv(), thread, state -> {});
        sharing.ifPresent(each -> thread.scheduleWithFixedDelay(each::tick, 0, TICK.toMillis(), TimeUnit.MILLISECONDS));
        return new HandingOver(Optional.of(thread), sharing);
    }

    @Override
    public void logged(LogEntry entry) {
        appended(1);
    }

    /** Says that so many entries were added to the log. */
    void appended(int entries) {
        if (entries > 0) {
            sharing.ifPresent(each -> each.appended(entries));
        }
    }

    /** Waits a short while for what is not handed over yet; returns how things stand, or empty without a shared log. */
    Optional<SharingState> end() throws InterruptedException {
        return sharing.isEmpty() ? Optional.empty() : Optional.of(sharing.get().settle(PATIENCE));
    }

    /**
     * Hands over after a word has added entries to the log and let go of it.
     *
     * @param folder the project
     * @param entries how many were added
     * @return how things stand, or empty without a shared log or without any entries
     */
    static Optional<SharingState> all(ProjectFolder folder, int entries) throws InterruptedException {
        if (entries == 0) {
            return Optional.empty();
        }
        try (HandingOver handingOver = begin(folder)) {
            handingOver.appended(entries);
            return handingOver.end();
        }
    }

    /** Says how things stand, in one line; beside the results when something waits. */
    static void say(Console console, Optional<SharingState> end) {
        end.filter(HandingOver::inStep).ifPresent(state -> console.line(sentence(state)));
        end.filter(state -> !inStep(state)).ifPresent(state -> console.message(sentence(state)));
    }

    private static boolean inStep(SharingState state) {
        return state.kind() == SharingState.Kind.IN_STEP;
    }

    /** Adds how things stand to a document, as {@code sharedLog}. */
    static void fill(ObjectNode document, Optional<SharingState> end) {
        end.ifPresent(state -> document.putObject("sharedLog")
                .put("state", state.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .put("place", state.place())
                .put("handedOver", state.handedOver())
                .put("waiting", state.waiting())
                .put("sentence", sentence(state)));
    }

    private static String sentence(SharingState state) {
        return inStep(state) ? state.sentence() : Texts.of("handing.later", state.sentence());
    }

    @Override
    public void close() {
        sharing.ifPresent(LabSharing::close);
        thread.ifPresent(ScheduledThreadPoolExecutor::shutdown);
    }
}

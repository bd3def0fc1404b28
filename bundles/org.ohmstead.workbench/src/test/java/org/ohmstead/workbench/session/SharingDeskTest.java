// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.jobs.SharingState.Kind;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SharedLog;

class SharingDeskTest {
    private static final SharedLog LAB = new SharedLog("lab.example.org", 5432, "tests", "Bench 1", "");

    @TempDir
    private Path parent;

    private final HandClock clock = new HandClock();
    private final HandAlarm alarm = new HandAlarm(clock);
    private final HandAlarm sharingAlarm = new HandAlarm(clock);
    private final HandWork work = new HandWork();
    private final List<HandSharing> made = new ArrayList<>();
    private final List<SharingState> told = new ArrayList<>();
    private final List<Exception> failures = new ArrayList<>();
    private final ProjectDesk desk =
            new ProjectDesk(work, clock, alarm, ProblemDesk.usualCollector(), sharingAlarm, this::make);
    private Path folder;

    /** A hand-over whose diary is kept, and whose state is set by hand. */
    private static final class HandSharing implements SharingDesk.Sharing {
        final SharedLog settings;
        final Consumer<SharingState> listener;
        final List<Integer> appended = new ArrayList<>();
        int ticks;
        int retries;
        boolean closed;

        HandSharing(SharedLog settings, Consumer<SharingState> listener) {
            this.settings = settings;
            this.listener = listener;
        }

        @Override
        public void appended(int entries) {
            appended.add(entries);
        }

        @Override
        public void retry() {
            retries++;
        }

        @Override
        public void tick() {
            ticks++;
        }

        @Override
        public void close() {
            closed = true;
        }

        void tell(Kind kind, long waiting, String why) {
            listener.accept(new SharingState(
                    kind, "lab.example.org:5432/tests", waiting, 0, Optional.empty(), why, Optional.empty()));
        }
    }

    /**
     * Makes a sharing that the test drives by hand.
     *
     * @param project names the server
     * @param where the project lies, which a sharing driven by hand does not look at
     * @param executor would do the work
     * @param listener is told what the test says
     */
    private Optional<SharingDesk.Sharing> make(
            Project project, Path where, Executor executor, Consumer<SharingState> listener) {
        Optional<HandSharing> sharing = project.sharedLog().map(settings -> new HandSharing(settings, listener));
        sharing.ifPresent(made::add);
        return sharing.map(each -> each);
    }

    @BeforeEach
    void copy() throws IOException {
        folder = SampleFolder.copyInto(parent);
        desk.listen(new DeskListener() {
            @Override
            public void sharingChanged(SharingState state) {
                told.add(state);
            }
        });
    }

    @AfterEach
    void close() throws UnsavedEdits {
        desk.close(Unsaved.DISCARD);
        assertEquals(List.of(), failures);
    }

    private ProjectSession open() {
        desk.open(folder, Unsaved.REFUSE, session -> {}, failures::add);
        return desk.session().orElseThrow();
    }

    private HandSharing openShared() {
        share(open(), Optional.of(LAB));
        return made.get(made.size() - 1);
    }

    private void share(ProjectSession session, Optional<SharedLog> settings) {
        session.edit("Set shared log", project -> project.withSharedLog(settings));
        desk.save(() -> {}, failures::add);
    }

    private List<String> problems() {
        alarm.advance(ProblemDesk.DEBOUNCE);
        return desk.problems().stream()
                .filter(problem -> problem.where().equals("$.sharedLog"))
                .map(Problem::what)
                .toList();
    }

    @Test
    void aProjectWithoutASharedLogNeedsNothing() {
        open();
        assertEquals(SharingState.OFF, desk.sharing());
        desk.handOver();
        assertEquals(List.of(), made);
        assertEquals(List.of(), told);
    }

    @Test
    void beginsWithWhatIsSavedAndTicksUntilTheProjectIsClosed() throws Exception {
        ProjectSession session = open();
        session.edit("Set shared log", project -> project.withSharedLog(Optional.of(LAB)));
        assertEquals(List.of(), made, "what is being typed is not asked of a server");
        desk.save(() -> {}, failures::add);
        assertEquals(1, made.size());
        HandSharing sharing = made.get(0);
        assertEquals(LAB, sharing.settings);
        assertEquals(1, sharing.ticks);
        sharingAlarm.advance(Duration.ofSeconds(5));
        assertEquals(6, sharing.ticks);
        session.edit("Name it", project -> project.withTitle("Mine"));
        sharingAlarm.advance(Duration.ofSeconds(1));
        assertFalse(sharing.closed, "other unsaved edits do not end it");
        desk.close(Unsaved.DISCARD);
        assertTrue(sharing.closed);
        sharingAlarm.advance(Duration.ofSeconds(5));
        assertEquals(7, sharing.ticks);
        open();
        assertEquals(2, made.size(), "it begins anew with the project");
        assertEquals(1, made.get(1).ticks);
    }

    @Test
    void beginsAnewWhenTheSettingsAreOthers() {
        HandSharing first = openShared();
        ProjectSession session = desk.session().orElseThrow();
        first.tell(Kind.STOPPED, 1, "There is no such database. Correct its name.");
        share(session, Optional.of(LAB.withDatabase("power")));
        assertTrue(first.closed);
        assertEquals(2, made.size());
        assertEquals("power", made.get(1).settings.database());
        assertEquals(SharingState.OFF, desk.sharing(), "nothing is known of the new one yet");
        first.tell(Kind.IN_STEP, 0, "");
        assertEquals(SharingState.OFF, desk.sharing(), "the one before counts no more");
        share(session, Optional.empty());
        assertTrue(made.get(1).closed);
        assertEquals(2, made.size());
    }

    @Test
    void tellsItOfEveryEntryThatComesAfterItBegan() throws Exception {
        SampleLog.append(folder, 3);
        HandSharing sharing = openShared();
        desk.refreshLog();
        assertEquals(List.of(), sharing.appended, "it looks itself at what there is when it begins");
        desk.startWatching();
        SampleLog.append(folder, 2);
        alarm.advance(Duration.ofSeconds(2));
        assertEquals(List.of(2), sharing.appended);
        desk.voidEntry("R0001", "N. N.", "load lead was loose", failures::add);
        assertEquals(List.of(2, 1), sharing.appended);
        desk.refreshLog();
        assertEquals(List.of(2, 1), sharing.appended);
    }

    @Test
    void tellsTheListenersOnTheirThread() {
        HandSharing sharing = openShared();
        work.holdLater();
        sharing.tell(Kind.WAITING, 2, "Nothing answers.");
        assertEquals(SharingState.OFF, desk.sharing());
        work.letGo();
        assertEquals(2, desk.sharing().waiting());
        assertEquals(List.of(desk.sharing()), told);
        desk.handOver();
        assertEquals(1, sharing.retries);
    }

    @Test
    void onlyWhatPeopleMustPutRightIsAProblem() {
        HandSharing sharing = openShared();
        sharing.tell(Kind.WAITING, 2, "Nothing answers.");
        assertEquals(List.of(), problems());
        sharing.tell(Kind.STOPPED, 2, "The password is wrong. Correct it.");
        assertEquals(
                List.of("Nothing is handed over to the shared log lab.example.org:5432/tests. The password is wrong."
                        + " Correct it."),
                problems());
        Problem problem = desk.problems().stream()
                .filter(each -> each.where().equals("$.sharedLog"))
                .findFirst()
                .orElseThrow();
        assertEquals(Severity.WARNING, problem.severity(), "measuring goes on");
        assertTrue(problem.remedy().contains("Hand over to the shared log now"), problem.remedy());
        sharing.tell(Kind.IN_STEP, 0, "");
        assertEquals(List.of(), problems());
    }

    @Test
    void endsWithTheDesk() {
        HandSharing sharing = openShared();
        desk.dispose();
        assertTrue(sharing.closed);
        sharingAlarm.advance(Duration.ofSeconds(5));
        assertEquals(1, sharing.ticks);
    }
}

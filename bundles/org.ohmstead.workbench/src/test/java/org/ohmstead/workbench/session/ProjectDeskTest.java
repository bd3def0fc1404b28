// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.workbench.session.SampleFolder.titled;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.workbench.session.LogSnapshot.LogState;

class ProjectDeskTest extends DeskStage {
    @Test
    void opensAndCloses() throws Exception {
        String title = ProjectFile.read(folder).project().title();
        ProjectSession session = open();
        assertEquals(List.of("session " + title, "log READING", "log NONE"), diary.read());
        assertEquals(title, session.project().title());
        desk.close(Unsaved.REFUSE);
        assertEquals(List.of("session none", "log NONE"), diary.read());
        assertEquals(Optional.empty(), desk.session());
        assertSame(LogSnapshot.NONE, desk.log());
        ProjectLock.acquire(folder).close();
        desk.close(Unsaved.REFUSE);
        assertEquals(List.of(), diary.read());
    }

    @Test
    void aProjectThatCannotBeReadLeavesTheOpenOneOpen() {
        ProjectSession session = open();
        desk.open(parent.resolve("none.ohmstead"), Unsaved.REFUSE, other -> {}, failures::add);
        assertInstanceOf(SessionException.class, failures.remove(0));
        assertSame(session, desk.session().orElseThrow());
        assertFalse(session.readOnly());
    }

    @Test
    void anotherProjectTakesThePlaceUnlessThereAreUnsavedEdits() throws Exception {
        Path otherFolder = SampleFolder.copyInto(Files.createDirectory(parent.resolve("other")));
        ProjectSession session = open();
        session.edit("Name it", titled("Mine"));
        desk.open(otherFolder, Unsaved.REFUSE, other -> {}, failures::add);
        UnsavedEdits refusal = assertInstanceOf(UnsavedEdits.class, failures.remove(0));
        assertTrue(refusal.getMessage().contains("\"Mine\""), refusal.getMessage());
        assertThrows(UnsavedEdits.class, () -> desk.close(Unsaved.REFUSE));
        assertSame(session, desk.session().orElseThrow());
        desk.open(otherFolder, Unsaved.DISCARD, other -> {}, failures::add);
        assertEquals(otherFolder.toAbsolutePath(), desk.session().orElseThrow().folder());
        ProjectLock.acquire(folder).close();
    }

    @Test
    void editsMadeWhileAnotherIsReadAreNotLost() throws Exception {
        Path otherFolder = SampleFolder.copyInto(Files.createDirectory(parent.resolve("other")));
        ProjectSession session = open();
        work.hold();
        desk.open(otherFolder, Unsaved.REFUSE, other -> {}, failures::add);
        session.edit("Name it", titled("Mine"));
        work.letGo();
        assertInstanceOf(UnsavedEdits.class, failures.remove(0));
        assertSame(session, desk.session().orElseThrow());
        ProjectLock.acquire(otherFolder).close();
    }

    @Test
    void theSameProjectOpenedAgainStaysAsItIs() {
        ProjectSession session = open();
        List<ProjectSession> opened = new ArrayList<>();
        desk.open(folder.resolve("project.json"), Unsaved.REFUSE, opened::add, failures::add);
        assertEquals(List.of(session), opened);
        assertFalse(session.readOnly());
        session.edit("Name it", titled("Mine"));
        assertTrue(session.dirty());
    }

    @Test
    void aListenerThatFailsHarmsNoOther() {
        List<String> faults = new ArrayList<>();
        desk.onFault(fault -> faults.add(fault.getMessage()));
        desk.listen(new DeskListener() {
            @Override
            public void sessionChanged(Optional<ProjectSession> session) {
                throw new IllegalStateException("view gone");
            }
        });
        Diary last = new Diary();
        Registration registration = desk.listen(last);
        open();
        assertEquals(List.of("view gone"), faults);
        assertTrue(last.read().get(0).startsWith("session "));
        registration.close();
        registration.close();
        desk.session().orElseThrow().edit("Name it", titled("Mine"));
        assertEquals(List.of(), last.read());
    }

    @Test
    void allHearEventsInTheSameOrderEvenThoseThatListenersCause() {
        Diary second = new Diary();
        ProjectSession session = open();
        desk.listen(new DeskListener() {
            @Override
            public void projectChanged(Project before, Project after) {
                if (after.title().equals("One")) {
                    session.edit("Answer", titled("Two"));
                }
            }
        });
        desk.listen(second);
        diary.read();
        session.edit("Name it", titled("One"));
        assertEquals(
                List.of("One -> Two"),
                second.read().stream()
                        .filter(line -> line.contains("->"))
                        .skip(1)
                        .toList());
        assertEquals("Two", session.project().title());
    }

    @Test
    void savesInTheBackground() throws Exception {
        ProjectSession session = open();
        session.edit("Name it", titled("Mine"));
        List<String> done = new ArrayList<>();
        alarm.hold();
        desk.save(() -> done.add("first"), failures::add);
        session.edit("Name it", titled("Later"));
        desk.save(() -> done.add("second"), failures::add);
        desk.lookAtFiles();
        assertEquals(List.of(), done);
        alarm.letGo();
        assertEquals(List.of("first", "second"), done);
        assertFalse(session.dirty());
        assertEquals("Later", ProjectFile.read(folder).project().title());
        desk.lookAtFiles();
        assertEquals(List.of(), diary.changes, "own writing is no change from outside");
    }

    @Test
    void aFailedSaveIsTold() throws Exception {
        open().edit("Name it", titled("Mine"));
        SampleFolder.editOutside(folder, "Theirs");
        desk.save(() -> failures.add(new IllegalStateException("saved")), failures::add);
        assertTrue(failures.remove(0).getMessage().contains("was changed outside"));
        desk.close(Unsaved.DISCARD);
        desk.save(() -> failures.add(new IllegalStateException("saved")), failures::add);
        assertTrue(failures.remove(0).getMessage().contains("No project is open"));
    }

    @Test
    void watchesTheFileAndReloadsWhatHarmsNoEdit() throws Exception {
        ProjectSession session = open();
        desk.startWatching();
        alarm.advance(Duration.ofSeconds(10));
        diary.read();
        SampleFolder.editOutside(folder, "Theirs");
        alarm.advance(Duration.ofSeconds(2));
        assertEquals("Theirs", session.project().title());
        assertInstanceOf(ExternalChange.ChangedClean.class, diary.changes.get(0));
        assertTrue(diary.read().contains("notice RELOADED"));
        alarm.advance(Duration.ofSeconds(10));
        assertEquals(1, diary.changes.size());
        desk.stopWatching();
        SampleFolder.editOutside(folder, "Theirs again");
        alarm.advance(Duration.ofSeconds(10));
        assertEquals("Theirs", session.project().title());
    }

    @Test
    void tellsAConflictAVanishedAndAnUnreadableFileOnceEach() throws Exception {
        ProjectSession session = open();
        session.edit("Name it", titled("Mine"));
        desk.startWatching();
        SampleFolder.editOutside(folder, "Theirs");
        alarm.advance(Duration.ofSeconds(10));
        Files.writeString(SampleFolder.file(folder), "{");
        alarm.advance(Duration.ofSeconds(10));
        Files.delete(SampleFolder.file(folder));
        alarm.advance(Duration.ofSeconds(10));
        assertEquals(3, diary.changes.size());
        assertInstanceOf(ExternalChange.ChangedWhileDirty.class, diary.changes.get(0));
        assertInstanceOf(ExternalChange.Unreadable.class, diary.changes.get(1));
        assertInstanceOf(ExternalChange.Vanished.class, diary.changes.get(2));
        assertEquals(
                List.of(SessionNotice.Kind.CONFLICT, SessionNotice.Kind.UNREADABLE, SessionNotice.Kind.VANISHED),
                desk.notices().stream().map(SessionNotice::kind).toList());
        assertEquals("Mine", session.project().title());
    }

    @Test
    void becomesWritableWhenTheOtherLetsGo() throws Exception {
        ProjectLock other = ProjectLock.acquire(folder);
        ProjectSession session = open();
        assertTrue(session.readOnly());
        assertTrue(diary.read().contains("notice OPEN_ELSEWHERE"));
        desk.startWatching();
        alarm.advance(Duration.ofSeconds(10));
        assertTrue(session.readOnly());
        other.close();
        alarm.advance(Duration.ofSeconds(2));
        assertFalse(session.readOnly());
        assertTrue(diary.read().contains("notice WRITABLE_NOW"));
        session.edit("Name it", titled("Mine"));
    }

    @Test
    void findsProblemsOnceEditsHavePausedForAMoment() throws Exception {
        ProjectSession session = open();
        alarm.advance(Duration.ofSeconds(1));
        int before = desk.problems().size();
        session.edit("Clear plan", project -> project.withPlan(List.of()));
        alarm.advance(Duration.ofMillis(149));
        assertEquals(before, desk.problems().size());
        alarm.advance(Duration.ofMillis(1));
        int ratings = session.project().amplifier().ratings().size();
        assertEquals(
                ratings,
                desk.problems().stream()
                        .filter(problem -> problem.what().startsWith("No step of the plan"))
                        .count());
        session.undo();
        alarm.advance(Duration.ofMillis(150));
        assertEquals(before, desk.problems().size());
        session.edit("Clear plan", project -> project.withPlan(List.of()));
        alarm.advance(Duration.ofSeconds(1));
        desk.close(Unsaved.DISCARD);
        assertEquals(List.of(), desk.problems());
    }

    @Test
    void showsProblemsOfTheProgramWhileNoProjectIsOpen() throws Exception {
        Problem module = new Problem(Severity.WARNING, "module x", "It does not run.", "Take it away.");
        Problem title = new Problem(Severity.NOTE, "$.title", "The title is short.", "Make it longer.");
        Registration registration = desk.addProblemProvider(new ProblemProvider() {
            @Override
            public List<Problem> problems(ProjectView view) {
                return List.of(title);
            }

            @Override
            public List<Problem> problemsWithoutProject() {
                return List.of(module);
            }
        });
        alarm.advance(Duration.ofMillis(150));
        assertEquals(List.of(module), desk.problems());
        assertEquals(List.of("problems 1"), diary.read());
        open();
        alarm.advance(Duration.ofMillis(150));
        assertTrue(desk.problems().contains(title), desk.problems().toString());
        assertFalse(desk.problems().contains(module), "asked for a project, it is not asked for what is without one");
        desk.close(Unsaved.DISCARD);
        assertEquals(List.of(), desk.problems());
        alarm.advance(Duration.ofMillis(150));
        assertEquals(List.of(module), desk.problems());
        registration.close();
        alarm.advance(Duration.ofMillis(150));
        assertEquals(List.of(), desk.problems());
    }

    @Test
    void problemsWithoutAProjectThatCameLateAreNotShownForIt() {
        Problem module = new Problem(Severity.WARNING, "module x", "It does not run.", "Take it away.");
        work.hold();
        desk.addProblemProvider(new ProblemProvider() {
            @Override
            public List<Problem> problems(ProjectView view) {
                return List.of();
            }

            @Override
            public List<Problem> problemsWithoutProject() {
                return List.of(module);
            }
        });
        alarm.advance(Duration.ofMillis(150));
        desk.open(folder, Unsaved.REFUSE, session -> {}, failures::add);
        work.letGo();
        assertTrue(desk.session().isPresent());
        alarm.advance(Duration.ofMillis(150));
        assertFalse(desk.problems().contains(module), desk.problems().toString());
    }

    @Test
    void saysWhatTheStatusLineShows() throws Exception {
        assertEquals(Optional.empty(), desk.status());
        ProjectSession session = open();
        DeskStatus before = desk.status().orElseThrow();
        assertEquals("larkspur.ohmstead", before.folderName());
        assertEquals(session.project().bench().ambientCelsius(), before.ambientCelsius());
        assertFalse(before.ambientMeasured());
        assertEquals(OptionalDouble.empty(), before.lastSupplyVolts());
        assertEquals(LogState.NONE, before.logState());
        SampleLog.append(folder, 1);
        desk.refreshLog();
        session.edit("Name it", titled("Mine"));
        DeskStatus after = desk.status().orElseThrow();
        assertEquals(OptionalDouble.of(SampleLog.AMBIENT_CELSIUS), after.ambientCelsius());
        assertEquals(OptionalDouble.of(SampleLog.SUPPLY_VOLTS), after.lastSupplyVolts());
        assertEquals(
                List.of(
                        "Project \"Mine\" in larkspur.ohmstead.",
                        "There are unsaved edits.",
                        "Test log: 1 entry, chain whole.",
                        "Air at the last reading: 23.4 °C.",
                        "Direct-current bench supply, 0 V to 16 V.",
                        "Supply at the amplifier at the last reading: 13.36 V."),
                after.sentences());
    }

    @Test
    void remembersWhatWasOpened() {
        List<String> stored = new ArrayList<>();
        desk.useRecentProjects(new RecentProjects(new RecentProjects.Store() {
            @Override
            public List<String> load() {
                return List.copyOf(stored);
            }

            @Override
            public void save(List<String> paths) {
                stored.clear();
                stored.addAll(paths);
            }
        }));
        open();
        assertEquals(List.of(folder.toAbsolutePath().normalize().toString()), stored);
    }

    @Test
    void asksForNoProblemsOnceItIsDisposed() {
        List<String> asked = new ArrayList<>();
        desk.addProblemProvider(new ProblemProvider() {
            @Override
            public List<Problem> problems(ProjectView view) {
                asked.add(view.project().title());
                return List.of();
            }

            @Override
            public List<Problem> problemsWithoutProject() {
                asked.add("no project");
                return List.of();
            }
        });
        open();
        work.holdLater();
        alarm.advance(Duration.ofMillis(150));
        asked.clear();
        desk.dispose();
        work.letGo();
        assertEquals(List.of(), asked);
    }
}

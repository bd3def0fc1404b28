// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.workbench.session.SessionActions.Action;
import org.ohmstead.workbench.session.SessionActions.Kind;

/**
 * A session against the simplest thing that does the same: a list of projects and a place in it. After each of any sequence of actions
 * both must say the same, and observers must have heard of it exactly once.
 */
class SessionLawsTest {
    @Property(seed = "20261151", tries = 60)
    void doesWhatAListOfProjectsDoes(@ForAll("actions") List<Action> actions) throws Exception {
        Path parent = Files.createTempDirectory("ohmstead-session");
        try {
            Play play = new Play(SampleFolder.copyInto(parent));
            for (Action action : actions) {
                play.play(action);
            }
            play.unwind();
            play.session.close(false);
        } finally {
            delete(parent);
        }
    }

    @Provide
    Arbitrary<List<Action>> actions() {
        return SessionActions.any();
    }

    private static void delete(Path parent) throws IOException {
        try (var files = Files.walk(parent)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /** What the file holds: a project, nonsense with a number, or nothing as there is no file. */
    private record Disk(Optional<Project> project, int nonsense) {
        static final int GONE = -1;

        static Disk of(Project project) {
            return new Disk(Optional.of(project), 0);
        }

        static Disk broken(int number) {
            return new Disk(Optional.empty(), number);
        }

        boolean gone() {
            return nonsense == GONE;
        }
    }

    /** The model and the session side by side. */
    private static final class Play implements SessionObserver {
        private final Path file;
        private final HandClock clock = new HandClock();
        private final ProjectSession session;
        private final List<Project> projects = new ArrayList<>();
        private final List<String> names = new ArrayList<>();
        private int at;
        private Disk disk;
        private Disk seen;
        private Optional<String> mergeKey = Optional.empty();
        private Duration sinceEdit = Duration.ZERO;
        private int breaks;
        private int changes;
        private int states;

        Play(Path folder) throws Exception {
            file = SampleFolder.file(folder);
            session = ProjectSession.open(folder, clock);
            session.observe(this);
            projects.add(ProjectFile.read(folder).project());
            disk = Disk.of(projects.get(0));
            seen = disk;
        }

        @Override
        public void changed(Project before, Project after) {
            changes++;
            assertEquals(session.project(), after);
        }

        @Override
        public void stateChanged() {
            states++;
        }

        private Project current() {
            return projects.get(at);
        }

        void play(Action action) throws Exception {
            Project before = current();
            changes = 0;
            states = 0;
            int expectedStates = 0;
            switch (action.kind()) {
                case EDIT -> edit("Edit " + action.what(), Optional.empty(), action);
                case TYPE -> edit("Type " + action.what() % 2, Optional.of("$." + action.what() % 2), action);
                case FAIL ->
                    assertThrows(
                            IllegalArgumentException.class,
                            () -> session.edit("Fail", project -> project.withTitle(" ")));
                case WAIT -> pass(Duration.ofMillis(700L * (1 + action.value())));
                case UNDO -> {
                    session.undo();
                    at = Math.max(0, at - 1);
                    mergeKey = Optional.empty();
                }
                case REDO -> {
                    session.redo();
                    at = Math.min(names.size(), at + 1);
                    mergeKey = Optional.empty();
                }
                case SAVE -> expectedStates = save();
                case REVERT -> {
                    session.revertToSaved();
                    seen.project().ifPresent(saved -> step("Revert to the saved project", saved, Optional.empty()));
                }
                case RELOAD -> expectedStates = reload();
                case KEEP_MINE -> {
                    session.keepMine();
                    seen = disk;
                    mergeKey = Optional.empty();
                    expectedStates = 1;
                }
                case CHECK -> expectedStates = check();
                default -> outside(action);
            }
            compare(action.toString());
            assertEquals(before.equals(current()) ? 0 : 1, changes, "told of " + action);
            assertEquals(expectedStates, states, "told of the state after " + action);
        }

        /** Goes all the way back and forth again. */
        void unwind() throws Exception {
            while (at > 0) {
                play(new Action(Kind.UNDO, 0, 0));
            }
            while (at < names.size()) {
                play(new Action(Kind.REDO, 0, 0));
            }
        }

        private void compare(String action) {
            assertEquals(current(), session.project(), action);
            boolean clean = seen.project().equals(Optional.of(current()));
            assertEquals(!clean, session.dirty(), action);
            assertEquals(at == 0 ? Optional.empty() : Optional.of(names.get(at - 1)), session.undoName(), action);
            assertEquals(
                    at == names.size() ? Optional.empty() : Optional.of(names.get(at)), session.redoName(), action);
            assertEquals(session.dirty(), session.recoveryCopy().isPresent(), action);
            session.recoveryCopy().ifPresent(copy -> assertEquals(current(), copy.project(), action));
        }

        private void edit(String name, Optional<String> key, Action action) {
            UnaryOperator<Project> change =
                    SessionActions.edit(key.isPresent() ? action.what() % 2 : action.what(), action.value());
            key.ifPresentOrElse(present -> session.edit(name, present, change), () -> session.edit(name, change));
            step(name, change.apply(current()), key);
        }

        private void step(String name, Project after, Optional<String> key) {
            if (after.equals(current())) {
                return;
            }
            boolean merges =
                    key.isPresent() && key.equals(mergeKey) && sinceEdit.compareTo(ProjectSession.MERGE_WITHIN) <= 0;
            while (names.size() > at) {
                names.remove(names.size() - 1);
                projects.remove(projects.size() - 1);
            }
            mergeKey = key;
            sinceEdit = Duration.ZERO;
            if (!merges) {
                names.add(name);
                projects.add(after);
                at++;
            } else if (projects.get(at - 1).equals(after)) {
                projects.remove(at);
                names.remove(--at);
                mergeKey = Optional.empty();
            } else {
                projects.set(at, after);
            }
        }

        private void pass(Duration time) {
            clock.advance(time);
            sinceEdit = sinceEdit.plus(time);
        }

        private int save() throws Exception {
            mergeKey = Optional.empty();
            if (!disk.gone() && !disk.equals(seen)) {
                assertThrows(SessionException.class, session::save);
                compareDisk();
                return 0;
            }
            session.save();
            disk = Disk.of(current());
            seen = disk;
            compareDisk();
            return 1;
        }

        private int reload() throws Exception {
            if (disk.project().isEmpty()) {
                assertThrows(SessionException.class, session::reloadFromDisk);
                return 0;
            }
            session.reloadFromDisk();
            seen = disk;
            boolean same = disk.project().orElseThrow().equals(current());
            step("Reload from disk", disk.project().orElseThrow(), Optional.empty());
            mergeKey = Optional.empty();
            return same ? 1 : 0;
        }

        private int check() {
            ExternalChange change = session.checkExternalChange();
            Class<?> expected = ExternalChange.Unchanged.class;
            if (!disk.equals(seen)) {
                if (disk.project().isEmpty()) {
                    expected = disk.gone() ? ExternalChange.Vanished.class : ExternalChange.Unreadable.class;
                } else if (disk.project().get().equals(current())) {
                    seen = disk;
                } else {
                    boolean clean = seen.project().equals(Optional.of(current()));
                    expected = clean ? ExternalChange.ChangedClean.class : ExternalChange.ChangedWhileDirty.class;
                }
            }
            assertEquals(expected, change.getClass());
            // Whether the file only has another layout is for other tests; typing goes on after a pause here.
            pass(ProjectSession.MERGE_WITHIN.plusMillis(1));
            int told = states;
            assertEquals(Math.min(1, told), told);
            return told;
        }

        private void outside(Action action) throws Exception {
            switch (action.kind()) {
                case WRITE_OUTSIDE -> {
                    Project theirs = SessionActions.edit(action.what(), action.value())
                            .apply(disk.project().orElse(current()));
                    ProjectFile.write(file, theirs, Optional.empty());
                    disk = Disk.of(theirs);
                }
                case BREAK_OUTSIDE -> {
                    breaks++;
                    Files.writeString(file, "{ broken " + breaks);
                    disk = Disk.broken(breaks);
                }
                case DELETE_OUTSIDE -> {
                    Files.deleteIfExists(file);
                    disk = Disk.broken(Disk.GONE);
                }
                default -> throw new IllegalStateException(action + " is not played");
            }
        }

        private void compareDisk() throws Exception {
            if (disk.project().isPresent()) {
                assertEquals(disk.project().get(), ProjectFile.read(file).project());
            } else {
                assertEquals("{ broken " + breaks, Files.readString(file));
            }
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.workbench.session.SampleFolder.titled;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.units.Unit;

@Timeout(120)
class LockedElsewhereTest {
    @TempDir
    Path parent;

    private final HandClock clock = new HandClock();
    private Path folder;

    /** Holds the lock of a folder in a process of its own until its input ends. */
    static final class Holder {
        private Holder() {}

        public static void main(String[] arguments) throws IOException, ProjectFileException {
            try (ProjectLock lock = ProjectLock.acquire(Path.of(arguments[0]))) {
                System.out.println("holding " + lock.folder().getFileName());
                while (System.in.read() >= 0) {
                    continue;
                }
            }
        }
    }

    @BeforeEach
    void copy() throws IOException {
        folder = SampleFolder.copyInto(parent);
    }

    private Process hold() throws IOException {
        String classPath = Stream.of(Holder.class, ProjectLock.class, Project.class, Unit.class)
                .map(SampleFolder::placeOf)
                .distinct()
                .collect(Collectors.joining(File.pathSeparator));
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        classPath,
                        Holder.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String answer =
                String.valueOf(process.inputReader(StandardCharsets.UTF_8).readLine());
        assertTrue(answer.startsWith("holding "), answer);
        return process;
    }

    private static void end(Process process) throws IOException, InterruptedException {
        process.getOutputStream().close();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    }

    @Test
    void opensForReadingAndSaysPolitelyWhoHasIt() throws Exception {
        Process other = hold();
        ProjectSession session = ProjectSession.open(folder, clock);
        assertTrue(session.readOnly());
        assertEquals(
                List.of(new SessionNotice(
                        SessionNotice.Kind.OPEN_ELSEWHERE,
                        "This project is open in another Ohmstead (process " + other.pid()
                                + " on this computer). It was"
                                + " opened for reading; edits are off until the other closes it.")),
                session.notices());
        assertThrows(IllegalStateException.class, () -> session.edit("Name it", titled("Mine")));
        SessionException refused = assertThrows(SessionException.class, session::save);
        assertTrue(refused.getMessage().contains("reading only"), refused.getMessage());
        assertFalse(session.tryTakeOver(), "the other still has it");
        end(other);
        session.close(false);
    }

    @Test
    void takesOverWithWhatTheOtherWroteWhenItLetsGo() throws Exception {
        Process other = hold();
        ProjectSession session = ProjectSession.open(folder, clock);
        SampleFolder.editOutside(folder, "Theirs");
        end(other);
        assertTrue(session.tryTakeOver());
        assertFalse(session.readOnly());
        assertEquals("Theirs", session.project().title());
        assertFalse(session.dirty());
        assertEquals(
                List.of(SessionNotice.Kind.WRITABLE_NOW),
                session.notices().stream().map(SessionNotice::kind).toList());
        session.edit("Name it", titled("Mine"));
        session.save();
        session.close(false);
    }

    @Test
    void aKilledHolderIsTakenOverFrom() throws Exception {
        Process other = hold();
        ProjectSession session = ProjectSession.open(folder, clock);
        assertTrue(session.readOnly());
        other.destroyForcibly();
        assertTrue(other.waitFor(60, TimeUnit.SECONDS));
        assertTrue(session.tryTakeOver());
        session.close(false);
    }

    @Test
    void anotherSessionOfThisProcessIsToldApart() throws Exception {
        ProjectSession first = ProjectSession.open(folder, clock);
        ProjectSession second = ProjectSession.open(folder, clock);
        assertFalse(first.readOnly());
        assertTrue(second.readOnly());
        assertTrue(
                second.notices()
                        .get(0)
                        .sentence()
                        .startsWith("This project is open in another window of this program."),
                second.notices().toString());
        first.edit("Name it", titled("Mine"));
        first.save();
        assertTrue(second.checkExternalChange() instanceof ExternalChange.ChangedClean);
        second.reloadFromDisk();
        assertEquals("Mine", second.project().title());
        assertTrue(second.undoName().isEmpty(), "nothing to undo where edits are off");
        first.close(false);
        assertTrue(second.tryTakeOver());
        second.close(false);
    }
}

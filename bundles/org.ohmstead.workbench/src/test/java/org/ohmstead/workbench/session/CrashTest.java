// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.workbench.session.SampleFolder.titled;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.RecoveryFile;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Messages;

/** A program that is killed in the middle of an edit, with the desk's own thread and clock. */
@Timeout(180)
class CrashTest {
    private static final long WAIT_NANOS = TimeUnit.SECONDS.toNanos(90);

    @TempDir
    Path parent;

    /** Opens a project, edits it and waits to be killed. */
    static final class Editor {
        private Editor() {}

        public static void main(String[] arguments) throws IOException {
            ExecutorService interfaceThread = Executors.newSingleThreadExecutor();
            BackgroundWork work = new BackgroundWork() {
                @Override
                public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
                    new HandWork().start(title, task, done, failed);
                }

                @Override
                public void later(Runnable action) {
                    interfaceThread.execute(action);
                }
            };
            ProjectDesk desk = new ProjectDesk(work, Clock.systemUTC());
            interfaceThread.execute(() -> desk.open(
                    Path.of(arguments[0]),
                    Unsaved.REFUSE,
                    session -> {
                        session.edit("Name it", titled("Before the crash"));
                        System.out.println("edited");
                    },
                    failure -> System.out.println(failure.getMessage())));
            while (System.in.read() >= 0) {
                continue;
            }
        }
    }

    private static Process start(Path folder) throws IOException, ClassNotFoundException {
        // What the project's JSON needs at run time; this bundle itself never sees it.
        Class<?> databind = Class.forName("com.fasterxml.jackson.databind.JsonNode");
        Class<?> core = Class.forName("com.fasterxml.jackson.core.JsonParser");
        Class<?> annotations = Class.forName("com.fasterxml.jackson.annotation.JsonProperty");
        String classPath = Stream.of(
                        Editor.class,
                        ProjectDesk.class,
                        ProjectFile.class,
                        Project.class,
                        TestLog.class,
                        SharingState.class,
                        Messages.class,
                        databind,
                        core,
                        annotations)
                .map(SampleFolder::placeOf)
                .distinct()
                .collect(Collectors.joining(File.pathSeparator));
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        // What this test runs from stands behind: texts may lie apart from the classes.
                        classPath + File.pathSeparator + System.getProperty("java.class.path"),
                        Editor.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
    }

    private static void awaitCopy(Path folder) {
        long end = System.nanoTime() + WAIT_NANOS;
        while (!folder.resolve(RecoveryFile.FILE_NAME).toFile().exists() && System.nanoTime() < end) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
        }
    }

    @Test
    void anEditSurvivesTheKillOfItsProgram() throws Exception {
        Path folder = SampleFolder.copyInto(parent);
        String first = ProjectFile.read(folder).project().title();
        Process editor = start(folder);
        assertEquals("edited", editor.inputReader(StandardCharsets.UTF_8).readLine());
        awaitCopy(folder);
        editor.destroyForcibly();
        assertTrue(editor.waitFor(60, TimeUnit.SECONDS));
        assertEquals(first, ProjectFile.read(folder).project().title(), "the project itself is as it was");

        ProjectSession session = ProjectSession.open(folder, Clock.systemUTC());
        assertEquals(false, session.readOnly(), "a dead program holds no lock");
        Recovery recovery = session.recovery().orElseThrow();
        assertEquals(List.of("Name it"), recovery.editNames());
        recovery.recover();
        assertEquals("Before the crash", session.project().title());
        session.save();
        session.close(false);
        ProjectSession after = ProjectSession.open(folder, Clock.systemUTC());
        assertEquals("Before the crash", after.project().title());
        assertEquals(Optional.empty(), after.recovery());
        after.close(false);
    }
}

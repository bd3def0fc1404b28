// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.jobs.DemoData;
import org.ohmstead.jobs.DemoProject;
import org.ohmstead.jobs.JobProgress;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.ReplayJob;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;

/** A view on a copy of a small project with readings. */
abstract class SheetStage {
    private static final long PATIENCE_NANOSECONDS = 120_000_000_000L;
    static final List<String> STEPS = List.of("stereo-4ohm-14V4", "bridged-4ohm-14V4");

    @TempDir
    static Path shared;

    @TempDir
    Path folder;

    private static ProjectFolder made;

    final Display display = Display.getDefault();
    final List<Path> opened = new ArrayList<>();
    Path project;
    ProjectDesk desk;
    Shell shell;
    SheetComposite view;

    @BeforeAll
    static void make() throws Exception {
        DemoData data = new DemoData(Path.of("..", "..", "demo-data").toAbsolutePath());
        Path recordings = Files.createDirectories(shared.resolve("recordings"));
        List<String> lines = Files.readAllLines(data.recordingsFolder().resolve(ReplayJob.LIST_NAME)).stream()
                .filter(line -> STEPS.stream().anyMatch(id -> line.contains("\"step\": \"" + id + "\"")))
                .map(line -> line.strip().replaceAll(",$", ""))
                .toList();
        for (String line : lines) {
            String file = line.replaceAll(".*\"file\": \"([^\"]+)\".*", "$1");
            Files.copy(data.recordingsFolder().resolve(file), recordings.resolve(file));
        }
        Files.writeString(
                recordings.resolve(ReplayJob.LIST_NAME),
                lines.stream()
                        .collect(Collectors.joining(
                                ",\n", "{\"formatVersion\": 1, \"operator\": \"T. Est\", \"recordings\": [\n", "]}")));
        made = ProjectFolder.open(DemoProject.freshCopy(data, shared.resolve("made")));
        new ReplayJob(made, "0.1.0").run(recordings, false, JobProgress.SILENT);
    }

    @BeforeEach
    void open() throws Exception {
        project = Files.createDirectories(folder.resolve("copy.ohmstead"));
        Files.copy(made.folder().resolve("project.json"), project.resolve("project.json"));
        Files.copy(made.logFile(), project.resolve("log.db"));
        desk = new ProjectDesk(new ThreadedWork(display), Clock.systemUTC());
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(800, 700);
        view = new SheetComposite(
                shell,
                desk,
                new SheetMaker("0.1.0", Clock.fixed(Instant.parse("2026-04-05T06:07:08Z"), ZoneOffset.UTC)),
                opened::add);
        shell.open();
    }

    @AfterEach
    void close() {
        shell.dispose();
        desk.dispose();
        while (display.readAndDispatch()) {
            continue;
        }
    }

    void until(BooleanSupplier condition, String what) {
        long end = System.nanoTime() + PATIENCE_NANOSECONDS;
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "waited in vain until " + what);
            if (!display.readAndDispatch()) {
                LockSupport.parkNanos(2_000_000);
            }
        }
    }

    void openProject() {
        desk.open(project, Unsaved.REFUSE, session -> {}, failure -> {
            throw new IllegalStateException(failure);
        });
        until(() -> desk.session().isPresent(), "the project is open");
    }

    void openAndSettle() {
        openProject();
        until(view::settled, "the sheet is shown");
    }

    String label(String id) {
        return Ids.find(view, id, Label.class).getText();
    }

    void press(String id) {
        Ids.find(view, id, Button.class).notifyListeners(SWT.Selection, new Event());
    }

    boolean has(String id) {
        try {
            return Ids.find(view, id, Button.class).isVisible();
        } catch (IllegalArgumentException none) {
            return false;
        }
    }

    String notice() {
        return Ids.find(view, "sheet.notice.text", Label.class).getText();
    }

    static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> content = Files.list(folder)) {
            return content.sorted().toList();
        }
    }
}

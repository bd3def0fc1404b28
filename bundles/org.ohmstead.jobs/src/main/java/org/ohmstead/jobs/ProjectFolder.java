// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.ProjectChecks;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/** A project on the disk as it was when it was read, and the places of what belongs to it. */
public final class ProjectFolder {
    private static final Messages TEXTS = Messages.of(ProjectFolder.class);
    private static final String SHEETS = "sheets";

    private final Path folder;
    private final LoadedProject loaded;

    private ProjectFolder(Path folder, LoadedProject loaded) {
        this.folder = folder;
        this.loaded = loaded;
    }

    /**
     * Reads a project. Nothing is locked, and nothing is written.
     *
     * @param given the project's folder or its {@code project.json}
     * @throws ProjectFileException when it cannot be read; the message says where and why
     */
    public static ProjectFolder open(Path given) throws ProjectFileException {
        LoadedProject loaded = ProjectFile.read(given);
        Path folder = Files.isDirectory(given) ? given : given.toAbsolutePath().getParent();
        return new ProjectFolder(folder, loaded);
    }

    /** Returns the folder. */
    public Path folder() {
        return folder;
    }

    /** Returns the project with what was noticed while reading it. */
    public LoadedProject loaded() {
        return loaded;
    }

    /** Returns the project. */
    public Project project() {
        return loaded.project();
    }

    /** Returns where its test log lies or will lie. */
    public Path logFile() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    /** Returns where its results sheets go; the folder need not exist. */
    public Path sheetsFolder() {
        return folder.resolve(SHEETS);
    }

    /**
     * Opens the log for reading.
     *
     * @throws JobException when there is none yet
     * @throws TestLogException when it cannot be read
     */
    public TestLog readLog() throws JobException, TestLogException {
        if (!Files.exists(logFile())) {
            throw new JobException(JobException.Reason.NO_LOG, TEXTS.text("log.none", folder));
        }
        return TestLog.openReadOnly(logFile());
    }

    /**
     * Returns what reading the file and looking at the whole brought up.
     *
     * @param day for which calibration dates are judged
     */
    public List<Problem> problems(LocalDate day) {
        List<Problem> problems = new ArrayList<>(loaded.problems());
        problems.addAll(ProjectChecks.check(project(), day));
        return problems;
    }
}

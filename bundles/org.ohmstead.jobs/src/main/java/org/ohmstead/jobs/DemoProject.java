// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * The invented demo project, made anew in a folder of its own.
 *
 * @param folder the project
 * @param outcome what became of its steps
 */
public record DemoProject(ProjectFolder folder, ReplayOutcome outcome) {
    private static final Messages TEXTS = Messages.of(DemoProject.class);

    /** Name of the demo project's folder. */
    public static final String NAME = "larkspur" + ProjectFile.FOLDER_SUFFIX;

    /** Marks a folder as the demo's own, so that nobody's project is ever cleared away. */
    private static final String MARKER = ".ohmstead-demo";

    /**
     * Makes the demo project anew and carries out its plan from the demo's recordings.
     *
     * @param data where project and recordings come from
     * @param target the demo's own folder; a project of an earlier demo in it is deleted, anything else is refused
     * @param softwareVersion version that is kept with each reading, not blank
     * @param progress hears of each step
     * @throws JobException when the target holds something that is not the demo's, or the data are not fit
     * @throws ProjectFileException when the project cannot be read or locked
     * @throws TestLogException when the log or the store of captures fails
     * @throws IOException when the target cannot be read or written
     */
    public static DemoProject make(DemoData data, Path target, String softwareVersion, JobProgress progress)
            throws JobException, ProjectFileException, TestLogException, IOException {
        ProjectFolder folder = ProjectFolder.open(freshCopy(data, target));
        ReplayOutcome outcome = new ReplayJob(folder, softwareVersion).run(data.recordingsFolder(), false, progress);
        return new DemoProject(folder, outcome);
    }

    /**
     * Copies the demo project without any reading, under the same rules as {@link #make}.
     *
     * @param data where the project comes from
     * @param target the demo's own folder
     * @return the project's folder within the target
     * @throws JobException when the target holds something that is not the demo's; nothing was changed then
     * @throws IOException when the target cannot be read or written
     */
    public static Path freshCopy(DemoData data, Path target) throws JobException, IOException {
        Path marker = target.resolve(MARKER);
        Path project = target.resolve(NAME);
        if (Files.exists(target)) {
            boolean empty;
            try (Stream<Path> content = Files.list(target)) {
                empty = content.findAny().isEmpty();
            }
            if (!empty && !Files.exists(marker)) {
                throw new JobException(JobException.Reason.FOLDER_TAKEN, TEXTS.text("demo.taken", target));
            }
            clear(project);
        }
        Files.createDirectories(project);
        Files.writeString(marker, "Ohmstead's demo makes this folder anew each time.\n");
        Files.copy(data.projectFolder().resolve(ProjectFile.FILE_NAME), project.resolve(ProjectFile.FILE_NAME));
        return project;
    }

    private static void clear(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        List<Path> content;
        try (Stream<Path> walk = Files.walk(folder)) {
            content = walk.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path path : content) {
            Files.delete(path);
        }
    }
}

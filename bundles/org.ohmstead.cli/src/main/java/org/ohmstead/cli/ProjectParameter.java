// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Path;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.model.json.ProjectFileException;
import picocli.CommandLine.Parameters;

/** The project that a word is about, as its first parameter. */
final class ProjectParameter {
    @Parameters(index = "0", paramLabel = "PROJECT", descriptionKey = "project.PROJECT")
    private Path path;

    /** Returns the path as given. */
    Path path() {
        return path;
    }

    /** Reads the project. */
    ProjectFolder open() throws ProjectFileException {
        return ProjectFolder.open(path);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.util.List;
import java.util.Objects;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;

/**
 * A project as it was read from its file.
 *
 * @param project the project
 * @param problems what was noticed while reading, such as unknown fields; empty when nothing was
 * @param document the file's own content, to be handed to {@link ProjectFile#write} so that unknown fields survive
 * @param revisionSha256 SHA-256 of the project, see {@link ProjectRevision}
 * @param fileSha256 SHA-256 of the file's bytes, 64 hexadecimal digits; it tells whether the file changed since
 */
public record LoadedProject(
        Project project, List<Problem> problems, ProjectDocument document, String revisionSha256, String fileSha256) {
    public LoadedProject {
        Objects.requireNonNull(project, "project");
        problems = List.copyOf(problems);
        Objects.requireNonNull(document, "document");
        Objects.requireNonNull(revisionSha256, "revisionSha256");
        Objects.requireNonNull(fileSha256, "fileSha256");
    }
}

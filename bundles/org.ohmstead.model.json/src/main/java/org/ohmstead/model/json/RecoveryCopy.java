// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.ohmstead.model.Project;

/**
 * Edits of a project that were not saved yet, kept so that a crash does not take them.
 *
 * @param madeAt when the copy was made
 * @param baseRevision revision of the project as last saved before the edits, see {@link ProjectRevision}; empty when it was not known
 * @param editNames names of the edits since then, oldest first; of very many the last ones
 * @param editCount how many edits there were, at least the number of names
 * @param project the project with the edits
 */
public record RecoveryCopy(
        Instant madeAt, String baseRevision, List<String> editNames, int editCount, Project project) {
    public RecoveryCopy {
        Objects.requireNonNull(madeAt, "madeAt");
        Objects.requireNonNull(baseRevision, "baseRevision");
        editNames = List.copyOf(editNames);
        if (editCount < editNames.size()) {
            throw new IllegalArgumentException(
                    "editCount is " + editCount + "; it must be at least the number of names, " + editNames.size());
        }
        Objects.requireNonNull(project, "project");
    }
}

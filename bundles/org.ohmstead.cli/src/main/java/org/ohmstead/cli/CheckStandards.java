// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;

/** Finds check standards by what people write. */
final class CheckStandards {
    private CheckStandards() {}

    /** Returns the check standard with an id; refuses one that the project does not have. */
    static CheckStandard find(Project project, String id) throws InputException {
        if (project.checkStandards().isEmpty()) {
            throw new InputException(
                    "The project has no check standards. Enter one: something steady that you measure again and"
                            + " again to see whether the bench still is what it was.");
        }
        return project.checkStandard(id)
                .orElseThrow(() -> new InputException("The project has no check standard \"" + id + "\". It has "
                        + Texts.some(project.checkStandards().stream()
                                .map(CheckStandard::id)
                                .toList())
                        + "."));
    }
}

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
            throw new InputException(Texts.of("standards.none"));
        }
        return project.checkStandard(id)
                .orElseThrow(() -> new InputException(Texts.of(
                        "standards.unknown",
                        id,
                        Texts.some(project.checkStandards().stream()
                                .map(CheckStandard::id)
                                .toList()))));
    }
}

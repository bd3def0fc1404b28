// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import org.ohmstead.model.json.internal.KeptFields;

/**
 * What a project file holds beyond the project: its unknown fields and where they stand. It says nothing to its bearer; it is handed
 * from {@link ProjectFile#read} to {@link ProjectFile#write}. Immutable.
 */
public final class ProjectDocument {
    private final KeptFields kept;

    ProjectDocument(KeptFields kept) {
        this.kept = kept;
    }

    KeptFields kept() {
        return kept;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.ohmstead.model.json.RecoveryCopy;

/** Writes a copy of unsaved edits as JSON. */
public final class RecoveryContent {
    /** Name of the field that holds the project, as it would stand in {@code project.json}. */
    public static final String PROJECT = "project";

    private RecoveryContent() {}

    /** Returns the content of the file. */
    public static ObjectNode toJson(RecoveryCopy copy, int formatVersion) {
        return ObjectBuilder.begin()
                .whole(FormatVersions.FIELD, formatVersion)
                .text("madeAt", copy.madeAt().toString())
                .text("baseRevision", copy.baseRevision())
                .texts("editNames", copy.editNames())
                .whole("editCount", copy.editCount())
                .node(PROJECT, ProjectWriter.toJson(copy.project()))
                .end();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.nio.charset.StandardCharsets;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.internal.CanonicalWriter;
import org.ohmstead.model.json.internal.ProjectWriter;
import org.ohmstead.model.json.internal.Sha256;

/** Names one state of a project, so that a reading can say what it was taken under. */
public final class ProjectRevision {
    private ProjectRevision() {}

    /**
     * Returns the SHA-256, as 64 hexadecimal digits, of the project's file content in canonical form ({@link CanonicalJson}, UTF-8).
     * Layout, order of fields and unknown fields do not count; every value of the project does.
     */
    public static String of(Project project) {
        String canonical = CanonicalWriter.write(ProjectWriter.toJson(project));
        return Sha256.hex(canonical.getBytes(StandardCharsets.UTF_8));
    }
}

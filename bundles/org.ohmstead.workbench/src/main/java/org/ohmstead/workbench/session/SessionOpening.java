// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;

/** Opens sessions; on any thread. */
final class SessionOpening {
    private SessionOpening() {}

    static ProjectSession open(Path projectFolderOrJson, Clock clock) throws SessionException {
        Path given = projectFolderOrJson.toAbsolutePath().normalize();
        Path file = Files.isRegularFile(given) ? given : given.resolve(ProjectFile.FILE_NAME);
        if (!Files.isRegularFile(file)) {
            // Says what is missing, before a lock file would be left in a folder that is no project.
            SavedState.read(given);
        }
        WriteAccess access = WriteAccess.ask(file.getParent());
        boolean opened = false;
        try {
            SavedState saved = SavedState.read(file);
            Project project = saved.project().orElseThrow();
            ProjectSession session = new ProjectSession(file, clock, saved, project);
            if (access instanceof WriteAccess.Granted granted) {
                session.grant(granted, WriteAccess.findLeft(session.folder(), project));
            } else {
                session.note(((WriteAccess.Refused) access).notice());
            }
            opened = true;
            return session;
        } finally {
            if (!opened && access instanceof WriteAccess.Granted granted) {
                granted.release();
            }
        }
    }

    /** Returns whether two paths lead to one folder. */
    static boolean same(Path folder, Path other) {
        try {
            return folder.equals(other) || Files.isSameFile(folder, other);
        } catch (IOException notThere) {
            return false;
        }
    }
}

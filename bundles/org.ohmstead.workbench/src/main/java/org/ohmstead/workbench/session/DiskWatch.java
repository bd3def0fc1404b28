// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.util.Optional;

/** Looks at the files of the open project from another thread. */
final class DiskWatch {
    /**
     * What to look at, and how it looked.
     *
     * @param session the open session
     * @param file the project's file
     * @param stamp how it looked
     * @param wantsAccess whether somebody else has the project, so that the right to write may come free
     * @param logFile the test log
     * @param logStamp how that looked
     */
    record Watched(
            ProjectSession session, Path file, FileStamp stamp, boolean wantsAccess, Path logFile, LogStamp logStamp) {}

    /**
     * What was seen.
     *
     * @param look what became of the project's file
     * @param access the right to write, when it was wanted and came free
     * @param logChanged whether the log looks different
     */
    record Seen(DiskLook look, Optional<WriteAccess.Granted> access, boolean logChanged) {}

    private DiskWatch() {}

    /** Looks; on any thread. */
    static Seen look(Watched watched) {
        Optional<WriteAccess.Granted> access = Optional.empty();
        if (watched.wantsAccess()
                && WriteAccess.ask(watched.file().getParent()) instanceof WriteAccess.Granted granted) {
            access = Optional.of(granted);
        }
        return new Seen(
                DiskLook.at(watched.file(), watched.stamp()),
                access,
                !LogStamp.of(watched.logFile()).equals(watched.logStamp()));
    }
}

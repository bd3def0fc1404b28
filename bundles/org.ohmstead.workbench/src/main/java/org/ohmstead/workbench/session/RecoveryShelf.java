// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.RecoveryCopy;
import org.ohmstead.model.json.RecoveryFile;
import org.ohmstead.units.text.Messages;

/**
 * The copies of unsaved edits in the folder of a project that is open for writing: those left behind by a crash, and the one that this
 * session keeps up to date. Safe for several threads.
 */
final class RecoveryShelf {
    private static final Messages TEXTS = Messages.of(RecoveryShelf.class);

    /** A copy that was left behind. */
    record Left(Path file, RecoveryCopy copy) {
        void delete() throws SessionException {
            try {
                RecoveryFile.delete(file);
            } catch (ProjectFileException failure) {
                throw new SessionException(failure.getMessage(), failure);
            }
        }
    }

    private final Path file;
    private final List<Path> replaced = new ArrayList<>();
    private long generation;
    private boolean closed;

    RecoveryShelf(Path folder) {
        this.file = folder.resolve(RecoveryFile.FILE_NAME);
    }

    /**
     * Looks for copies that were left behind, newest first. One that holds nothing new is deleted; one that cannot be read is kept
     * aside and told.
     */
    static List<Left> findLeft(Path folder, Project project, List<SessionNotice> notices) throws ProjectFileException {
        List<Left> left = new ArrayList<>();
        for (Path found : RecoveryFile.list(folder)) {
            try {
                RecoveryCopy copy = RecoveryFile.read(found);
                if (copy.project().equals(project)) {
                    RecoveryFile.delete(found);
                } else {
                    left.add(new Left(outOfTheWay(found, copy), copy));
                }
            } catch (ProjectFileException unreadable) {
                notices.add(keepAside(found, unreadable));
            }
        }
        left.sort(
                (first, second) -> second.copy().madeAt().compareTo(first.copy().madeAt()));
        return List.copyOf(left);
    }

    // The session that begins now writes its own copy under the usual name.
    private static Path outOfTheWay(Path found, RecoveryCopy copy) throws ProjectFileException {
        if (!found.getFileName().toString().equals(RecoveryFile.FILE_NAME)) {
            return found;
        }
        String time = copy.madeAt().toString().replaceAll("[^0-9TZ]", "");
        return RecoveryFile.rename(found, ".unsaved-edits-" + time + ".json");
    }

    private static SessionNotice keepAside(Path found, ProjectFileException unreadable) throws ProjectFileException {
        Path aside = RecoveryFile.rename(found, found.getFileName() + RecoveryFile.BROKEN_SUFFIX);
        return new SessionNotice(
                SessionNotice.Kind.RECOVERY_BROKEN,
                TEXTS.text("recovery.broken", unreadable.getMessage(), aside.getFileName()));
    }

    /** Returns what a later writing must show to be still wanted. */
    synchronized long generation() {
        return generation;
    }

    /** Writes the session's copy, unless it was cleared after the generation was asked for. */
    synchronized void write(long wanted, RecoveryCopy copy) throws ProjectFileException {
        if (closed || wanted != generation) {
            return;
        }
        RecoveryFile.write(file, copy);
        deleteReplaced();
    }

    /** Says that a copy that was left behind is now part of the session, so that the session's own copy replaces it. */
    synchronized void replace(Path left) {
        replaced.add(left);
    }

    /** Deletes the session's copy, as there is nothing to recover any more; writings under way are given up. */
    synchronized void clear() throws ProjectFileException {
        generation++;
        if (!closed) {
            RecoveryFile.delete(file);
        }
    }

    /** Deletes the session's copy and what it replaced, as all is saved. */
    synchronized void saved() throws ProjectFileException {
        clear();
        deleteReplaced();
    }

    /** Writes or deletes the session's copy for the last time. */
    synchronized void close(Optional<RecoveryCopy> lastCopy) throws ProjectFileException {
        if (lastCopy.isPresent()) {
            write(generation, lastCopy.get());
        } else {
            clear();
        }
        closed = true;
    }

    private void deleteReplaced() throws ProjectFileException {
        for (Path left : replaced) {
            RecoveryFile.delete(left);
        }
        replaced.clear();
    }
}

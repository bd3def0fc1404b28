// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectDocument;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.text.Messages;

/**
 * A project that is to be written, so that the writing may happen on another thread.
 *
 * @param file where
 * @param project what
 * @param document what the file held besides
 * @param known how the file looked last
 * @param knownRevision revision of the project that it held then; empty when it was not known
 * @param gate keeps closing and writing apart
 * @param number above that of earlier orders
 */
record SaveOrder(
        Path file,
        Project project,
        ProjectDocument document,
        FileStamp known,
        String knownRevision,
        DiskGate gate,
        long number) {
    private static final Messages TEXTS = Messages.of(SaveOrder.class);

    /**
     * What stands in the file now.
     *
     * @param project as it was ordered
     * @param loaded as it was written
     * @param stamp how the file looks
     * @param number of the order
     */
    record Done(Project project, LoadedProject loaded, FileStamp stamp, long number) {}

    /** Writes the file, unless it was changed outside. */
    Done carryOut() throws SessionException {
        synchronized (gate) {
            if (gate.closed()) {
                throw new SessionException(TEXTS.text("save.closed"));
            }
            ProjectDocument kept = documentToKeep();
            try {
                LoadedProject written = ProjectFile.write(file, project, Optional.of(kept));
                FileStamp now = FileStamp.of(file, written.fileSha256());
                gate.wrote(known, now);
                return new Done(project, written, now, number);
            } catch (ProjectFileException failure) {
                throw new SessionException(failure.getMessage(), failure);
            } catch (IOException failure) {
                throw new SessionException(TEXTS.text("save.unseen", file, failure.getMessage()), failure);
            }
        }
    }

    private ProjectDocument documentToKeep() throws SessionException {
        DiskLook look = DiskLook.at(file, gate.expected(known));
        if (look instanceof DiskLook.Changed changed) {
            if (changed.loaded().revisionSha256().equals(knownRevision)) {
                return changed.loaded().document();
            }
            throw new SessionException(TEXTS.text("save.changed", file.getFileName()));
        }
        if (look instanceof DiskLook.Unreadable unreadable) {
            throw new SessionException(TEXTS.text("save.unreadable", file.getFileName(), unreadable.sentence()));
        }
        Path folder = file.toAbsolutePath().getParent();
        if (look instanceof DiskLook.Missing && !Files.isDirectory(folder)) {
            throw new SessionException(TEXTS.text("save.noFolder", folder));
        }
        return document;
    }
}

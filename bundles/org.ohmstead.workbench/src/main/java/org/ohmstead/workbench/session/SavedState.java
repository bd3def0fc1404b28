// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectDocument;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.RecoveryCopy;

/**
 * What is known of a project's file.
 *
 * @param project what it holds; empty when it holds nothing that can be read
 * @param document what to keep of it at the next save
 * @param problems what was noticed in it
 * @param revision revision of the last project that was read from it or saved into it
 * @param stamp how it looked
 */
record SavedState(
        Optional<Project> project, ProjectDocument document, List<Problem> problems, String revision, FileStamp stamp) {
    private static final int MOST_NAMES = 50;

    static SavedState of(LoadedProject loaded, FileStamp stamp) {
        return new SavedState(
                Optional.of(loaded.project()),
                loaded.document(),
                loaded.problems(),
                loaded.revisionSha256(),
                stamp.withSha256(loaded.fileSha256()));
    }

    /** Reads a project's file; on any thread. */
    static SavedState read(Path file) throws SessionException {
        // Stat first: a change between both is then found by the next look.
        FileStamp look = FileStamp.orMissing(file);
        try {
            return of(ProjectFile.read(file), look);
        } catch (ProjectFileException failure) {
            throw new SessionException(failure.getMessage(), failure);
        }
    }

    /** Returns the order to write a project over what is known of the file. */
    SaveOrder order(Path file, Project edited, DiskGate gate) {
        String knownRevision = project.isPresent() ? revision : "";
        return new SaveOrder(file, edited, document, stamp, knownRevision, gate, gate.nextNumber());
    }

    boolean holds(Project other) {
        return project.map(other::equals).orElse(false);
    }

    /** Returns the same with the project as it stood in memory when it was written. */
    SavedState withProject(Project written) {
        return new SavedState(Optional.of(written), document, problems, revision, stamp);
    }

    SavedState withStamp(FileStamp newStamp) {
        return new SavedState(project, document, problems, revision, newStamp);
    }

    /** Returns what is known after the user chose to overwrite what was seen on the disk. */
    SavedState keptOver(DiskLook look) {
        if (look instanceof DiskLook.Changed changed) {
            return of(changed.loaded(), changed.stamp());
        }
        if (look instanceof DiskLook.Unreadable unreadable) {
            return unknown(unreadable.stamp());
        }
        return look instanceof DiskLook.Missing ? unknown(FileStamp.missing()) : this;
    }

    private SavedState unknown(FileStamp newStamp) {
        return new SavedState(Optional.empty(), document, problems, revision, newStamp);
    }

    /** Returns what a crash must not take. */
    RecoveryCopy recoveryCopy(Instant now, List<String> names, Project edited) {
        List<String> lastNames = names.subList(Math.max(0, names.size() - MOST_NAMES), names.size());
        return new RecoveryCopy(now, project.isPresent() ? revision : "", lastNames, names.size(), edited);
    }
}

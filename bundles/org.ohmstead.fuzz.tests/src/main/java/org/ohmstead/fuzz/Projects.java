// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.file.Path;
import java.util.Optional;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.RecoveryFile;

/** A project, and a copy of unsaved edits. What was read and is written must be read as the same again, with the fields not known. */
public final class Projects {
    private Projects() {}

    /** Reads any bytes as each of them. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        Path file = Desk.file("project.json", input);
        try {
            LoadedProject loaded = ProjectFile.read(file);
            Path copy = Desk.file("copy.json", new byte[0]);
            LoadedProject written = ProjectFile.write(copy, loaded.project(), Optional.of(loaded.document()));
            LoadedProject again = ProjectFile.read(copy);
            Demand.that(again.project().equals(written.project()), "another project was read than was written");
            Demand.that(again.revisionSha256().equals(loaded.revisionSha256()), "the revision changed by writing");
            Demand.that(again.problems().size() == loaded.problems().size(), "problems changed by writing");
        } catch (ProjectFileException e) {
            Demand.said(e);
        }
        try {
            RecoveryFile.read(file);
        } catch (ProjectFileException e) {
            Demand.said(e);
        }
    }
}

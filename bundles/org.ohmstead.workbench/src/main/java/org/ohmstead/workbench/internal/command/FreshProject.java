// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.text.Messages;

/** A project to begin from: nothing measured, the bench to be described. */
final class FreshProject {
    private static final Messages TEXTS = Messages.of(FreshProject.class);
    private static final int USUAL_CHANNELS = 2;
    /** Typical range of a bench supply for 12 V equipment; common practice, no source. */
    private static final double USUAL_LOWEST_VOLTS = 10;

    private static final double USUAL_HIGHEST_VOLTS = 16;
    private static final double USUAL_LIMIT_AMPS = 100;

    private static final Cable USUAL_CABLE = new Cable(21, 2, OptionalDouble.empty());

    private FreshProject() {}

    /**
     * Makes the folder and the project file in it.
     *
     * @param wanted the folder; the ending of project folders is added when it lacks
     * @param confidence confidence that verdicts ask for
     * @return the folder
     * @throws IOException when something is there already or it cannot be made
     */
    static Path make(Path wanted, double confidence) throws IOException, ProjectFileException {
        Path folder = withSuffix(wanted);
        if (Files.exists(folder)) {
            throw new IOException(TEXTS.text("new.exists", folder));
        }
        Files.createDirectories(folder);
        ProjectFile.write(folder, project(name(folder), confidence), Optional.empty());
        return folder;
    }

    static Project project(String name, double confidence) {
        Amplifier amplifier = new Amplifier(
                "",
                name,
                "",
                USUAL_CHANNELS,
                SupplyType.UNKNOWN,
                List.of(),
                List.of(),
                OptionalDouble.empty(),
                List.of(),
                "");
        Supply supply = new Supply(TEXTS.text("new.supply"), USUAL_LOWEST_VOLTS, USUAL_HIGHEST_VOLTS, USUAL_LIMIT_AMPS);
        Bench bench = new Bench("", supply, USUAL_CABLE, List.of(), List.of(), OptionalDouble.empty());
        return new Project(name, amplifier, bench, List.of(), List.of(), new SheetSettings("", "", confidence, ""));
    }

    private static Path withSuffix(Path wanted) {
        String last = wanted.getFileName().toString();
        return last.endsWith(ProjectFile.FOLDER_SUFFIX)
                ? wanted
                : wanted.resolveSibling(last + ProjectFile.FOLDER_SUFFIX);
    }

    private static String name(Path folder) {
        String last = folder.getFileName().toString();
        String name = last.substring(0, last.length() - ProjectFile.FOLDER_SUFFIX.length());
        return name.isBlank() ? TEXTS.text("new.name") : name;
    }
}

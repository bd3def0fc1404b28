// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.WorkbenchPreferences;

/** Which project to begin with. */
final class StartArguments {
    /** The start scripts put this before each word, so that the framework takes none of them for its own. */
    private static final String MARK = "=";

    private StartArguments() {}

    /** Returns the project that the command line names: a folder, or the project file in it; empty when it names none. */
    static Optional<Path> project(String... arguments) {
        return words(Stream.of(arguments))
                .filter(word -> !word.startsWith("-") && !word.isBlank())
                .findFirst()
                .map(word -> Path.of(word).toAbsolutePath().normalize())
                .map(path -> path.endsWith(ProjectFile.FILE_NAME) ? path.getParent() : path);
    }

    /** Returns the user's words among the framework's arguments, without their mark. */
    static Stream<String> words(Stream<String> arguments) {
        return arguments.filter(word -> word.startsWith(MARK)).map(word -> word.substring(MARK.length()));
    }

    /** Returns the project that was open last, if the preferences say to open it again and it is still there. */
    static Optional<Path> lastProject() {
        if (!WorkbenchPreferences.store().getBoolean(WorkbenchPreferences.REOPEN_LAST)) {
            return Optional.empty();
        }
        return ProjectCommands.recent().stream()
                .findFirst()
                .filter(folder -> Files.isRegularFile(folder.resolve(ProjectFile.FILE_NAME)));
    }
}

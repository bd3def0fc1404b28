// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;

/** Copies of the demo's project, and things to do with them. */
final class SampleFolder {
    private static final Path DEMO = Path.of("../../demo-data/larkspur.ohmstead/project.json");

    private SampleFolder() {}

    static Path copyInto(Path parent) throws IOException {
        Path folder = Files.createDirectory(parent.resolve("larkspur.ohmstead"));
        Files.copy(DEMO, folder.resolve(ProjectFile.FILE_NAME));
        return folder;
    }

    static Path file(Path folder) {
        return folder.resolve(ProjectFile.FILE_NAME);
    }

    static UnaryOperator<Project> titled(String title) {
        return project -> project.withTitle(title);
    }

    /** Changes the title in the file, as any editor of texts could, into one of another length. */
    static void editOutside(Path folder, String title) throws IOException {
        String text = Files.readString(file(folder));
        Files.writeString(file(folder), text.replaceFirst("\"title\": \"[^\"]*\"", "\"title\": \"" + title + "\""));
    }

    static List<String> namesIn(Path folder) throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    static String placeOf(Class<?> type) {
        try {
            return Path.of(type.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException broken) {
            throw new IllegalStateException(broken);
        }
    }
}

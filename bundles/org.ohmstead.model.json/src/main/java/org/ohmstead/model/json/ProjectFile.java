// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.internal.AtomicFile;
import org.ohmstead.model.json.internal.FieldReader;
import org.ohmstead.model.json.internal.Findings;
import org.ohmstead.model.json.internal.FormatVersions;
import org.ohmstead.model.json.internal.JsonSource;
import org.ohmstead.model.json.internal.KeptFields;
import org.ohmstead.model.json.internal.PrettyWriter;
import org.ohmstead.model.json.internal.ProjectReader;
import org.ohmstead.model.json.internal.ProjectWriter;
import org.ohmstead.units.text.Messages;

/**
 * Reads and writes a project: a folder {@code NAME.ohmstead} that holds {@code project.json}.
 *
 * <p>The file's fields are named as the components of the records of {@code org.ohmstead.model}, in their order, after {@code
 * "formatVersion"}. Values of enums are written in camel case ({@code "heatSinkWithFan"}), days and instants as in ISO 8601, absent
 * optional values are left out, and a {@code "kind"} tells the cases of stimulus ({@code continuousSine}, {@code toneBurst}) and end
 * point ({@code distortionLimit}, {@code clippingOnset}, {@code fixedLevel}) apart. Texts that may be empty, lists, and the
 * confirmation of a step may be left out.
 */
public final class ProjectFile {
    private static final Messages TEXTS = Messages.of(ProjectFile.class);
    /** Name of the file inside the project's folder. */
    public static final String FILE_NAME = "project.json";

    /** How the name of a project's folder ends. */
    public static final String FOLDER_SUFFIX = ".ohmstead";

    /** The version of the file format that is written, and the newest that is read. */
    public static final int FORMAT_VERSION = 1;

    private static final FormatVersions VERSIONS = new FormatVersions(FORMAT_VERSION, List.of());

    private ProjectFile() {}

    /**
     * Reads a project.
     *
     * @param projectFolderOrJson the project's folder, or the file in it
     * @throws ProjectFileException when the file cannot be read, is of a newer format version, or is wrong; the message says where and
     *     what would be right. The file is never touched.
     */
    public static LoadedProject read(Path projectFolderOrJson) throws ProjectFileException {
        Path file = fileOf(projectFolderOrJson);
        if (Files.isDirectory(projectFolderOrJson) && !Files.exists(file)) {
            throw new ProjectFileException(
                    FILE_NAME, TEXTS.text("project.none", projectFolderOrJson, FILE_NAME, FOLDER_SUFFIX), null);
        }
        return parse(JsonSource.ofFile(file));
    }

    /**
     * Writes a project in one step: a new file is written beside the old one, forced to the disk and then put in its place. When
     * anything fails, the old file is as it was and no other file is left behind. The text is UTF-8 with the line ends of Unix; what
     * did not change is written as it was.
     *
     * @param projectFolderOrJson the project's folder, which is made when only it is missing, or the file in it
     * @param project what to write
     * @param document what the file held when it was read, whose unknown fields are kept in their object, entries of lists matched by
     *     their {@code id}, those without by equal content, else by place when the list is as long as before; empty for a new file
     * @return the project as it now stands in the file, with the document for the next write
     * @throws ProjectFileException when it could not be written
     */
    public static LoadedProject write(Path projectFolderOrJson, Project project, Optional<ProjectDocument> document)
            throws ProjectFileException {
        String revision = ProjectRevision.of(project);
        ObjectNode tree = ProjectWriter.toJson(project);
        document.ifPresent(before -> before.kept().mergeInto(tree));
        String text = PrettyWriter.write(tree);
        Path file = fileOf(projectFolderOrJson);
        LoadedProject written = parse(JsonSource.ofText(JsonSource.label(file), text));
        if (!written.revisionSha256().equals(revision)) {
            throw new IllegalStateException("the project does not read back from its own file content");
        }
        makeFolder(file);
        AtomicFile.write(file, text.getBytes(StandardCharsets.UTF_8));
        return written;
    }

    static LoadedProject parse(JsonSource source) throws ProjectFileException {
        Findings findings = new Findings();
        ObjectNode root = VERSIONS.migrate(source, source.parse(), findings);
        Project project = ProjectReader.project(FieldReader.root(source, root, findings));
        KeptFields kept = new KeptFields(root, ProjectWriter.toJson(project), findings.unknownPaths());
        return new LoadedProject(
                project, findings.problems(), new ProjectDocument(kept), ProjectRevision.of(project), source.sha256());
    }

    private static Path fileOf(Path projectFolderOrJson) {
        Path name = projectFolderOrJson.getFileName();
        boolean namesFile = name != null && name.toString().endsWith(".json");
        return Files.isRegularFile(projectFolderOrJson) || namesFile
                ? projectFolderOrJson
                : projectFolderOrJson.resolve(FILE_NAME);
    }

    private static void makeFolder(Path file) throws ProjectFileException {
        Path folder = file.toAbsolutePath().getParent();
        if (Files.isDirectory(folder)) {
            return;
        }
        try {
            Files.createDirectory(folder);
        } catch (IOException failure) {
            throw new ProjectFileException(
                    JsonSource.label(file),
                    TEXTS.text("project.noFolder", folder, AtomicFile.reason(failure)),
                    failure);
        }
    }
}

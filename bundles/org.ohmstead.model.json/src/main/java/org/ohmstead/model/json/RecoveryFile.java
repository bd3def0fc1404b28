// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.json.internal.AtomicFile;
import org.ohmstead.model.json.internal.FieldReader;
import org.ohmstead.model.json.internal.Findings;
import org.ohmstead.model.json.internal.FormatVersions;
import org.ohmstead.model.json.internal.JsonSource;
import org.ohmstead.model.json.internal.PrettyWriter;
import org.ohmstead.model.json.internal.RecoveryContent;
import org.ohmstead.units.text.Messages;

/**
 * Copies of unsaved edits in a project's folder, beside {@code project.json} and never in its place: hidden files whose names begin with
 * {@code .unsaved-edits}. Only who holds the {@link ProjectLock} may touch them.
 */
public final class RecoveryFile {
    private static final Messages TEXTS = Messages.of(RecoveryFile.class);
    /** Name of the copy that a running program keeps up to date. */
    public static final String FILE_NAME = ".unsaved-edits.json";

    /** How the name of a copy ends that could not be read and was kept aside. */
    public static final String BROKEN_SUFFIX = ".broken";

    private static final int FORMAT_VERSION = 1;
    private static final String PATTERN = ".unsaved-edits*.json";
    private static final FormatVersions VERSIONS = new FormatVersions(FORMAT_VERSION, List.of());

    private RecoveryFile() {}

    /**
     * Writes a copy in one step, forced to the disk.
     *
     * @throws ProjectFileException when it could not be written; a copy that was there before is untouched
     */
    public static void write(Path file, RecoveryCopy copy) throws ProjectFileException {
        String text = PrettyWriter.write(RecoveryContent.toJson(copy, FORMAT_VERSION));
        AtomicFile.write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Reads a copy.
     *
     * @throws ProjectFileException when it cannot be read or is not such a copy
     */
    public static RecoveryCopy read(Path file) throws ProjectFileException {
        JsonSource source = JsonSource.ofFile(file);
        Findings findings = new Findings();
        ObjectNode root = VERSIONS.migrate(source, source.parse(), findings);
        FieldReader in = FieldReader.root(source, root, findings);
        Instant madeAt = in.instant("madeAt", "field.recovery.madeAt");
        JsonNode project = root.get(RecoveryContent.PROJECT);
        if (project == null || !project.isObject()) {
            throw new ProjectFileException(JsonSource.label(file), TEXTS.text("recovery.noProject", file), null);
        }
        LoadedProject loaded =
                ProjectFile.parse(JsonSource.ofText(JsonSource.label(file), PrettyWriter.write(project)));
        String baseRevision = in.text("baseRevision");
        List<String> names = in.texts("editNames", "field.recovery.editNames");
        int count = in.whole("editCount", "field.recovery.editCount");
        return in.build(() -> new RecoveryCopy(madeAt, baseRevision, names, count, loaded.project()));
    }

    /**
     * Returns the copies in a project's folder that were left behind, in no certain order.
     *
     * @throws ProjectFileException when the folder cannot be read
     */
    public static List<Path> list(Path projectFolder) throws ProjectFileException {
        List<Path> files = new ArrayList<>();
        try (DirectoryStream<Path> found = Files.newDirectoryStream(projectFolder, PATTERN)) {
            found.forEach(files::add);
        } catch (IOException failure) {
            throw failure(projectFolder, "recovery.notListed", failure);
        }
        return List.copyOf(files);
    }

    /**
     * Deletes a copy; does nothing when there is none.
     *
     * @throws ProjectFileException when it could not be deleted
     */
    public static void delete(Path file) throws ProjectFileException {
        try {
            Files.deleteIfExists(file);
        } catch (IOException failure) {
            throw failure(file, "recovery.notDeleted", failure);
        }
    }

    /**
     * Gives a copy another name in its folder, so that it is kept; a file of that name is replaced.
     *
     * @return the file under its new name
     * @throws ProjectFileException when it could not be renamed
     */
    public static Path rename(Path file, String name) throws ProjectFileException {
        try {
            return Files.move(file, file.resolveSibling(name), StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException failure) {
            throw failure(file, "recovery.notRenamed", failure, name);
        }
    }

    private static ProjectFileException failure(Path file, String key, IOException failure, String... more) {
        return new ProjectFileException(
                JsonSource.label(file),
                TEXTS.text(key, file, AtomicFile.reason(failure), String.join("", more)),
                failure);
    }
}

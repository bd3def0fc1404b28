// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Predicate;
import org.ohmstead.exchange.internal.PackReader;
import org.ohmstead.exchange.internal.ProjectPacking;
import org.ohmstead.exchange.internal.UnpackFolder;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Messages;

/**
 * A whole project as one zip file: {@code project.json}, the log as it stands at one moment, the captures, the results sheets, and a
 * {@code manifest.json} that names each with size and SHA-256, and the head of the log.
 *
 * <p>On the way in nothing is believed. Names that lead out of the folder, to a fixed place, that stand twice, differ only in case, are
 * links or belong to no place of a project are refused; what unfolds is counted while it does; every file must have the hash that the
 * manifest says, every capture the one in its name; the log is verified up to the head; the project must be readable. All that happens
 * in a folder beside the wanted one, which is put in its place only then, in one step.
 */
public final class ProjectPack {
    private static final Messages TEXTS = Messages.of(ProjectPack.class);
    /** How the name of a packed project ends. */
    public static final String SUFFIX = ".zip";

    private ProjectPack() {}

    /**
     * What was packed.
     *
     * @param file the packed project
     * @param sha256 hash of its content, 64 hexadecimal digits
     * @param manifest what it says about itself
     * @param leftOut which captures and sheets are not in it, each a sentence; other files of the folder never are
     */
    public record Packed(Path file, String sha256, PackManifest manifest, List<String> leftOut) {
        /** Copies the list. */
        public Packed {
            leftOut = List.copyOf(leftOut);
        }
    }

    /**
     * Packs a project. Others may go on adding to its log meanwhile; what they add comes in up to one moment.
     *
     * @param projectFolder the project's folder
     * @param target the file to be made; there must be none yet
     * @param softwareVersion version of the software, kept in the manifest
     * @param progress hears how far it is
     * @throws ExchangeException when the project cannot be read, its log is not whole, or the file cannot be written; then there is none
     */
    public static Packed pack(Path projectFolder, Path target, String softwareVersion, ExchangeProgress progress)
            throws ExchangeException {
        Instant now = Instant.now().truncatedTo(ChronoUnit.SECONDS);
        return new ProjectPacking(projectFolder, target, softwareVersion, now, PackLimits.USUAL).run(progress);
    }

    /**
     * Reads a packed project through and checks everything in it, but leaves nothing behind.
     *
     * @param file the packed project
     * @param limits how much is read at most
     * @param progress hears how far it is
     * @return what it says about itself, found true
     * @throws ExchangeException when anything is wrong with it
     */
    public static PackManifest check(Path file, PackLimits limits, ExchangeProgress progress) throws ExchangeException {
        return PackReader.with(file, limits, pack -> {
            try (UnpackFolder folder = UnpackFolder.temporary()) {
                pack.read(folder.path(), ProjectPack::isSmall, progress);
                folder.requireProject(pack.manifest());
            }
            return pack.manifest();
        });
    }

    private static boolean isSmall(PackManifest.PackedFile file) {
        return file.name().equals(ProjectFile.FILE_NAME) || file.name().equals(TestLog.FILE_NAME);
    }

    /**
     * Unpacks a project into a new folder.
     *
     * @param file the packed project
     * @param target the folder to be made; there must be none yet, but the folder that it lies in
     * @param limits how much is taken in at most
     * @param progress hears how far it is
     * @return what the packed project says about itself, found true
     * @throws ExchangeException when anything is wrong; then nothing was left behind
     */
    public static PackManifest unpack(Path file, Path target, PackLimits limits, ExchangeProgress progress)
            throws ExchangeException {
        Path whole = target.toAbsolutePath().normalize();
        if (Files.exists(whole, LinkOption.NOFOLLOW_LINKS)) {
            throw ExchangeException.refused(TEXTS.text("pack.folderThere", target));
        }
        if (whole.getParent() == null || !Files.isDirectory(whole.getParent())) {
            throw ExchangeException.refused(TEXTS.text("pack.noParent", target));
        }
        return PackReader.with(file, limits, pack -> {
            try (UnpackFolder folder = UnpackFolder.beside(whole)) {
                Predicate<PackManifest.PackedFile> all = any -> true;
                pack.read(folder.path(), all, progress);
                folder.requireProject(pack.manifest());
                force(folder.path().resolve(ProjectFile.FILE_NAME));
                progress.stopIfCancelled();
                folder.moveTo(whole);
            }
            return pack.manifest();
        });
    }

    private static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }
}

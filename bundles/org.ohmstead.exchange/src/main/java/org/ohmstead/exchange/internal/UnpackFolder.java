// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.PackManifest;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.files.Leftovers;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Messages;

/** A folder in which a project is put together; when it is not moved to its place, closing it takes it away. */
public final class UnpackFolder implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(UnpackFolder.class);
    private static final System.Logger LOGGER = System.getLogger(UnpackFolder.class.getName());
    private final Path path;

    private UnpackFolder(Path path) {
        this.path = path;
    }

    /** Makes a folder beside where it shall go, so that it can be moved there in one step. */
    public static UnpackFolder beside(Path target) throws IOException {
        tidyFor(target.toAbsolutePath());
        try {
            return new UnpackFolder(Files.createDirectory(WholeFiles.partBeside(target)));
        } catch (AccessDeniedException denied) {
            // A user knows the folder, but not the name of what is not yet whole.
            AccessDeniedException plain = new AccessDeniedException(
                    target.toAbsolutePath().getParent().toString());
            plain.initCause(denied);
            throw plain;
        }
    }

    /** Takes away what a program left that was killed at this; a day later nobody is at it any more. */
    private static void tidyFor(Path target) {
        Pattern name = Leftovers.partsOf(Pattern.quote(target.getFileName().toString()));
        Instant yesterday = Instant.now().minus(Duration.ofDays(1));
        try (Stream<Path> siblings = Files.list(target.getParent())) {
            for (Path each : siblings.filter(
                            file -> name.matcher(file.getFileName().toString()).matches())
                    .toList()) {
                if (Files.isDirectory(each)
                        && Files.getLastModifiedTime(each).toInstant().isBefore(yesterday)) {
                    Folders.delete(each);
                }
            }
        } catch (IOException stays) {
            LOGGER.log(System.Logger.Level.DEBUG, "The folder of " + target + " could not be tidied.", stays);
        }
    }

    /** Makes a folder where temporary files go. */
    public static UnpackFolder temporary() throws IOException {
        return new UnpackFolder(Files.createTempDirectory("ohmstead-check"));
    }

    /** Returns where it is. */
    public Path path() {
        return path;
    }

    /** Checks that the project can be read and that its log is whole up to the head that was promised. */
    public void requireProject(PackManifest manifest) throws ExchangeException, IOException {
        try {
            ProjectFile.read(path);
        } catch (ProjectFileException failure) {
            throw ExchangeException.refused(TEXTS.text("unpack.unread", failure.getMessage()), failure);
        }
        Path log = path.resolve(TestLog.FILE_NAME);
        boolean promised = !manifest.headHash().equals(TestLog.FIRST_PREVIOUS_HASH);
        if (!Files.exists(log)) {
            if (promised) {
                throw ExchangeException.refused(TEXTS.text("unpack.noLog"));
            }
            return;
        }
        requireLog(log, manifest);
        // Reading may leave these beside a log; the pack held none.
        Files.deleteIfExists(path.resolve(TestLog.FILE_NAME + "-wal"));
        Files.deleteIfExists(path.resolve(TestLog.FILE_NAME + "-shm"));
    }

    private static void requireLog(Path file, PackManifest manifest) throws ExchangeException {
        try (TestLog log = TestLog.openReadOnly(file)) {
            VerifyReport report = log.verify(Optional.of(manifest.headHash()));
            if (!report.intact()) {
                throw ExchangeException.refused(
                        TEXTS.text("unpack.logBroken", report.faults().get(0).sentence()));
            }
            if (!log.headHash().equals(manifest.headHash())) {
                throw ExchangeException.refused(TEXTS.text("unpack.otherHead"));
            }
        } catch (TestLogException failure) {
            throw ExchangeException.refused(TEXTS.text("unpack.logUnread", failure.getMessage()), failure);
        }
    }

    /** Puts the folder in its place, in one step. */
    public void moveTo(Path target) throws IOException, ExchangeException {
        try {
            Files.move(path, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException onSomeShares) {
            Files.move(path, target);
        }
    }

    @Override
    public void close() throws IOException {
        Folders.delete(path);
    }
}

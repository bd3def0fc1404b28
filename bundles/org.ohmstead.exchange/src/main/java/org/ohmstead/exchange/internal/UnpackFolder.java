// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.PackManifest;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.units.text.Messages;

/** A folder in which a project is put together; when it is not moved to its place, closing it takes it away. */
public final class UnpackFolder implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(UnpackFolder.class);
    private final Path path;

    private UnpackFolder(Path path) {
        this.path = path;
    }

    /** Makes a folder beside where it shall go, so that it can be moved there in one step. */
    public static UnpackFolder beside(Path target) throws IOException {
        return new UnpackFolder(Files.createDirectory(WholeFile.partBeside(target)));
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

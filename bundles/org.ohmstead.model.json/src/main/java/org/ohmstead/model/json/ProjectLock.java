// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.ohmstead.model.json.internal.AtomicFile;
import org.ohmstead.units.files.Leftovers;

/**
 * Keeps a second writer out of a project's folder for as long as it is open. It is a lock of the operating system on the file {@code
 * .lock} in the folder, so it ends with the process at the latest, and the file left behind by a crash locks nothing. The file's text
 * says who holds it. Safe for use by several threads.
 */
public final class ProjectLock implements AutoCloseable {
    /** Name of the lock file inside the project's folder. */
    public static final String FILE_NAME = ".lock";

    private static final int LONGEST_OWNER_BYTES = 1000;

    private static final Pattern UNFINISHED =
            Leftovers.partsOf(Pattern.quote(ProjectFile.FILE_NAME) + "|" + Pattern.quote(RecoveryFile.FILE_NAME));

    // The lock lies far behind the text, because some systems do not let others read bytes that are locked.
    private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;

    // On POSIX systems, closing any channel of a file drops all of this process's locks on it. So a folder that this
    // process holds is
    // recognised here and its lock file is not opened again.
    private static final Map<Path, LockOwner> HELD = new HashMap<>();

    private final Path folder;
    private final FileChannel channel;
    private final FileLock lock;

    private ProjectLock(Path folder, FileChannel channel, FileLock lock) {
        this.folder = folder;
        this.channel = channel;
        this.lock = lock;
    }

    /** What came of a try to lock a folder. */
    public sealed interface Attempt {
        /**
         * The folder is locked.
         *
         * @param lock to be closed when the folder is no longer written to
         */
        record Taken(ProjectLock lock) implements Attempt {}

        /**
         * Somebody else holds the folder.
         *
         * @param owner who
         */
        record Held(LockOwner owner) implements Attempt {}
    }

    /**
     * Locks a project's folder.
     *
     * @param projectFolder an existing folder
     * @throws ProjectFileException when somebody else holds it, in this process or another; the message says who and what to do; or
     *     when the folder cannot be written to
     */
    public static ProjectLock acquire(Path projectFolder) throws ProjectFileException {
        Attempt attempt = attempt(projectFolder);
        if (attempt instanceof Attempt.Taken taken) {
            return taken.lock();
        }
        throw new ProjectFileException(
                FILE_NAME,
                Said.TEXTS.text(
                        "lock.held",
                        projectFolder.toAbsolutePath().normalize().getFileName(),
                        ((Attempt.Held) attempt).owner().inFull()),
                null);
    }

    /**
     * Locks a project's folder, or says who holds it.
     *
     * @param projectFolder an existing folder
     * @throws ProjectFileException when the folder cannot be written to
     */
    public static Attempt attempt(Path projectFolder) throws ProjectFileException {
        try {
            Path folder = projectFolder.toRealPath();
            synchronized (HELD) {
                LockOwner here = HELD.get(folder);
                return here == null ? open(folder) : new Attempt.Held(here);
            }
        } catch (IOException failure) {
            throw new ProjectFileException(
                    FILE_NAME, Said.TEXTS.text("lock.refused", projectFolder, AtomicFile.reason(failure)), failure);
        }
    }

    private static Attempt open(Path folder) throws IOException {
        FileChannel channel = FileChannel.open(
                folder.resolve(FILE_NAME),
                StandardOpenOption.CREATE,
                StandardOpenOption.READ,
                StandardOpenOption.WRITE);
        boolean taken = false;
        try {
            FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
            if (lock == null) {
                return new Attempt.Held(LockOwner.parse(readOwner(channel)));
            }
            LockOwner owner = LockOwner.current();
            channel.truncate(0);
            channel.write(ByteBuffer.wrap((owner.text() + "\n").getBytes(StandardCharsets.UTF_8)), 0);
            HELD.put(folder, owner);
            taken = true;
            // Nobody else may write these while it is held, so what is not whole belongs to a program that was killed.
            Leftovers.tidy(folder, UNFINISHED, Duration.ZERO);
            return new Attempt.Taken(new ProjectLock(folder, channel, lock));
        } finally {
            if (!taken) {
                channel.close();
            }
        }
    }

    private static String readOwner(FileChannel channel) throws IOException {
        ByteBuffer text = ByteBuffer.allocate(LONGEST_OWNER_BYTES);
        channel.read(text, 0);
        return new String(text.array(), 0, text.position(), StandardCharsets.UTF_8);
    }

    /** Returns the folder that is locked. */
    public Path folder() {
        return folder;
    }

    /**
     * Gives the folder free. The lock file stays, empty: to delete it could take a lock away that somebody else just got. Closing
     * again does nothing.
     *
     * @throws ProjectFileException when the system refuses; the lock then ends with the process
     */
    @Override
    public void close() throws ProjectFileException {
        synchronized (HELD) {
            if (!channel.isOpen()) {
                return;
            }
            try (channel) {
                channel.truncate(0);
                lock.release();
            } catch (IOException failure) {
                throw new ProjectFileException(
                        FILE_NAME, Said.TEXTS.text("lock.kept", folder, AtomicFile.reason(failure)), failure);
            } finally {
                HELD.remove(folder);
            }
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.files;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import org.ohmstead.units.text.Messages;

/**
 * Writes files so that a reader sees the old content or the whole new one, never a part, also after a crash or on a full disk. What is
 * new is written beside the target, forced to the disk and then put in its place.
 */
public final class WholeFiles {
    /** How the name ends of what is not yet whole. */
    static final String PART_ENDING = ".part";

    private static final int BUFFER_BYTES = 1 << 16;

    private WholeFiles() {}

    /**
     * What fills a file.
     *
     * @param <E> what else it throws
     */
    @FunctionalInterface
    public interface Content<E extends Exception> {
        /** Writes everything to the stream, which the caller closes. */
        void writeTo(OutputStream stream) throws IOException, E;
    }

    /**
     * Writes a file. A link stays a link: what it leads to is replaced. When it fails, what was there before is as it was and nothing
     * else is left behind. What is neither a file nor a folder (standard output, a device, a named pipe) is written to as it is.
     *
     * @param target where; not a folder, and its folder must exist
     * @param content fills it
     * @param <E> what else the content throws
     * @throws IOException when it cannot be written; no name of ours for what was not whole stands in it
     */
    public static <E extends Exception> void write(Path target, Content<E> content) throws IOException, E {
        if (Files.exists(target) && !Files.isRegularFile(target) && !Files.isDirectory(target)) {
            pour(target, content);
        } else {
            write(target, content, false);
        }
    }

    private static <E extends Exception> void pour(Path stream, Content<E> content) throws IOException, E {
        try (OutputStream buffered = new BufferedOutputStream(Files.newOutputStream(stream), BUFFER_BYTES)) {
            content.writeTo(buffered);
        }
    }

    /**
     * Writes bytes, and only where the file system can put them in place in one step.
     *
     * @throws java.nio.file.AtomicMoveNotSupportedException where it cannot
     */
    public static void writeAtOnce(Path target, byte[] content) throws IOException {
        WholeFiles.<RuntimeException>write(target, stream -> stream.write(content), true);
    }

    private static <E extends Exception> void write(Path target, Content<E> content, boolean atOnce)
            throws IOException, E {
        Path whole = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
        Leftovers.tidyFor(whole);
        Path part = partBeside(whole);
        boolean placed = false;
        try {
            fill(part, whole, content);
            Placing.likeBefore(part, whole);
            Placing.place(part, whole, atOnce);
            placed = true;
        } finally {
            if (!placed) {
                Leftovers.drop(part);
            }
        }
    }

    /** Writes bytes, as {@link #write(Path, Content)} does. */
    public static void write(Path target, byte[] content) throws IOException {
        WholeFiles.<RuntimeException>write(target, stream -> stream.write(content));
    }

    /**
     * Writes a text in UTF-8, as {@link #write(Path, Content)} does.
     *
     * @return the target
     */
    public static Path writeText(Path target, String text) throws IOException {
        write(target, text.getBytes(StandardCharsets.UTF_8));
        return target;
    }

    private static <E extends Exception> void fill(Path part, Path whole, Content<E> content) throws IOException, E {
        try (FileChannel channel = open(part, whole);
                OutputStream buffered = new BufferedOutputStream(Channels.newOutputStream(channel), BUFFER_BYTES)) {
            content.writeTo(buffered);
            buffered.flush();
            channel.force(true);
        } catch (FileSystemException failure) {
            throw namingNoPart(failure, part, whole);
        }
    }

    private static FileChannel open(Path part, Path whole) throws IOException {
        Path folder = whole.getParent();
        try {
            return FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        } catch (NoSuchFileException missing) {
            String reason = Messages.of(WholeFiles.class).text("write.noFolder");
            throw because(new NoSuchFileException(folder.toString(), null, reason), missing);
        } catch (AccessDeniedException denied) {
            throw because(new AccessDeniedException(folder.toString()), denied);
        } catch (FileSystemException failure) {
            throw Files.isDirectory(folder) ? failure : because(new NotDirectoryException(folder.toString()), failure);
        }
    }

    private static IOException because(IOException plain, IOException cause) {
        plain.initCause(cause);
        return plain;
    }

    /** A user knows the file, but not the name under which it was about to be written. */
    private static IOException namingNoPart(FileSystemException failure, Path part, Path whole) {
        return part.toString().equals(failure.getFile())
                ? because(new FileSystemException(whole.toString(), null, failure.getReason()), failure)
                : failure;
    }

    /** Returns a name beside a file or folder for what is not yet whole. */
    public static Path partBeside(Path whole) {
        return whole.resolveSibling("." + whole.getFileName() + "." + UUID.randomUUID() + PART_ENDING);
    }

    /**
     * Puts a file that is whole and on the disk in its place: in one step where the file system can, else by setting aside what is
     * there, so that at each moment one of the two is there.
     *
     * @param part the file; both in one folder
     * @param whole where it shall be; what is there is replaced
     * @throws IOException when it cannot; then what was there before is as it was, and the part is still there
     */
    public static void place(Path part, Path whole) throws IOException {
        Placing.place(part, whole, false);
    }

    /**
     * Has the names in a folder on the disk, so that not even a power cut takes back that a file was put there. Where the system does
     * not know how, nothing happens.
     */
    public static void forceFolder(Path folder) {
        Placing.forceFolder(folder);
    }
}

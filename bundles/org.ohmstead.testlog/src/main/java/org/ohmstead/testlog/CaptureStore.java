// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.regex.Pattern;
import org.ohmstead.testlog.internal.LogFailures;
import org.ohmstead.testlog.internal.LogRefusals;
import org.ohmstead.units.files.Leftovers;
import org.ohmstead.units.files.PlainFiles;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Said;

/**
 * The captures of a project: each file lies under the SHA-256 of its content, {@code captures/ab/abcd...wav}, is written once and
 * never changed.
 */
public final class CaptureStore {
    private static final int BUFFER_BYTES = 1 << 16;

    /** What a program leaves that is killed while it stores a capture. */
    private static final Pattern UNFINISHED = Leftovers.partsOf("[0-9a-f]{64}\\.[a-z0-9]{1,5}");

    private final Path captures;

    /**
     * Makes a store in a project's folder. Nothing is written until the first capture comes.
     *
     * @param projectFolder the project's folder
     */
    public CaptureStore(Path projectFolder) {
        this.captures = projectFolder.resolve("captures");
    }

    /**
     * A capture that lies in the store.
     *
     * @param file where
     * @param sha256 hash of its content, 64 hexadecimal digits
     */
    public record StoredCapture(Path file, String sha256) {}

    /**
     * Copies a file into the store, unless its content is already there, and returns when it is on the disk.
     *
     * @param source the file; it is left as it is
     * @throws TestLogException when the file cannot be read, or the store not be written
     */
    public StoredCapture store(Path source) throws TestLogException {
        String hash = sha256(source);
        Path target = captures.resolve(hash.substring(0, 2)).resolve(hash + ending(source));
        try {
            // One of another size was cut off by a power cut, or damaged.
            if (!Files.exists(target) || Files.size(target) != Files.size(source)) {
                copy(source, target);
            }
        } catch (IOException e) {
            throw LogRefusals.because(
                    e, "capture.copy", source.getFileName(), captures, Said.of(() -> LogFailures.reason(e)));
        }
        return new StoredCapture(target, hash);
    }

    private static void copy(Path source, Path target) throws IOException {
        boolean first = !Files.isDirectory(target.getParent());
        Files.createDirectories(target.getParent());
        Leftovers.tidy(target.getParent(), UNFINISHED, Leftovers.ABANDONED_AFTER);
        WholeFiles.<IOException>write(target, stream -> Files.copy(source, stream));
        if (first) {
            WholeFiles.forceFolder(target.getParent().getParent());
        }
    }

    /**
     * Returns the SHA-256 of a file's content as 64 hexadecimal digits.
     *
     * @param file the file
     * @throws TestLogException when it cannot be read
     */
    public static String sha256(Path file) throws TestLogException {
        try (InputStream in = PlainFiles.open(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
                digest.update(ByteBuffer.wrap(buffer, 0, count));
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchFileException e) {
            throw LogRefusals.because(e, "capture.missing", file);
        } catch (IOException e) {
            throw LogRefusals.because(e, "capture.unread", file, Said.of(() -> LogFailures.reason(e)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static String ending(Path source) {
        String name = source.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.matches(".*\\.[a-z0-9]{1,5}") ? name.substring(name.lastIndexOf('.')) : ".bin";
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.ohmstead.report.ReportException;
import org.ohmstead.units.files.WholeFiles;

/** Writes a file so that a reader sees the old content or the whole new one, never a part. */
public final class AtomicFile {
    /** What fills the file. */
    @FunctionalInterface
    public interface Content {
        /** Writes everything to the stream, which the caller closes. */
        void writeTo(OutputStream stream) throws IOException;
    }

    private AtomicFile() {}

    /**
     * Writes beside the target, forces it to the disk and moves it into place. A link stays a link: what it leads to is replaced. What
     * is neither a file nor a folder (standard output, a device, a named pipe) is written to as it is.
     *
     * @param target where the file shall be; its folder must exist
     * @param what what is written, to begin the message with: "The results sheet"
     * @param content fills it
     */
    public static void write(Path target, String what, Content content) throws ReportException {
        try {
            if (Files.isDirectory(target)) {
                throw new IOException(Failures.say("failure.isFolder"));
            }
            WholeFiles.<RuntimeException>write(target, content::writeTo);
        } catch (IOException e) {
            throw new ReportException(Failures.say("failure.write", what, target, reason(e)), e);
        }
    }

    private static String reason(IOException failure) {
        if (failure instanceof AccessDeniedException) {
            return Failures.say("failure.denied");
        }
        if (failure instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return String.valueOf(failure.getMessage());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.files.PlainFiles;
import org.ohmstead.units.text.Messages;

/** What a project's file holds, compared to what it held before. */
sealed interface DiskLook {
    Messages TEXTS = Messages.of(DiskLook.class);

    /** The same bytes, or still no file. */
    record Same(FileStamp stamp) implements DiskLook {}

    /** Other bytes, which are a project. */
    record Changed(FileStamp stamp, LoadedProject loaded) implements DiskLook {}

    /** There is no file any more. */
    record Missing() implements DiskLook {}

    /** Other bytes, which are no project, or bytes that cannot be read. */
    record Unreadable(FileStamp stamp, String sentence) implements DiskLook {}

    /** Returns what became of the file, unless it holds another project. */
    default ExternalChange withoutProject(Path file) {
        if (this instanceof Unreadable unreadable) {
            return new ExternalChange.Unreadable(unreadable.sentence());
        }
        return this instanceof Missing
                ? new ExternalChange.Vanished(TEXTS.text("disk.vanished", file))
                : new ExternalChange.Unchanged();
    }

    /** Looks at a file; on any thread. */
    static DiskLook at(Path file, FileStamp known) {
        try {
            FileStamp stamp = FileStamp.of(file, "");
            if (known.surelySameAs(stamp)) {
                return new Same(known);
            }
            PlainFiles.require(file);
            String hash = hash(Files.readAllBytes(file));
            return hash.equals(known.sha256()) ? new Same(stamp.withSha256(hash)) : read(file, stamp, hash);
        } catch (NoSuchFileException gone) {
            return known.isMissing() ? new Same(known) : new Missing();
        } catch (IOException failure) {
            return new Unreadable(FileStamp.missing(), TEXTS.text("disk.unreachable", file, failure.getMessage()));
        }
    }

    private static DiskLook read(Path file, FileStamp stamp, String hash) {
        try {
            LoadedProject loaded = ProjectFile.read(file);
            return new Changed(stamp.withSha256(loaded.fileSha256()), loaded);
        } catch (ProjectFileException unreadable) {
            return new Unreadable(stamp.withSha256(hash), unreadable.getMessage());
        }
    }

    private static String hash(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must provide SHA-256", missing);
        }
    }
}

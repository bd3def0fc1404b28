// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/** Finds logged captures again and makes sure that they are the ones that were logged; on any thread. */
public final class LoggedCaptures {
    private static final Messages TEXTS = Messages.of(LoggedCaptures.class);
    private static final int SHOWN_DIGITS = 12;

    private LoggedCaptures() {}

    /**
     * Returns the file of a capture whose content still has its hash.
     *
     * @param capturesFolder the project's folder of captures
     * @param sha256 the hash, 64 hexadecimal digits
     * @param title name under which the capture was handed in
     * @throws SessionException when it is not there, cannot be read, or is another; the message says what to do
     */
    public static Path verified(Path capturesFolder, String sha256, String title) throws SessionException {
        Path folder = capturesFolder.resolve(sha256.substring(0, 2));
        Path file = find(folder, sha256, title);
        String found;
        try {
            found = CaptureStore.sha256(file);
        } catch (TestLogException e) {
            throw new SessionException(e.getMessage(), e);
        }
        if (!found.equals(sha256)) {
            throw new SessionException(
                    TEXTS.text("capture.changed", title, shortened(found), shortened(sha256), file.getFileName()));
        }
        return file;
    }

    private static Path find(Path folder, String sha256, String title) throws SessionException {
        if (!Files.isDirectory(folder)) {
            throw missing(folder, sha256, title);
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().startsWith(sha256 + "."))
                    .findFirst()
                    .orElseThrow(() -> missing(folder, sha256, title));
        } catch (IOException e) {
            throw new SessionException(TEXTS.text("capture.unlisted", folder, title), e);
        }
    }

    private static SessionException missing(Path folder, String sha256, String title) {
        return new SessionException(TEXTS.text("capture.missing", title, folder, shortened(sha256)));
    }

    private static String shortened(String sha256) {
        return sha256.substring(0, SHOWN_DIGITS) + "\u2026";
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.files;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.regex.Pattern;

/** What a program that was killed, or a power cut, left of files that were not yet whole. */
public final class Leftovers {
    private static final System.Logger LOGGER = System.getLogger(Leftovers.class.getName());

    /** Nobody writes at a file for so long without adding to it. */
    public static final Duration ABANDONED_AFTER = Duration.ofHours(1);

    private static final String UNIQUE = "\\.[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";

    private Leftovers() {}

    /** Takes away what was left of a file that is about to be written, unless another program may be at it. */
    static void tidyFor(Path whole) {
        Pattern name = partsOf(Pattern.quote(whole.getFileName().toString()));
        // Clocks of network drives may differ from ours; the worst of it is that something stays for longer.
        tidy(whole.getParent(), name, ABANDONED_AFTER);
    }

    /**
     * Returns what the names are like of parts of some files.
     *
     * @param names what the names of the files are like, as a regular expression
     */
    public static Pattern partsOf(String names) {
        return Pattern.compile("\\.(" + names + ")" + UNIQUE + Pattern.quote(WholeFiles.PART_ENDING));
    }

    /**
     * Takes away files of a folder that nobody has added to for some time. What cannot be taken away stays, and does no harm.
     *
     * @param folder where; need not exist
     * @param name what their names are like
     * @param idle for how long nobody added to them; zero when nobody else can be writing there
     * @return how many went
     */
    public static int tidy(Path folder, Pattern name, Duration idle) {
        if (!Files.isDirectory(folder)) {
            return 0;
        }
        int gone = 0;
        long newestMillis = System.currentTimeMillis() - idle.toMillis();
        try (DirectoryStream<Path> found = Files.newDirectoryStream(
                folder, file -> name.matcher(file.getFileName().toString()).matches())) {
            for (Path file : found) {
                boolean abandoned =
                        idle.isZero() || Files.getLastModifiedTime(file).toMillis() < newestMillis;
                if (abandoned && Files.isRegularFile(file) && drop(file)) {
                    gone++;
                }
            }
        } catch (IOException | DirectoryIteratorException unreadable) {
            LOGGER.log(System.Logger.Level.DEBUG, "The folder " + folder + " could not be tidied.", unreadable);
        }
        return gone;
    }

    /** Deletes a file that nobody needs; returns whether it is gone. */
    static boolean drop(Path file) {
        try {
            Files.deleteIfExists(file);
            return true;
        } catch (IOException stays) {
            // What led here is what the user must hear.
            LOGGER.log(System.Logger.Level.WARNING, file + " could not be deleted.", stays);
            return false;
        }
    }
}

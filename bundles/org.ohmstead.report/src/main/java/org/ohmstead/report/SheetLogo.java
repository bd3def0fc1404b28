// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.awt.Graphics2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Locale;
import org.ohmstead.report.internal.Failures;
import org.ohmstead.report.internal.LogoPicture;
import org.ohmstead.report.internal.PixelLogo;
import org.ohmstead.report.internal.VectorLogo;

/**
 * A laboratory's logo, fit to be shown: a PNG or JPEG picture, or an SVG drawing of which only shapes and their colours are left, so
 * that it can neither run anything nor fetch anything.
 */
public final class SheetLogo {
    /** How large a file may be at most, in bytes. */
    public static final int MOST_BYTES = 512 * 1024;

    /** How many pixels a picture may be wide and high at most. */
    public static final int MOST_PIXELS = 4000;

    /** How many times wider than high, or higher than wide, a logo may be at most. */
    public static final double MOST_SLENDER = 12;

    private final LogoPicture picture;

    private SheetLogo(LogoPicture picture) {
        this.picture = picture;
    }

    /**
     * Reads a logo.
     *
     * @param projectFolder the project's folder
     * @param logoFile the file within it, such as "sheets/logo.svg"
     * @throws ReportException when it cannot be used; the message says why and what to do
     */
    public static SheetLogo read(Path projectFolder, String logoFile) throws ReportException {
        String name = Failures.say("logo.name", logoFile);
        byte[] content = content(projectFolder, logoFile, name);
        String ending = logoFile.toLowerCase(Locale.ROOT);
        LogoPicture picture;
        if (ending.endsWith(".svg")) {
            picture = VectorLogo.read(content, name);
        } else if (ending.endsWith(".png") || ending.endsWith(".jpg") || ending.endsWith(".jpeg")) {
            picture = PixelLogo.read(content, name);
        } else {
            throw new ReportException(Failures.say("logo.kind", name));
        }
        double slender = Math.max(picture.width() / picture.height(), picture.height() / picture.width());
        if (!(slender <= MOST_SLENDER)) {
            throw new ReportException(Failures.say("logo.slender", name, Integer.toString((int) MOST_SLENDER)));
        }
        return new SheetLogo(picture);
    }

    private static byte[] content(Path projectFolder, String logoFile, String name) throws ReportException {
        if (logoFile.startsWith("\\\\") || logoFile.startsWith("//")) {
            // Windows would log in to the computer that such a name begins with before anything could be checked.
            throw new ReportException(Failures.say("logo.outside", name));
        }
        try {
            Path folder = projectFolder.toRealPath();
            Path file = folder.resolve(logoFile).toRealPath();
            if (!file.startsWith(folder)) {
                throw new ReportException(Failures.say("logo.outside", name));
            }
            if (!Files.isRegularFile(file)) {
                // A pipe would keep whoever reads it waiting for ever.
                throw new ReportException(Failures.say("logo.unreadable", name, projectFolder));
            }
            long size = Files.size(file);
            if (size > MOST_BYTES) {
                throw new ReportException(Failures.say(
                        "logo.large", name, Long.toString(size / 1024), Integer.toString(MOST_BYTES / 1024)));
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new ReportException(Failures.say("logo.unreadable", name, projectFolder), e);
        }
    }

    /** Returns the width over the height. */
    public double aspectRatio() {
        return picture.width() / picture.height();
    }

    /** Returns the whole logo as an address that needs no file: {@code data:image/png;base64,...}. */
    public String dataAddress() {
        return "data:" + picture.mediaType() + ";base64," + Base64.getEncoder().encodeToString(picture.content());
    }

    /**
     * Draws it at the origin.
     *
     * @param graphics where to
     * @param width of the box that it fills, above 0
     * @param height of the box, above 0
     */
    public void draw(Graphics2D graphics, double width, double height) {
        picture.draw(graphics, width, height);
    }
}

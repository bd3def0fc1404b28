// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.ohmstead.report.ReportException;
import org.ohmstead.report.SheetLogo;

/** A logo of pixels: PNG or JPEG, told by its content and not by its name. */
public final class PixelLogo implements LogoPicture {
    private final String mediaType;
    private final byte[] content;
    private final BufferedImage image;

    private PixelLogo(String mediaType, byte[] content, BufferedImage image) {
        this.mediaType = mediaType;
        this.content = content;
        this.image = image;
    }

    /**
     * Reads a picture.
     *
     * @param content of the file
     * @param name what to call it in messages, the beginning of a sentence
     * @throws ReportException when it is no such picture, or too large
     */
    public static PixelLogo read(byte[] content, String name) throws ReportException {
        try (ImageInputStream stream = new MemoryCacheImageInputStream(new ByteArrayInputStream(content))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(stream);
            if (!readers.hasNext()) {
                throw new ReportException(Failures.say("logo.notPicture", name));
            }
            ImageReader reader = readers.next();
            try {
                return read(reader, stream, content, name);
            } finally {
                reader.dispose();
            }
        } catch (IOException | IndexOutOfBoundsException e) {
            throw new ReportException(Failures.say("logo.damaged", name), e);
        }
    }

    private static PixelLogo read(ImageReader reader, ImageInputStream stream, byte[] content, String name)
            throws IOException, ReportException {
        String format = reader.getFormatName().toLowerCase(Locale.ROOT);
        if (!format.equals("png") && !format.equals("jpeg")) {
            throw new ReportException(Failures.say("logo.otherPicture", name, format));
        }
        reader.setInput(stream, true, true);
        // The size is asked for before the pixels are, so that a small file of a huge picture takes no memory.
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if (width > SheetLogo.MOST_PIXELS || height > SheetLogo.MOST_PIXELS) {
            throw new ReportException(
                    Failures.say("logo.pixels", name, width + "", height + "", SheetLogo.MOST_PIXELS + ""));
        }
        return new PixelLogo("image/" + format, content, reader.read(0));
    }

    @Override
    public String mediaType() {
        return mediaType;
    }

    @Override
    public byte[] content() {
        return content.clone();
    }

    @Override
    public double width() {
        return image.getWidth();
    }

    @Override
    public double height() {
        return image.getHeight();
    }

    @Override
    public void draw(Graphics2D graphics, double boxWidth, double boxHeight) {
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        graphics.drawImage(image, AffineTransform.getScaleInstance(boxWidth / width(), boxHeight / height()), null);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.LoaderContext;
import com.github.weisj.jsvg.parser.SVGLoader;
import com.github.weisj.jsvg.renderer.NullPlatformSupport;
import com.github.weisj.jsvg.view.ViewBox;
import java.awt.Graphics2D;
import java.io.ByteArrayInputStream;
import org.ohmstead.report.ReportException;

/** A logo of shapes, drawn as shapes on pages too. */
public final class VectorLogo implements LogoPicture {
    private final byte[] content;
    private final SVGDocument drawing;

    private VectorLogo(byte[] content, SVGDocument drawing) {
        this.content = content;
        this.drawing = drawing;
    }

    /**
     * Reads a drawing and leaves out all that is not a shape.
     *
     * @param content of the file
     * @param name what to call it in messages, the beginning of a sentence
     * @throws ReportException when it cannot be used
     */
    public static VectorLogo read(byte[] content, String name) throws ReportException {
        byte[] clean = SafeDrawing.of(content, name);
        SVGDocument drawing =
                new SVGLoader().load(new ByteArrayInputStream(clean), null, LoaderContext.createDefault());
        if (drawing == null || !(drawing.size().width > 0) || !(drawing.size().height > 0)) {
            throw new ReportException(Failures.say("logo.noSize", name));
        }
        return new VectorLogo(clean, drawing);
    }

    @Override
    public String mediaType() {
        return "image/svg+xml";
    }

    @Override
    public byte[] content() {
        return content.clone();
    }

    @Override
    public double width() {
        return drawing.size().width;
    }

    @Override
    public double height() {
        return drawing.size().height;
    }

    @Override
    public void draw(Graphics2D graphics, double boxWidth, double boxHeight) {
        drawing.renderWithPlatform(
                NullPlatformSupport.INSTANCE, graphics, new ViewBox(0, 0, (float) boxWidth, (float) boxHeight));
    }
}

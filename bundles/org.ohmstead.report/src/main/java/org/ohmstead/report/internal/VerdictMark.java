// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;

/** The symbols beside the verdicts, told apart by shape alone; the same outlines as in the template, on a square of 12. */
enum VerdictMark {
    MEETS(new Color(0x0b5566)) {
        @Override
        void outline(Graphics2D graphics) {
            graphics.fill(new Ellipse2D.Double(0.5, 0.5, 11, 11));
            graphics.setColor(Color.WHITE);
            graphics.setStroke(new BasicStroke(1.6f));
            graphics.draw(path(3.2, 6.2, 5.2, 8.2, 8.9, 4));
        }
    },
    SHORT(new Color(0xa8320a)) {
        @Override
        void outline(Graphics2D graphics) {
            Path2D triangle = path(6, 11.5, 0.5, 1, 11.5, 1);
            triangle.closePath();
            graphics.fill(triangle);
            graphics.setColor(Color.WHITE);
            graphics.setStroke(new BasicStroke(1.6f));
            graphics.draw(path(4, 4, 8, 4));
        }
    },
    UNDECIDED(new Color(0x4a525a)) {
        @Override
        void outline(Graphics2D graphics) {
            graphics.setStroke(new BasicStroke(1.2f));
            graphics.draw(new Ellipse2D.Double(1.1, 1.1, 9.8, 9.8));
            graphics.fill(new Arc2D.Double(1, 1, 10, 10, -90, 180, Arc2D.PIE));
        }
    },
    UNTESTED(new Color(0x4a525a)) {
        @Override
        void outline(Graphics2D graphics) {
            float[] dashes = {2, 1.6f};
            graphics.setStroke(new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, dashes, 0));
            graphics.draw(new Ellipse2D.Double(1.1, 1.1, 9.8, 9.8));
        }
    };

    private static final double SQUARE = 12;
    private final Color colour;

    VerdictMark(Color colour) {
        this.colour = colour;
    }

    abstract void outline(Graphics2D graphics);

    /** Draws the mark into a square with a side of {@code side} at the origin. */
    void draw(Graphics2D graphics, double side) {
        graphics.scale(side / SQUARE, side / SQUARE);
        graphics.setColor(colour);
        outline(graphics);
    }

    /** Returns the mark that the template calls by a name. */
    static VerdictMark named(String name) {
        for (VerdictMark mark : values()) {
            if (mark.name().equalsIgnoreCase(name)) {
                return mark;
            }
        }
        throw new IllegalArgumentException("name is '" + name + "'; it must be a verdict's mark");
    }

    private static Path2D path(double... coordinates) {
        Path2D path = new Path2D.Double();
        path.moveTo(coordinates[0], coordinates[1]);
        for (int index = 2; index < coordinates.length; index += 2) {
            path.lineTo(coordinates[index], coordinates[index + 1]);
        }
        return path;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.OptionalInt;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.ChartLook;

/** Colours, strokes and sizes that all parts of a chart share; lengths in points. */
final class Look {
    static final BasicStroke AXIS_STROKE = stroke(0.8f);
    static final BasicStroke GRID_STROKE = stroke(0.6f);
    static final BasicStroke LINE_STROKE = stroke(1.5f);
    static final BasicStroke DASHED_STROKE = dashed(1.4f, 5, 3);
    static final BasicStroke DENSE_STROKE = stroke(1);
    static final BasicStroke CASING_STROKE = stroke(2.6f);
    static final BasicStroke LEADER_STROKE = stroke(0.5f);
    static final BasicStroke FINE_STROKE = stroke(0.9f);
    static final BasicStroke STEM_STROKE = new BasicStroke(1.1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);
    static final BasicStroke MARK_STROKE = dashed(0.9f, 3.5f, 2.5f);
    static final BasicStroke OUTLINE_STROKE = new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER);

    static final double MARKER_SIZE = 5.6;
    static final double MARK_SIZE = 8.6;
    static final double CAP_WIDTH = 5;
    static final double TICK_LENGTH = 4;
    static final double MINOR_TICK_LENGTH = 2;

    private static final int BAND_ALPHA = 46;
    private static final int FILL_ALPHA = 40;
    private static final int DARK_EXTRA_ALPHA = 14;
    private static final int LABEL_GROUND_ALPHA = 205;

    final Font title;
    final Font label;
    final Font tick;
    final Font note;
    final Font mark;

    final Color ground;
    final Color ink;
    final Color mutedInk;
    final Color axis;
    final Color zeroLine;
    final Color grid;
    final Color minorGrid;
    final Color labelGround;

    private final ChartLook colours;

    Look(ChartFonts fonts, ChartLook colours) {
        this.colours = colours;
        ground = new Color(colours.background());
        ink = new Color(colours.ink());
        mutedInk = new Color(colours.mutedInk());
        axis = new Color(colours.axisLine());
        zeroLine = new Color(colours.zeroLine());
        grid = new Color(colours.grid());
        minorGrid = new Color(colours.minorGrid());
        labelGround = new Color(colours.background() | LABEL_GROUND_ALPHA << 24, true);
        float size = fonts.regular().getSize2D();
        title = fonts.bold().deriveFont(size * 1.15f);
        label = fonts.regular();
        tick = fonts.regular().deriveFont(size * 0.94f);
        note = fonts.regular().deriveFont(size * 0.88f);
        mark = fonts.regular().deriveFont(size * 0.92f);
    }

    Color tone(int tone) {
        return new Color(colours.tone(tone));
    }

    Color toneOrInk(OptionalInt tone) {
        return tone.isPresent() ? tone(tone.getAsInt()) : ink;
    }

    Color bandFill(int tone) {
        return translucent(tone, BAND_ALPHA);
    }

    Color areaFill(int tone) {
        return translucent(tone, FILL_ALPHA);
    }

    private Color translucent(int tone, int alpha) {
        int opacity = colours.isDark() ? alpha + DARK_EXTRA_ALPHA : alpha;
        return new Color(colours.tone(tone) | opacity << 24, true);
    }

    private static BasicStroke stroke(float width) {
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    }

    private static BasicStroke dashed(float width, float dash, float gap) {
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {dash, gap}, 0);
    }
}

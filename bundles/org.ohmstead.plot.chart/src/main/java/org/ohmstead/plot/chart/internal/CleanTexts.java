// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.util.List;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Tick;

/** Makes the texts of a plot fit for XML and for fonts: they may come from files that nobody checked. */
public final class CleanTexts {
    private static final int FIRST_PRINTABLE = 0x20;
    private static final int REPLACEMENT = 0xfffd;

    private CleanTexts() {}

    /** Returns the plot with U+FFFD for every character that XML 1.0 (production 2, Char) excludes or that is a control. */
    public static Plot of(Plot plot) {
        return new Plot(
                clean(plot.title()),
                clean(plot.x()),
                clean(plot.y()),
                plot.series().stream().map(CleanTexts::clean).toList(),
                plot.bands().stream().map(CleanTexts::clean).toList(),
                plot.marks().stream().map(CleanTexts::clean).toList(),
                plot.note().map(CleanTexts::clean));
    }

    static String clean(String text) {
        if (text.codePoints().allMatch(CleanTexts::isAllowed)) {
            return text;
        }
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints().map(code -> isAllowed(code) ? code : REPLACEMENT).forEach(clean::appendCodePoint);
        return clean.toString();
    }

    private static boolean isAllowed(int code) {
        if (code < FIRST_PRINTABLE) {
            return code == '\t' || code == '\n' || code == '\r';
        }
        boolean surrogate = code >= Character.MIN_SURROGATE && code <= Character.MAX_SURROGATE;
        boolean secondControls = code >= 0x7f && code <= 0x9f;
        return !surrogate && !secondControls && code != 0xfffe && code != 0xffff;
    }

    private static Axis clean(Axis axis) {
        List<Tick> ticks = axis.ticks().stream()
                .map(tick -> new Tick(tick.value(), clean(tick.label())))
                .toList();
        return new Axis(clean(axis.label()), clean(axis.unit()), axis.scale(), axis.lower(), axis.upper(), ticks);
    }

    private static Series clean(Series series) {
        return new Series(clean(series.name()), series.points(), series.style(), series.tone());
    }

    private static Band clean(Band band) {
        return new Band(clean(band.name()), band.points(), band.tone());
    }

    private static Mark clean(Mark mark) {
        if (mark instanceof Mark.VerticalLine line) {
            return new Mark.VerticalLine(line.x(), clean(line.text()), line.tone());
        }
        if (mark instanceof Mark.HorizontalLine line) {
            return new Mark.HorizontalLine(line.y(), clean(line.text()), line.tone());
        }
        Mark.Point point = (Mark.Point) mark;
        return new Mark.Point(point.x(), point.y(), clean(point.text()), point.shape(), point.tone());
    }
}

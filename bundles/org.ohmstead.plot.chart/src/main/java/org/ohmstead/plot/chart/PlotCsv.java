// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.util.OptionalDouble;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;

/**
 * Writes the numbers behind a plot as a table: one row for each point, with the columns series, x, y, lower and upper.
 * The last two are the ends of the uncertainty bar, or the edges of a band (which has no y). The heading of x and y
 * carries name and unit. The form is that of RFC 4180; a name that a spreadsheet would take for a formula gets an
 * apostrophe before it.
 */
public final class PlotCsv {
    private static final String LINE_END = "\r\n";
    private static final String FORMULA_STARTS = "=+-@\t\r\n";

    private PlotCsv() {}

    /** Returns the table, separated by commas. */
    public static String write(Plot plot) {
        return write(plot, ',');
    }

    /** Returns the table separated by tabs, as spreadsheets want it from the clipboard. */
    public static String writeTabbed(Plot plot) {
        return write(plot, '\t');
    }

    private static String write(Plot plot, char separator) {
        StringBuilder table = new StringBuilder();
        row(table, separator, "series", heading(plot.x()), heading(plot.y()), "lower", "upper");
        for (Series series : plot.series()) {
            for (PlotPoint point : series.points()) {
                OptionalDouble half = point.barHalfLength();
                row(
                        table,
                        separator,
                        safe(series.name()),
                        Double.toString(point.x()),
                        Double.toString(point.y()),
                        half.isPresent() ? Double.toString(point.y() - half.getAsDouble()) : "",
                        half.isPresent() ? Double.toString(point.y() + half.getAsDouble()) : "");
            }
        }
        for (Band band : plot.bands()) {
            for (BandPoint point : band.points()) {
                row(
                        table,
                        separator,
                        safe(band.name()),
                        Double.toString(point.x()),
                        "",
                        Double.toString(point.lower()),
                        Double.toString(point.upper()));
            }
        }
        return table.toString();
    }

    private static String heading(Axis axis) {
        return safe(axis.caption());
    }

    private static String safe(String name) {
        return !name.isEmpty() && FORMULA_STARTS.indexOf(name.charAt(0)) >= 0 ? "'" + name : name;
    }

    private static void row(StringBuilder table, char separator, String... cells) {
        for (int i = 0; i < cells.length; i++) {
            if (i > 0) {
                table.append(separator);
            }
            table.append(quoted(cells[i], separator));
        }
        table.append(LINE_END);
    }

    private static String quoted(String cell, char separator) {
        boolean plain =
                cell.chars().noneMatch(each -> each == separator || each == '"' || each == '\n' || each == '\r');
        return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

class PlotCsvTest {
    private static final double[] VOLTS = {12, 14.4};
    private static final double[] WATTS = {54, 79.5};

    private static Plot plot(String name) {
        return Plot.of("", Axis.linear("Supply", "V"), Axis.linear("Power", "W"))
                .withSeries(Series.withBars(name, VOLTS, WATTS, new double[] {1, 1.5}, Style.MARKERS, 0))
                .withSeries(Series.of("fit", VOLTS, WATTS, Style.LINE, 0))
                .withBand(Band.of("95 %", VOLTS, new double[] {53, 78}, new double[] {55, 81}, 0));
    }

    @Test
    void eachPointIsARow() {
        assertEquals(
                String.join(
                        "\r\n",
                        "series,Supply (V),Power (W),lower,upper",
                        "4 ohm,12.0,54.0,53.0,55.0",
                        "4 ohm,14.4,79.5,78.0,81.0",
                        "fit,12.0,54.0,,",
                        "fit,14.4,79.5,,",
                        "95 %,12.0,,53.0,55.0",
                        "95 %,14.4,,78.0,81.0",
                        ""),
                PlotCsv.write(plot("4 ohm")));
    }

    @Test
    void namesAreQuotedAsRfc4180Says() {
        // RFC 4180, 2, rules 6 and 7: commas, quotes and line breaks within double quotes, quotes doubled.
        String second = PlotCsv.write(plot("a, \"b\"")).split("\r\n")[1];
        assertEquals("\"a, \"\"b\"\"\",12.0,54.0,53.0,55.0", second);
    }

    @Test
    void namesAreNeverFormulas() {
        assertEquals("'=1+1,12.0,54.0,53.0,55.0", PlotCsv.write(plot("=1+1")).split("\r\n")[1]);
        assertEquals(
                "'-x\t12.0\t54.0\t53.0\t55.0", PlotCsv.writeTabbed(plot("-x")).split("\r\n")[1]);
    }
}

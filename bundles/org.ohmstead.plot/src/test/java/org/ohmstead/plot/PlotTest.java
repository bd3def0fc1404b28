// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlotTest {
    private static final Axis VOLTS = Axis.linear("Supply", "V");
    private static final Axis WATTS = Axis.log("Power", "W");
    private static final double[] ONE_TWO = {1, 2};

    private static void rejects(String part, Executable executable) {
        String message =
                assertThrows(IllegalArgumentException.class, executable).getMessage();
        assertTrue(message.contains(part), message);
    }

    @Test
    void captionHasTheUnitInParentheses() {
        assertEquals("Power (W)", WATTS.caption());
        assertEquals("Ratio", Axis.linear("Ratio", "").caption());
    }

    @Test
    void axisRejectsEndsThatAreNoRange() {
        rejects("lower", () -> VOLTS.withRange(2, 2));
        rejects("lower", () -> VOLTS.withRange(3, 2));
        rejects("upper", () -> VOLTS.withUpper(Double.NaN));
        rejects("above 0", () -> WATTS.withLower(0));
        rejects("above 0", () -> WATTS.withTicks(List.of(new Tick(-1, "x"))));
        rejects("label", () -> Axis.linear(" ", "V"));
    }

    @Test
    void axisKeepsOneEndWhenTheOtherIsFixed() {
        Axis axis = VOLTS.withLower(1).withUpper(4);
        assertEquals(OptionalDouble.of(1), axis.lower());
        assertEquals(OptionalDouble.of(4), axis.upper());
        assertFalse(WATTS.accepts(0));
        assertTrue(VOLTS.accepts(-5));
        assertFalse(VOLTS.accepts(Double.NaN));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void nothingInAPlotMayBeEndless(double value) {
        rejects("x", () -> new PlotPoint(value, 1));
        rejects("y", () -> new PlotPoint(1, value));
        rejects("barHalfLength", () -> new PlotPoint(1, 1, value));
        rejects("upper", () -> new BandPoint(1, 1, value));
        rejects("x", () -> Mark.vertical(value, ""));
        rejects("y", () -> Mark.horizontal(value, ""));
        rejects("y", () -> Mark.point(1, value, "", MarkerShape.CROSS));
        rejects("value", () -> new Tick(value, ""));
    }

    @Test
    void seriesCopiesWhatItIsGiven() {
        double[] x = {1, 2};
        double[] y = {3, 4};
        Series series = Series.withBars("s", x, y, new double[] {0.5, 0}, Style.MARKERS, 3);
        x[0] = 9;
        y[1] = 9;
        assertEquals(List.of(new PlotPoint(1, 3, 0.5), new PlotPoint(2, 4, 0)), series.points());
        List<PlotPoint> points = new ArrayList<>(series.points());
        Series copy = new Series("t", points, Style.LINE, 0);
        points.clear();
        assertEquals(2, copy.points().size());
        assertThrows(UnsupportedOperationException.class, () -> copy.points().clear());
    }

    @Test
    void seriesRejectsWhatDoesNotFitTogether() {
        rejects("y", () -> Series.of("s", ONE_TWO, new double[3], Style.LINE, 0));
        rejects("barHalfLengths", () -> Series.withBars("s", ONE_TWO, ONE_TWO, new double[1], Style.LINE, 0));
        rejects("barHalfLength", () -> new PlotPoint(1, 1, -0.1));
        rejects("tone", () -> Series.of("s", ONE_TWO, ONE_TWO, Style.LINE, 8));
        rejects("stacked", () -> Series.of("s", ONE_TWO, new double[] {1, -1}, Style.STACKED_BARS, 0));
    }

    @Test
    void bandRejectsCrossedEdgesAndFallingX() {
        rejects("lower", () -> Band.of("b", ONE_TWO, new double[] {1, 3}, new double[] {2, 2}, 0));
        rejects("x", () -> Band.of("b", new double[] {2, 1}, ONE_TWO, ONE_TWO, 0));
        rejects("tone", () -> Band.of("b", ONE_TWO, ONE_TWO, ONE_TWO, -1));
        rejects("upper", () -> Band.of("b", ONE_TWO, ONE_TWO, new double[1], 0));
    }

    @Test
    void marksAreNeutralUnlessGivenATone() {
        assertEquals(OptionalInt.empty(), Mark.vertical(1, "a").tone());
        assertEquals(
                OptionalInt.of(2), Mark.point(1, 1, "a", MarkerShape.CIRCLE, 2).tone());
        rejects("tone", () -> Mark.point(1, 1, "a", MarkerShape.CIRCLE, 8));
    }

    @Test
    void plotRejectsWhatHasNoPlaceOnALogAxis() {
        Plot plot = Plot.of("t", VOLTS, WATTS);
        rejects("log axis", () -> plot.withSeries(Series.of("zero", ONE_TWO, new double[] {1, 0}, Style.LINE, 0)));
        rejects("\"limit\"", () -> plot.withMark(Mark.horizontal(-1, "limit")));
        rejects("log axis", () -> plot.withMark(Mark.point(1, 0, "p", MarkerShape.CIRCLE)));
        Plot swapped = Plot.of("t", WATTS, VOLTS);
        rejects("log axis", () -> swapped.withBand(Band.of("b", new double[] {0, 1}, ONE_TWO, ONE_TWO, 0)));
        rejects("log axis", () -> swapped.withMark(Mark.vertical(0, "v")));
    }

    @Test
    void plotAllowsABandThatReachesBelowALogAxis() {
        Plot plot = Plot.of("t", VOLTS, WATTS).withBand(Band.of("b", ONE_TWO, new double[] {-1, -1}, ONE_TWO, 0));
        assertEquals(-1, plot.bands().get(0).points().get(0).lower());
    }

    @Test
    void withAddsAndLeavesTheFormerPlotAsItWas() {
        Plot empty = Plot.of("t", VOLTS, WATTS);
        Plot full = empty.withSeries(Series.of("a", ONE_TWO, ONE_TWO, Style.LINE, 0))
                .withSeries(Series.of("b", ONE_TWO, ONE_TWO, Style.LINE, 1))
                .withBand(Band.of("c", ONE_TWO, ONE_TWO, ONE_TWO, 0))
                .withMark(Mark.vertical(1, "d"))
                .withNote("n")
                .withTitle("u")
                .withAxes(VOLTS.withRange(0, 1), VOLTS);
        assertEquals(List.of(), empty.series());
        assertEquals(List.of("a", "b"), full.series().stream().map(Series::name).toList());
        assertEquals(1, full.bands().size());
        assertEquals(1, full.marks().size());
        assertEquals(Optional.of("n"), full.note());
        assertEquals(Optional.empty(), full.withNote(" ").note());
        assertEquals("u", full.title());
        assertEquals(OptionalDouble.of(0), full.x().lower());
    }
}

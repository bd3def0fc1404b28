// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.ohmstead.curves.RatingJudge;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SampleSheet;
import org.ohmstead.report.SheetReading;

class SheetChartsTest {
    private static final double RELATIVE_TOLERANCE = 1e-9;

    private static List<Plot> curves;
    private static List<Plot> sweeps;
    private static List<Plot> spectra;

    @BeforeAll
    static void draw() {
        ResultsSheet sheet = SampleSheet.plain().build();
        Evidence evidence = new Evidence(sheet);
        ChartBook book = ChartBook.forPaper(PaperSize.A4);
        curves = new CurveCharts(evidence, sheet.ratings(), book)
                .rows(CurveGroup.of(sheet.curves())).stream()
                        .flatMap(List::stream)
                        .map(Chart::plot)
                        .toList();
        LevelCharts levels = new LevelCharts(evidence, book);
        sweeps = levels.sweeps().stream().map(Chart::plot).toList();
        spectra = levels.spectra().stream().map(Chart::plot).toList();
    }

    /** Returns the tones of all named series, by the part of the name with the unit, such as "4 ohm" or "14.4 V". */
    private static Map<String, Set<Integer>> tones(List<Plot> plots, String unit) {
        Map<String, Set<Integer>> tones = new HashMap<>();
        for (Plot plot : plots) {
            for (Series series : plot.series()) {
                int end = series.name().indexOf(unit);
                if (end >= 0) {
                    String key = series.name().substring(0, end);
                    tones.computeIfAbsent(key, unused -> new HashSet<>()).add(series.tone());
                }
            }
        }
        return tones;
    }

    private static void assertOneToneEach(Map<String, Set<Integer>> tones, int keys) {
        assertEquals(keys, tones.size(), tones.toString());
        Set<Integer> all = new HashSet<>();
        tones.forEach((key, own) -> {
            assertEquals(1, own.size(), key + " has the tones " + own);
            assertTrue(all.addAll(own), key + " shares its tone");
        });
    }

    @Test
    void oneLoadHasOneToneInStereoBridgedAndBurstCharts() {
        // The sample has stereo at 8, 4 and 2 ohm, bridged at 8 and 4, bursts at 4 and 2.
        assertEquals(3, curves.size());
        assertOneToneEach(tones(curves, "\u00a0\u03a9"), 3);
    }

    @Test
    void oneSupplyVoltageHasOneToneInAllSweeps() {
        // Without the bridged readings at 14.4 V, 13.8 V is the highest voltage of those charts but not of the sheet.
        ResultsSheet gappy = withReadings(SampleSheet.plain().build(), reading -> {
            boolean missing =
                    reading.mode() == Mode.BRIDGED && reading.channels().get(0).supplyVolts() > 14;
            return missing ? Optional.empty() : Optional.of(reading);
        });
        List<Plot> plots = new LevelCharts(new Evidence(gappy), ChartBook.forPaper(PaperSize.A4))
                .sweeps().stream().map(Chart::plot).toList();
        assertOneToneEach(tones(plots, "\u00a0V"), 5);
    }

    @Test
    void ratingsBearTheToneOfTheirLoad() {
        Plot stereo = curves.get(0);
        int tone = tones(curves, "\u00a0\u03a9").get("4").iterator().next();
        assertTrue(stereo.marks().stream()
                .anyMatch(mark -> mark instanceof Mark.Point point
                        && point.text().startsWith("150")
                        && point.tone().orElseThrow() == tone));
    }

    @Test
    void bandsReachAsFarAsTheRatings() {
        // The readings end at 14.413 V.
        ResultsSheet sheet = SampleSheet.plain().build();
        Rating beyond = new Rating("r", PowerKind.CONTINUOUS, Mode.STEREO, 4, 180, 15.5, 0.01, 1000, "");
        Plot plot = new CurveCharts(
                        new Evidence(sheet),
                        RatingJudge.judge(List.of(beyond), sheet.curves(), 0.95),
                        ChartBook.forPaper(PaperSize.A4))
                .rows(CurveGroup.of(sheet.curves()))
                .get(0)
                .get(0)
                .plot();
        List<Double> ends = plot.bands().stream()
                .map(band -> band.points().get(band.points().size() - 1).x())
                .toList();
        assertEquals(List.of(14.413, 15.5, 14.413), ends);
    }

    @Test
    void sweepsMarkTheWeakestChannelAtItsEndPoint() {
        // Closed form with g = 2.8, V_s = 3 V, R_s = 0.1 ohm at 14.4 V into 4 ohm: 165.708792 W, channel B 1.5 % less.
        double expected = Math.pow((2.8 * 14.4 - 3) * 4 / 4.1, 2) / 8 * 0.985;
        Plot plot = sweeps.stream()
                .filter(each -> each.title().equals("Stereo,\u00a04\u00a0\u03a9"))
                .findFirst()
                .orElseThrow();
        Mark.Point mark = plot.marks().stream()
                .filter(Mark.Point.class::isInstance)
                .map(each -> (Mark.Point) each)
                .findFirst()
                .orElseThrow();
        assertEquals(expected, mark.x(), RELATIVE_TOLERANCE * expected);
        assertEquals(1, mark.y(), RELATIVE_TOLERANCE);
        assertEquals("163\u00a0W", mark.text());
    }

    @Test
    void harmonicsAreThoseOfTheHighestSupplyVoltageOnOneScale() {
        assertEquals(6, spectra.size());
        spectra.forEach(plot -> assertTrue(plot.title().endsWith("14.4\u00a0V"), plot.title()));
        // 20 log10(1e-6) = -120 dB, far below all others, in the bridged readings only.
        ResultsSheet deep = withReadings(
                SampleSheet.plain().build(),
                reading -> Optional.of(reading.mode() == Mode.BRIDGED ? withSmallHarmonic(reading) : reading));
        List<Double> bottoms = new LevelCharts(new Evidence(deep), ChartBook.forPaper(PaperSize.A4))
                .spectra().stream()
                        .map(chart -> chart.plot().y().lower().orElseThrow())
                        .distinct()
                        .toList();
        assertEquals(List.of(-140.0), bottoms);
        assertTrue(spectra.stream().allMatch(plot -> plot.y().lower().orElseThrow() > -120));
    }

    private static ResultsSheet withReadings(ResultsSheet sheet, Function<Reading, Optional<Reading>> change) {
        List<SheetReading> readings = new ArrayList<>();
        for (SheetReading entry : sheet.readings()) {
            change.apply(entry.reading())
                    .ifPresent(reading -> readings.add(new SheetReading(entry.entryId(), reading, entry.voidReason())));
        }
        return new ResultsSheet(
                sheet.project(),
                readings,
                sheet.curves(),
                sheet.ratings(),
                sheet.log(),
                sheet.softwareVersion(),
                sheet.producedAt(),
                sheet.problems());
    }

    private static Reading withSmallHarmonic(Reading reading) {
        ChannelReading old = reading.channels().get(0);
        ChannelReading channel = new ChannelReading(
                old.channel(),
                old.outcome(),
                old.loadOhms(),
                old.powerWatts(),
                old.standardUncertaintyWatts(),
                old.outputVoltsRms(),
                old.frequencyHz(),
                old.thdFRatio(),
                old.supplyVolts(),
                old.supplyAmps(),
                old.uncertaintyParts(),
                old.sweep(),
                List.of(new HarmonicFigure(2, 1e-6)));
        return new Reading(
                reading.stepId(),
                reading.mode(),
                reading.loadId(),
                reading.nominalLoadOhms(),
                reading.stimulus(),
                reading.endPoint(),
                reading.takenAt(),
                reading.conditions(),
                List.of(channel),
                reading.provenance(),
                reading.notes());
    }

    @Test
    void tonesKnowOnlyWhatTheyWereMadeFor() {
        Tones tones = new Tones(List.of(2.0, 8.0, 4.0, 4.0), List.of(12.0, 14.4));
        assertEquals(0, tones.ofLoad(8));
        assertEquals(2, tones.ofLoad(2));
        assertEquals(0, tones.ofSupply(14.4));
        assertThrows(IllegalArgumentException.class, () -> tones.ofLoad(3));
    }
}

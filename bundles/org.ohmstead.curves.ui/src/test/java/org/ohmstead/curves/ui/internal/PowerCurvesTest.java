// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Stated;

class PowerCurvesTest {
    private static CurveGroup stereo(PowerCurves study) {
        return study.groupsOf(study.sorts().get(0)).stream()
                .filter(group -> group.mode() == Mode.STEREO)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void offersEachKindOfPowerOnceWithTheModesThatHaveIt() {
        PowerCurves study = Samples.study();
        List<String> kinds = study.sorts().stream().map(PowerCurves.Sort::text).toList();
        assertEquals(2, kinds.size());
        assertTrue(kinds.contains("Distortion-limited, 1 % THD_F"), kinds::toString);
        assertTrue(kinds.contains("Clipping onset"), kinds::toString);
        int limited = kinds.indexOf("Distortion-limited, 1 % THD_F");
        assertEquals(
                List.of(Mode.STEREO, Mode.BRIDGED),
                study.groupsOf(study.sorts().get(limited)).stream()
                        .map(CurveGroup::mode)
                        .toList());
        assertEquals(1, study.groupsOf(study.sorts().get(1 - limited)).size());
        assertEquals(List.of(4.0, 2.0), study.loadsOhms());
    }

    @Test
    void voidedReadingsDoNotCount() {
        Reading wrong = Samples.stereo(8, Samples.ONE_PERCENT, 12);
        List<LogEntry> entries = new ArrayList<>(Samples.entries(Samples.many()));
        entries.add(Samples.voided(13, wrong));
        PowerCurves study = PowerCurves.of(entries, Samples.amplifier(), Samples.SETTINGS, List.of(), Samples.GOING_ON);
        assertEquals(12, study.entries().size());
        assertEquals(List.of(4.0, 2.0), study.loadsOhms());
    }

    @Test
    void everyPointLeadsToItsEntry() {
        PowerCurves study = Samples.study();
        PowerPlot plot = PowerPlot.of(study, stereo(study), new ChannelChoice.Every(), Optional.empty(), false);
        assertEquals(4, plot.sources().size());
        for (Series series : plot.plot().series()) {
            if (series.style() != Style.MARKERS) {
                continue;
            }
            for (int index = 0; index < series.points().size(); index++) {
                PlotPoint point = series.points().get(index);
                Reading reading = plot.entryOf(series.name(), index)
                        .orElseThrow()
                        .reading()
                        .orElseThrow();
                assertEquals(point.x(), reading.channels().get(0).supplyVolts(), 1e-12);
                double watts = Samples.watts(point.x(), reading.nominalLoadOhms());
                double expected = series.name().endsWith("B") ? 0.99 * watts : watts;
                assertEquals(expected, point.y(), 1e-9 * expected);
            }
        }
        assertEquals(Optional.empty(), plot.entryOf("nothing", 0));
        assertEquals(
                Optional.empty(),
                plot.entryOf(plot.sources().keySet().iterator().next(), 99));
    }

    @Test
    void theLowestChannelIsShownUnlessAnotherIsWanted() {
        PowerCurves study = Samples.study();
        CurveGroup group = stereo(study);
        assertEquals(
                List.of("Lowest channel", "Every channel", "Channel A", "Channel B"),
                ChannelChoice.offeredBy(Optional.of(group)).stream()
                        .map(ChannelChoice::text)
                        .toList());
        assertEquals(2, new ChannelChoice.Lowest().of(group).size());
        assertTrue(new ChannelChoice.Lowest()
                .of(group).stream().allMatch(curve -> curve.channel().equals("B")));
        assertTrue(new ChannelChoice.Single("A")
                .of(group).stream().allMatch(curve -> curve.channel().equals("A")));
    }

    @Test
    void lineAndBandHaveTheNameOfTheirReadings() {
        PowerCurves study = Samples.study();
        PowerPlot plot = PowerPlot.of(study, stereo(study), new ChannelChoice.Lowest(), Optional.empty(), false);
        List<String> names = plot.plot().series().stream().map(Series::name).toList();
        assertEquals(List.of("4\u00a0\u03a9, B", "4\u00a0\u03a9, B", "2\u00a0\u03a9, B", "2\u00a0\u03a9, B"), names);
        assertEquals(
                List.of("4\u00a0\u03a9, B", "2\u00a0\u03a9, B"),
                plot.plot().bands().stream().map(Band::name).toList());
        assertEquals(Style.MARKERS, plot.plot().series().get(0).style());
    }

    // The readings' power is 0.99 of the closed form, known to 0.5 %: at 1.05 times it a rating is 5 % / 0.5 % = 10
    // standard
    // uncertainties away, at 1.00 none.
    @ParameterizedTest
    @CsvSource({"0.95, meets, HOLLOW_DIAMOND", "1.00, undecided, HOLLOW_SQUARE", "1.05, falls short, CROSS"})
    void eachVerdictHasItsWordAndItsShape(double share, String word, MarkerShape shape) {
        double rated = share * 0.99 * Samples.watts(13.8, 4);
        PowerCurves study = Samples.study(Samples.rating("r", Mode.STEREO, 4, rated, 13.8));
        PowerPlot plot = PowerPlot.of(study, stereo(study), new ChannelChoice.Lowest(), Optional.empty(), false);
        Mark.Point mark = (Mark.Point) plot.plot().marks().get(0);
        assertEquals(13.8, mark.x(), 1e-12);
        assertEquals(rated, mark.y(), 1e-12);
        assertEquals(shape, mark.shape());
        assertTrue(mark.text().endsWith(": " + word), mark.text());
        Sheet sheet = RatingSheet.of(study);
        assertEquals(word, sheet.rows().get(0).text(RatingSheet.VERDICT));
        String text = sheet.rows().get(0).text(2);
        double measured = Double.parseDouble(text.substring(0, text.indexOf('\u00a0')));
        assertEquals(0.99 * Samples.watts(13.8, 4), measured, 0.05);
    }

    @Test
    void theRiskOfAVerdictStandsBesideItAndTheRuleAboveIt() {
        // Rated 20 % above the truth: surely missed. Guarded rejection (JCGM 106 8.3.3) then says so, with hardly a
        // risk.
        Rating rating = Samples.rating("r", Mode.STEREO, 4, 1.2 * Samples.watts(13.8, 4), 13.8);
        VerdictRule rule = new VerdictRule(VerdictKind.GUARDED_REJECTION, 0.025);
        PowerCurves study = PowerCurves.of(
                Samples.entries(Samples.many()),
                Samples.amplifier(rating),
                Samples.SETTINGS.withVerdictRule(Optional.of(rule)),
                List.of(),
                Samples.GOING_ON);
        Sheet sheet = RatingSheet.of(study);
        assertEquals("falls short", sheet.rows().get(0).text(RatingSheet.VERDICT));
        assertEquals("Risk (%)", sheet.headers().get(8).text());
        assertEquals("< 0.1", sheet.rows().get(0).text(8));
        assertTrue(sheet.rows().get(0).cells().get(8).hover().startsWith("Producer's risk"));
        assertTrue(sheet.headers().get(RatingSheet.VERDICT).hint().startsWith("Guarded rejection"));
        assertTrue(sheet.headers().get(8).hint().contains("guarded rejection, risk at most 2.5 %"));
    }

    @Test
    void aRatingThatNoReadingFitsIsNotTested() {
        Rating rating = Samples.rating("r", Mode.STEREO, 8, 45, 14.4);
        PowerCurves study = Samples.study(rating);
        Sheet sheet = RatingSheet.of(study);
        assertEquals("not tested", sheet.rows().get(0).text(RatingSheet.VERDICT));
        assertEquals("\u2013", sheet.rows().get(0).text(2));
        assertEquals(sheet.headers().size(), sheet.rows().get(0).cells().size());
        PowerPlot plot = PowerPlot.of(study, stereo(study), new ChannelChoice.Lowest(), Optional.empty(), false);
        assertEquals(
                MarkerShape.HOLLOW_TRIANGLE_UP,
                ((Mark.Point) plot.plot().marks().get(0)).shape());
    }

    @Test
    void aRatingLeadsToTheChartThatShowsIt() {
        PowerCurves study = Samples.study();
        assertEquals(
                Mode.BRIDGED,
                study.groupOf(Samples.rating("r", Mode.BRIDGED, 4, 300, 14.4))
                        .orElseThrow()
                        .mode());
        assertEquals(Optional.empty(), study.groupOf(Samples.rating("r", Mode.SINGLE, 4, 300, 14.4)));
    }

    @Test
    void theChosenEntryIsRinged() {
        PowerCurves study = Samples.study();
        LogEntry third = study.entries().get(2);
        assertEquals(stereo(study), study.groupWith(third).orElseThrow());
        PowerPlot plot = PowerPlot.of(study, stereo(study), new ChannelChoice.Lowest(), Optional.of(third), false);
        Mark.Point ring = (Mark.Point) plot.plot().marks().get(0);
        assertEquals(MarkerShape.HOLLOW_CIRCLE, ring.shape());
        assertEquals("R0003", ring.text());
        assertEquals(12.5, ring.x(), 1e-12);
    }

    @Test
    void theCurvesSayThePowersOfTheClosedForm() {
        PowerCurves study = Samples.study();
        Sheet sheet = CurveSheet.of(new ChannelChoice.Single("A").of(stereo(study)), OptionalDouble.of(13.0));
        assertEquals("W at 13.00 V", sheet.headers().get(CurveSheet.CURSOR).text());
        double[] volts = {12.0, 12.6, 13.8, 14.4, 13.0};
        for (int column = 0; column < volts.length; column++) {
            String text = sheet.rows().get(0).text(2 + column);
            double watts = Double.parseDouble(text.substring(0, text.indexOf('\u00a0')));
            // Half a step of the last digit shown, which is 0.1 W.
            assertEquals(Samples.watts(volts[column], 4), watts, 0.06, text);
        }
    }

    @Test
    void whatNoReadingReachesStandsInParentheses() {
        PowerCurves study = PowerCurves.of(
                Samples.entries(List.of(
                        Samples.stereo(4, Samples.ONE_PERCENT, 12),
                        Samples.stereo(4, Samples.ONE_PERCENT, 12.5),
                        Samples.stereo(4, Samples.ONE_PERCENT, 13.8))),
                Samples.amplifier(),
                Samples.SETTINGS,
                List.of(),
                Samples.GOING_ON);
        Sheet.Row row = CurveSheet.of(new ChannelChoice.Lowest().of(stereo(study)), OptionalDouble.empty())
                .rows()
                .get(0);
        assertTrue(row.text(2).matches("[0-9].*"), row.text(2));
        assertTrue(row.text(5).matches("\\(.*\\)"), row.text(5));
        assertTrue(
                row.cells().get(5).hover().contains("0.60 V outside the readings"),
                row.cells().get(5).hover());
        assertEquals("", row.text(CurveSheet.CURSOR));
    }

    // GUM 7.2.6: the uncertainty to two digits, the value to the same place.
    @ParameterizedTest
    @CsvSource({"97.262, 1.04, 97.3, 1.0", "333.517, 16.3, 334, 16", "4.00412, 0.0042, 4.0041, 0.0042"})
    void statesValuesWithTheirUncertainty(double value, double expanded, String text, String uncertainty) {
        assertEquals(new Stated(text, uncertainty), Figures.stated(value, expanded));
    }

    @ParameterizedTest
    @CsvSource({"0.5, 50.0", "0.99999, > 99.9", "0.00001, < 0.1", "0.975, 97.5"})
    void probabilitiesNeverClaimCertainty(double probability, String text) {
        assertEquals(text, Figures.probability(probability));
    }

    @Test
    void copiesColumnsBetweenTabs() {
        PowerCurves study = Samples.study(Samples.rating("r", Mode.STEREO, 4, 90, 14.4));
        List<String> lines = RatingSheet.of(study).tabText().lines().toList();
        assertEquals(2, lines.size());
        assertEquals(lines.get(0).split("\t", -1).length, lines.get(1).split("\t", -1).length);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.study.FittedParameter;
import org.ohmstead.curves.study.PowerPrediction;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.curves.study.StageParameter;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SetAside;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.testlog.LogEntry;

class JointStudyTest {
    private static final double CONFIDENCE = 0.95;

    private static CurveGroup stereo(PowerCurves curves) {
        return curves.groups().stream()
                .filter(group -> group.mode() == Mode.STEREO && group.endPoint().equals(Samples.ONE_PERCENT))
                .findFirst()
                .orElseThrow();
    }

    private static JointStudy joint(PowerCurves curves) {
        return curves.studyOf(stereo(curves)).orElseThrow();
    }

    private static PowerStudy study(PowerCurves curves) {
        return joint(curves).study().orElseThrow();
    }

    private static double number(String text) {
        String first = text.replace("(", "");
        int end = first.indexOf('\u00a0');
        return Double.parseDouble(end < 0 ? first : first.substring(0, end));
    }

    private static PowerCurves curves(List<Reading> readings, List<SetAside> setAside) {
        return PowerCurves.of(
                Samples.entries(readings), Samples.amplifier(), Samples.SETTINGS, setAside, Samples.GOING_ON);
    }

    @Test
    void allLoadsModesAndChannelsOfAKindOfPowerAreStudiedTogether() {
        PowerCurves curves = Samples.study();
        assertEquals(2, curves.studies().size());
        // Eight stereo readings of two channels, and two bridged ones.
        assertEquals(18, study(curves).points().size());
        assertEquals(
                List.of(
                        new PlacedLoad(4, Mode.STEREO),
                        new PlacedLoad(2, Mode.STEREO),
                        new PlacedLoad(4, Mode.BRIDGED)),
                study(curves).loads());
        CurveGroup bridged = curves.groups().stream()
                .filter(group -> group.mode() == Mode.BRIDGED)
                .findFirst()
                .orElseThrow();
        assertEquals(curves.studyOf(stereo(curves)), curves.studyOf(bridged));
    }

    @Test
    void theParametersAreThoseOfTheClosedForm() {
        PowerStudy study = study(Samples.study());
        Sheet sheet = StudySheets.parameters(study, CONFIDENCE);
        List<FittedParameter> found = study.fit().parameters();
        assertEquals(found.size(), sheet.rows().size());
        for (int row = 0; row < found.size(); row++) {
            double value = found.get(row).estimate().value();
            double uncertainty = found.get(row).estimate().standardUncertainty();
            assertEquals(value, number(sheet.rows().get(row).text(1)), 0.1 * uncertainty + 1e-3);
        }
        int gain = found.stream().map(FittedParameter::parameter).toList().indexOf(StageParameter.GAIN);
        // The closed form has 2.2; the channels differ by 1 % in power, so by 0.5 % in volts.
        assertEquals(2.2, number(sheet.rows().get(gain).text(1)), 0.005 * 2.2);
        assertTrue(
                sheet.rows().get(gain).text(4).contains("with saturation voltage"),
                sheet.rows().get(gain).text(4));
    }

    @Test
    void theNormalisedTableSaysWhatTheStudyPredicts() {
        PowerStudy study = study(Samples.study());
        List<Double> volts = List.of(12.0, 13.8, 16.0);
        Sheet sheet = StudySheets.normalised(study, volts, CONFIDENCE);
        for (int row = 0; row < study.loads().size(); row++) {
            PlacedLoad load = study.loads().get(row);
            for (int column = 0; column < volts.size(); column++) {
                String text = sheet.rows().get(row).text(column + 1);
                PowerPrediction.Predicted predicted =
                        (PowerPrediction.Predicted) study.predict(volts.get(column), load.loadOhms(), load.mode());
                assertEquals(predicted.powerWatts(), number(text), 0.003 * predicted.powerWatts(), text);
                double closed = load.mode() == Mode.BRIDGED
                        ? 4 * Samples.watts(volts.get(column), load.loadOhms())
                        : Samples.watts(volts.get(column), load.loadOhms());
                assertEquals(closed, number(text), 0.015 * closed, text);
            }
            // The readings end at 14.4 V.
            assertTrue(
                    sheet.rows().get(row).text(3).startsWith("("),
                    sheet.rows().get(row).text(3));
            assertTrue(
                    sheet.rows().get(row).cells().get(3).hover().contains("Extrapolated: 1.6 V outside the readings."),
                    sheet.rows().get(row).cells().get(3).hover());
        }
        String hover = sheet.rows().get(0).cells().get(1).hover();
        // (12/13.8)^2 of the power at 13.8 V against the closed form: 10 log10((12/13.8 * 28.36/24.4)^2) = 0.09 dB.
        assertTrue(hover.contains("The square law from 13.8 V would say"), hover);
        assertTrue(hover.contains("+0.09 dB"), hover);
    }

    @Test
    void theChannelsDifferByWhatWasPutIn() {
        List<Difference> differences = joint(Samples.study()).differences();
        Difference first = differences.get(0);
        assertEquals("Channel A", first.what());
        assertEquals("channel B", first.against());
        assertEquals(13.8, first.supplyVolts(), 0);
        // 1/0.99 in power.
        assertEquals(1 / 0.99 - 1, first.power().relative().value(), 1e-6);
        Sheet sheet = StudySheets.differences(differences, CONFIDENCE);
        assertEquals("+1.0", sheet.rows().get(0).text(4));
        assertEquals("+0.04", sheet.rows().get(0).text(5));
        assertTrue(
                sheet.rows().get(0).text(7).contains("not heard even in a direct comparison"),
                sheet.rows().get(0).text(7));
    }

    @Test
    void channelsModesAndLoadsAreHeldAgainstTheJointCurve() {
        List<Difference> differences = joint(Samples.study()).differences();
        List<String> against = differences.stream()
                .filter(each -> each.against().equals("the joint curve"))
                .map(Difference::what)
                .toList();
        assertEquals(
                List.of(
                        "Channel A",
                        "Channel B",
                        "Stereo",
                        "Bridged",
                        "4\u00a0\u03a9",
                        "2\u00a0\u03a9",
                        "4\u00a0\u03a9 bridged"),
                against);
        double above = differences.stream()
                .filter(each ->
                        each.what().equals("Channel A") && each.against().equals("the joint curve"))
                .findFirst()
                .orElseThrow()
                .power()
                .relative()
                .value();
        assertTrue(above > 0.001 && above < 0.01, "" + above);
    }

    @Test
    void aRatingIsHeldAgainstTheJointCurveToo() {
        Rating rating = Samples.rating("r", Mode.STEREO, 4, 0.9 * Samples.watts(13.8, 4), 13.8);
        PowerCurves curves = Samples.study(rating);
        Sheet.Row row = RatingSheet.of(curves).rows().get(0);
        double watts = 0.99 * Samples.watts(13.8, 4);
        assertEquals(watts - rating.powerWatts(), number(row.text(4)), 0.06);
        assertEquals("+10.0", row.text(5));
        // 0.9 P(13.8 V) = 0.99 P(V) where 2.2 V - 2 is sqrt(0.9/0.99) of what it is at 13.8 V.
        double justMet = (Math.sqrt(0.9 / 0.99) * (2.2 * 13.8 - 2) + 2) / 2.2;
        assertEquals(justMet, number(row.text(10)), 0.01);
        double jointly = ((PowerPrediction.Predicted) study(curves).predict(13.8, 4, Mode.STEREO)).powerWatts();
        assertEquals(jointly, number(row.text(11)), 0.06);
        assertTrue(
                row.cells().get(11).hover().startsWith("Meets its rating"),
                row.cells().get(11).hover());
    }

    @Test
    void theJointCurveIsDrawnDashedWhenItIsWanted() {
        PowerCurves curves = Samples.study();
        PowerPlot plot = PowerPlot.of(curves, stereo(curves), new ChannelChoice.Lowest(), Optional.empty(), true);
        List<Series> dashed = plot.plot().series().stream()
                .filter(each -> each.style() == Style.DASHED_LINE)
                .toList();
        assertEquals(
                List.of("4\u00a0\u03a9 jointly", "2\u00a0\u03a9 jointly"),
                dashed.stream().map(Series::name).toList());
        PlotPoint last = dashed.get(1).points().get(dashed.get(1).points().size() - 1);
        assertEquals(14.4, last.x(), 1e-9);
        assertEquals(Samples.watts(14.4, 2), last.y(), 0.012 * Samples.watts(14.4, 2));
    }

    @Test
    void whatIsSetAsideLeavesCurvesAndStudyAndIsDrawnHollow() {
        List<SetAside> aside = List.of(new SetAside("R0002", "sagged"));
        PowerCurves curves = curves(Samples.many(), aside);
        assertEquals(16, study(curves).points().size());
        assertTrue(study(curves).points().stream()
                .noneMatch(point -> point.readingId().equals("R0002")));
        assertEquals(11, curves.entries().size());
        assertEquals(
                List.of("R0001", "R0002", "R0003", "R0004", "R0005", "R0006", "R0007", "R0008", "R0010", "R0012"),
                curves.readingsAbout(Optional.of(stereo(curves))).stream()
                        .map(LogEntry::id)
                        .toList());
        PowerPlot plot = PowerPlot.of(curves, stereo(curves), new ChannelChoice.Single("A"), Optional.empty(), false);
        Mark.Point mark = (Mark.Point) plot.plot().marks().get(0);
        assertEquals(MarkerShape.HOLLOW_CIRCLE, mark.shape());
        assertEquals("R0002 aside", mark.text());
        assertEquals(Samples.watts(11.5, 2), mark.y(), 1e-9);
    }

    @Test
    void aKindOfPowerThatIsSetAsideAsAWholeCanStillBeTakenBack() {
        List<SetAside> aside = List.of(new SetAside("R0009", "wrong"), new SetAside("R0011", "wrong"));
        PowerCurves curves = curves(Samples.many(), aside);
        assertEquals(1, curves.studies().size());
        List<String> offered = curves.readingsAbout(Optional.of(stereo(curves))).stream()
                .map(LogEntry::id)
                .toList();
        assertTrue(offered.containsAll(List.of("R0009", "R0011")), offered::toString);
    }

    @Test
    void aReadingFarOffIsNamedAmongTheResiduals() {
        List<Reading> readings = new ArrayList<>(Samples.many());
        Reading good = Samples.stereo(4, Samples.ONE_PERCENT, 13);
        List<ChannelReading> channels = new ArrayList<>(good.channels());
        channels.set(0, Samples.channel("A", 4, 13, 1.2 * Samples.watts(13, 4)));
        readings.add(Samples.reading(Mode.STEREO, 4, Samples.ONE_PERCENT, channels));
        PowerCurves curves = curves(readings, List.of());
        Plot plot = ResidualPart.plot(study(curves), curves.loadsOhms());
        List<String> named = plot.marks().stream()
                .filter(Mark.Point.class::isInstance)
                .map(Mark::text)
                .toList();
        assertEquals(List.of("R0013 A"), named);
        assertEquals(
                List.of("4\u00a0\u03a9", "2\u00a0\u03a9", "4\u00a0\u03a9 bridged"),
                plot.series().stream().map(Series::name).toList());
        assertEquals(
                study(curves).points().size(),
                plot.series().stream().mapToInt(each -> each.points().size()).sum());
        Sheet sheet = StudySheets.residuals(study(curves));
        Sheet.Row row = sheet.rows().stream()
                .filter(each -> each.text(0).equals("R0013 A"))
                .findFirst()
                .orElseThrow();
        assertTrue(row.text(6).endsWith("!"), row.text(6));
        assertTrue(number(row.text(5).substring(1)) > 15, row.text(5));
    }

    @Test
    void theFindingsNameTheModelAndItsRivals() {
        List<FindingsPart.Block> blocks = FindingsPart.blocks(joint(Samples.study()));
        assertEquals(study(Samples.study()).findings(), blocks.get(0).sentences());
        List<String> models = blocks.get(1).sentences();
        assertTrue(models.contains("Unregulated: Chosen."), models::toString);
    }

    @Test
    void oneVoltageAndOneLoadSayWhatCannotBeSaid() {
        PowerCurves curves = curves(List.of(Samples.stereo(4, Samples.ONE_PERCENT, 13.8)), List.of());
        List<String> said = WhatIfPart.lines(study(curves), 13.8, 2, Mode.STEREO, CONFIDENCE);
        assertEquals("The readings do not say.", said.get(0));
        assertTrue(said.get(1).contains("Take readings into a second load."), said.get(1));
        assertEquals(
                "\u2013",
                StudySheets.power(study(curves).predict(13.8, 2, Mode.STEREO), CONFIDENCE)
                        .text());
    }

    @Test
    void whatIfSaysHowFarOutItIs() {
        PowerStudy study = study(Samples.study());
        List<String> inside = WhatIfPart.lines(study, 13, 4, Mode.STEREO, CONFIDENCE);
        PowerPrediction.Predicted predicted = (PowerPrediction.Predicted) study.predict(13, 4, Mode.STEREO);
        assertEquals(predicted.powerWatts(), number(inside.get(0)), 0.06);
        assertEquals("Within the supply volts and loads of the readings.", inside.get(2));
        // d ln P/dV = 2 * 2.2/(2.2 V - 2) = 16.5 % per volt at 13 V in the closed form.
        assertTrue(inside.get(3).startsWith("One more volt here changes the power by 16."), inside.get(3));
        List<String> outside = WhatIfPart.lines(study, 16, 4, Mode.STEREO, CONFIDENCE);
        assertTrue(outside.get(2).startsWith("Extrapolated: 1.6 V outside the readings."), outside.get(2));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12 12.6 13.8 | 12.0, 12.6, 13.8",
                "12,5; 14,4 V | 12.5, 14.4",
                "12.0, 13.8 | 12.0, 13.8",
                "12 x | ",
                "0 12 | ",
                "1 2 3 4 5 6 7 8 9 | "
            })
    void readsTheSupplyVoltsThatAreWanted(String text, String volts) {
        Optional<List<Double>> read = NormalisedPart.SupplyList.read(text);
        if (volts == null) {
            assertFalse(read.isPresent(), () -> "" + read);
        } else {
            assertEquals("[" + volts + "]", read.orElseThrow().toString());
        }
    }
}

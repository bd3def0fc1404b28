// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.curves.CurvePlots.VoltsRange;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.BandPoint;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

class CurvePlotsTest {
    private static final EndPoint ONE_PERCENT = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);
    private static final EndPoint ONSET = new EndPoint.ClippingOnset();
    private static final double SHARED_RATIO = 0.005;

    /** Closed form: V_peak = 2.8 V - 3 into whatever load, P = V_peak^2 / 2R. */
    private static double watts(double supplyVolts, double loadOhms) {
        double peak = 2.8 * supplyVolts - 3;
        return peak * peak / (2 * loadOhms);
    }

    @Test
    void theLineFollowsTheClosedForm() {
        LoadCurve curve = LoadCurves.fit(readings(Mode.STEREO, 4, ONE_PERCENT, 11.5, 12.5, 14.4))
                .get(0);
        VoltsRange range = new VoltsRange(11, 15);
        Series line = CurvePlots.line(curve, range, "", 3);
        assertEquals(Style.LINE, line.style());
        assertEquals(11, line.points().get(0).x(), 1e-12);
        assertEquals(15, line.points().get(line.points().size() - 1).x(), 1e-12);
        for (PlotPoint point : line.points()) {
            assertEquals(watts(point.x(), 4), point.y(), 1e-6 * point.y());
        }
    }

    @Test
    void barsAndBandHoldTheSharedUncertainty() {
        LoadCurve curve = LoadCurves.fit(readings(Mode.STEREO, 4, ONE_PERCENT, 11.5, 12.5, 14.4))
                .get(0);
        // 95 % of a normal distribution lie within 1.959964 standard deviations (any table).
        double ratio = 1.959964 * Math.hypot(SHARED_RATIO, 0.0005);
        for (PlotPoint point : CurvePlots.readings(curve, "4 ohm", 0.95, 0).points()) {
            assertEquals(ratio * point.y(), point.barHalfLength().orElseThrow(), 1e-5 * point.y());
        }
        Band band = CurvePlots.band(curve, new VoltsRange(11.5, 14.4), "", 0.95, 0);
        for (BandPoint edge : band.points()) {
            double middle = watts(edge.x(), 4);
            assertTrue(edge.upper() - middle >= 1.959964 * SHARED_RATIO * middle * 0.999);
            assertTrue(edge.upper() - middle < 1.2 * ratio * middle);
            assertEquals(middle, (edge.lower() + edge.upper()) / 2, 1e-6 * middle);
        }
    }

    @Test
    void oneVoltageGivesADashedSquareLaw() {
        LoadCurve curve =
                LoadCurves.fit(readings(Mode.STEREO, 4, ONE_PERCENT, 12.0)).get(0);
        Series line = CurvePlots.line(curve, new VoltsRange(12, 14.4), "", 0);
        assertEquals(Style.DASHED_LINE, line.style());
        // Square law (closed form): 1.2 times the volts give 1.44 times the power.
        assertEquals(
                1.44 * watts(12, 4), line.points().get(line.points().size() - 1).y(), 1e-9);
        assertEquals(
                1,
                CurvePlots.line(curve, CurvePlots.range(curve, List.of()), "", 0)
                        .points()
                        .size());
    }

    @Test
    void theRangeReachesOutToTheRatings() {
        LoadCurve curve = LoadCurves.fit(readings(Mode.STEREO, 4, ONE_PERCENT, 11.5, 13.5))
                .get(0);
        assertEquals(new VoltsRange(11.5, 13.5), CurvePlots.range(curve, List.of()));
        assertEquals(new VoltsRange(11.5, 14.4), CurvePlots.range(curve, List.of(rating(4, 14.4, 0.01))));
        assertEquals(new VoltsRange(10, 13.5), CurvePlots.range(curve, List.of(rating(4, 10, 0.01))));
        assertThrows(IllegalArgumentException.class, () -> new VoltsRange(14, 13));
        assertThrows(IllegalArgumentException.class, () -> new VoltsRange(0, 13));
    }

    @Test
    void knowsFromWhichReadingAPointComes() {
        List<Reading> readings = new ArrayList<>(readings(Mode.STEREO, 4, ONE_PERCENT, 11.5));
        readings.addAll(readings(Mode.STEREO, 8, ONE_PERCENT, 11.5));
        readings.addAll(readings(Mode.STEREO, 4, ONSET, 11.5));
        readings.addAll(readings(Mode.STEREO, 4, ONE_PERCENT, 14.4));
        readings.addAll(readings(Mode.BRIDGED, 4, ONE_PERCENT, 14.4));
        List<LoadCurve> curves = LoadCurves.fit(readings);
        LoadCurve four = curves.stream()
                .filter(curve -> curve.mode() == Mode.STEREO
                        && curve.nominalLoadOhms() == 4
                        && curve.endPoint().equals(ONE_PERCENT)
                        && curve.channel().equals("B"))
                .findFirst()
                .orElseThrow();
        assertEquals(List.of(0, 3), LoadCurves.readingIndexes(four, readings));
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> LoadCurves.readingIndexes(four, readings.subList(0, 2)));
        assertTrue(refused.getMessage().contains("1 points"), refused.getMessage());
    }

    @Test
    void groupsWhatBelongsIntoOneChart() {
        List<Reading> readings = new ArrayList<>(readings(Mode.STEREO, 4, ONE_PERCENT, 11.5, 14.4));
        readings.addAll(readings(Mode.STEREO, 8, ONE_PERCENT, 11.5, 14.4));
        readings.addAll(readings(Mode.STEREO, 8, ONSET, 11.5, 14.4));
        readings.addAll(readings(Mode.BRIDGED, 4, ONE_PERCENT, 11.5, 14.4));
        List<CurveGroup> groups = CurveGroup.of(LoadCurves.fit(readings));
        assertEquals(3, groups.size());
        CurveGroup stereo = groups.stream()
                .filter(group -> group.mode() == Mode.STEREO && group.endPoint().equals(ONE_PERCENT))
                .findFirst()
                .orElseThrow();
        assertEquals(List.of(8.0, 4.0), stereo.loadsOhms());
        assertEquals(List.of("A", "B"), stereo.channels());
        // Channel B gives 1 % less power.
        assertEquals(
                List.of("B", "B"),
                stereo.weakest().stream().map(LoadCurve::channel).toList());
        assertEquals(
                List.of(8.0, 4.0),
                stereo.weakest().stream().map(LoadCurve::nominalLoadOhms).toList());
        assertTrue(CurvePlots.concerns(rating(4, 14.4, 0.01), stereo));
        assertFalse(CurvePlots.concerns(rating(4, 14.4, 0.1), stereo));
        assertTrue(CurvePlots.ratedLoad(rating(4, 14.4, 0.01), 4.1));
        assertFalse(CurvePlots.ratedLoad(rating(4, 14.4, 0.01), 8));
        assertThrows(
                IllegalArgumentException.class,
                () -> new CurveGroup(PowerKind.CONTINUOUS, Mode.STEREO, ONSET, 1000, List.of()));
    }

    private static Rating rating(double loadOhms, double supplyVolts, double distortionRatio) {
        return new Rating("r", PowerKind.CONTINUOUS, Mode.STEREO, loadOhms, 90, supplyVolts, distortionRatio, 1000, "");
    }

    private static List<Reading> readings(Mode mode, double loadOhms, EndPoint endPoint, double... supplyVolts) {
        List<Reading> readings = new ArrayList<>();
        for (double volts : supplyVolts) {
            double watts = watts(volts, loadOhms);
            readings.add(new Reading(
                    "s",
                    mode,
                    "l",
                    loadOhms,
                    new Stimulus.ContinuousSine(1000),
                    endPoint,
                    Instant.EPOCH,
                    new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                    List.of(channel("A", watts, volts, loadOhms), channel("B", 0.99 * watts, volts, loadOhms)),
                    new Provenance("0", "p", "1", "1", "", List.of(), List.of()),
                    List.of()));
        }
        return readings;
    }

    private static ChannelReading channel(String name, double watts, double supplyVolts, double loadOhms) {
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                loadOhms,
                watts,
                SHARED_RATIO * watts,
                Math.sqrt(watts * loadOhms),
                1000,
                0.01,
                supplyVolts,
                OptionalDouble.empty(),
                List.of(new UncertaintyPart("meters", SHARED_RATIO * watts, true)),
                List.of(),
                List.of());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;

class ComparisonTest {
    private static final ComparisonRequest AT_14V4 = ComparisonRequest.at(14.4, 4, Mode.STEREO);

    /** Coverage factor of the normal distribution for 95 %. */
    private static final double K95 = 1.959964;

    private static Subject subject(String name, Reading... readings) {
        return new Subject(
                name,
                "kestrel",
                new Specimen(name, "", "Bench 1"),
                Period.ALWAYS,
                List.of(readings),
                Optional.empty(),
                2);
    }

    /** The bench is always the same one, so the same meter is the same meter. */
    private static SampleReading on(String day) {
        return SampleReading.at(day + "T09:00:00Z").of("some", "", "Bench 1");
    }

    private static Reading reading(double supplyVolts, double watts, double own, double shared) {
        return on("2026-03-02").channel(supplyVolts, watts, own, shared).reading();
    }

    private static SubjectPower power(Comparison comparison, int index) {
        return comparison.powers().get(index);
    }

    @Test
    void takesAReadingAtTheVoltageAsItIs() throws HistoryException {
        Comparison comparison = Comparison.of(List.of(subject("A", reading(14.4, 100, 0.6, 0.8))), AT_14V4);
        SubjectPower found = power(comparison, 0);
        assertEquals(SubjectPower.Origin.DIRECT, found.origin());
        assertEquals(100, found.watts().value(), 1e-9);
        // Closed form: the root of 0.6 squared and 0.8 squared.
        assertEquals(1.0, found.watts().standardUncertainty(), 1e-9);
        assertTrue(comparison.differences().isEmpty());
        assertEquals("1 % THD_F at 1000 Hz", comparison.ground().orElseThrow().words());
    }

    @Test
    void aVoltageWithinTheUncertaintyOfTheReadingIsTheSame() throws HistoryException {
        // 2 x 0.04 / 14.4 = 0.56 %, less than the 1 % of the reading; the square law brings it to the voltage.
        SubjectPower found = power(Comparison.of(List.of(subject("A", reading(14.36, 100, 0.6, 0.8))), AT_14V4), 0);
        assertEquals(SubjectPower.Origin.DIRECT, found.origin());
        assertEquals(100 * Math.pow(14.4 / 14.36, 2), found.watts().value(), 1e-9);
        assertTrue(found.own().standardUncertainty() > 0.6);
    }

    @Test
    void goesAlongTheCurveBetweenReadings() throws HistoryException {
        // Closed form: peak volts = 2 x supply - 4, power = peak² / (2 x 4).
        Reading[] readings = {
            reading(12, Math.pow(20, 2) / 8, 0.2, 0.3),
            reading(13, Math.pow(22, 2) / 8, 0.2, 0.3),
            reading(15, Math.pow(26, 2) / 8, 0.2, 0.3)
        };
        SubjectPower found =
                power(Comparison.of(List.of(subject("A", readings)), ComparisonRequest.at(14, 4, Mode.STEREO)), 0);
        assertEquals(SubjectPower.Origin.CURVE, found.origin());
        assertEquals(3, found.readings());
        assertEquals(Math.pow(24, 2) / 8, found.watts().value(), 1e-6);
    }

    @Test
    void doesNotGuessBeyondTheReadings() throws HistoryException {
        Comparison comparison = Comparison.of(
                List.of(
                        subject("A", reading(12, 60, 0.2, 0.3), reading(13.8, 80, 0.2, 0.3)),
                        subject("B", reading(13.8, 90, 0.2, 0.3)),
                        subject("C", reading(14.4, 95, 0.2, 0.3))),
                AT_14V4);
        assertEquals(
                List.of("C"),
                comparison.powers().stream().map(each -> each.subject().name()).toList());
        assertEquals(
                List.of(
                        "A was measured from 12 to 13.8 V; what it gives at 14.4 V would be a guess. Measure it there, or compare"
                                + " at a voltage that all have.",
                        "B was measured at 13.8 V only; what it gives at 14.4 V would be a guess. Measure it there, or compare at"
                                + " a voltage that all have."),
                comparison.refusals());
    }

    @Test
    void theErrorOfTheSameMeterCancels() throws HistoryException {
        Comparison comparison = Comparison.of(
                List.of(subject("A", reading(14.4, 103, 0.3, 2.06)), subject("B", reading(14.4, 100, 0.4, 2))),
                AT_14V4);
        SubjectDifference difference = comparison.differences().get(0);
        assertTrue(difference.sharesInstruments());
        // Closed form: both are off by the same 2 %, so the difference of 3 W by 0.06 W; beside it 0.3 W and 0.4 W.
        assertEquals(3, difference.watts().value(), 1e-9);
        assertEquals(Math.hypot(0.5, 0.06), difference.watts().standardUncertainty(), 1e-9);
        // The ratio does not feel the common error at all.
        assertEquals(0.03, difference.relative().value(), 1e-12);
        assertEquals(
                1.03 * Math.hypot(0.3 / 103, 0.4 / 100), difference.relative().standardUncertainty(), 1e-12);
        assertTrue(difference.significant());
        assertTrue(
                difference.sentence().startsWith("A gives 3 W more than B (+3.0 %; \u00b1 0.99 W, 95 %)."),
                difference.sentence());
    }

    @Test
    void theErrorsOfTwoMetersDoNot() throws HistoryException {
        Reading other = on("2026-03-02").meter("m2").channel(14.4, 100, 0.4, 2).reading();
        SubjectDifference difference = Comparison.of(
                        List.of(subject("A", reading(14.4, 103, 0.3, 2.06)), subject("B", other)), AT_14V4)
                .differences()
                .get(0);
        assertFalse(difference.sharesInstruments());
        // Closed form: four independent parts.
        assertEquals(
                Math.sqrt(0.09 + 0.16 + 2.06 * 2.06 + 4), difference.watts().standardUncertainty(), 1e-9);
        assertFalse(difference.significant());
        assertTrue(difference.sentence().contains("A difference cannot be shown."), difference.sentence());
    }

    @Test
    void aMeterOfAnUnknownBenchInAnotherProjectIsNotTheSame() throws HistoryException {
        Reading here = SampleReading.at("2026-03-02T09:00:00Z")
                .channel(14.4, 103, 0.3, 2.06)
                .reading();
        Reading there = SampleReading.at("2026-03-02T09:00:00Z")
                .channel(14.4, 100, 0.4, 2)
                .reading();
        Subject first = subject("A", here);
        Subject second = new Subject(
                "B", "heron", new Specimen("B", "", ""), Period.ALWAYS, List.of(there), Optional.empty(), 2);
        assertFalse(Comparison.of(List.of(first, second), AT_14V4)
                .differences()
                .get(0)
                .sharesInstruments());
        assertTrue(Comparison.of(List.of(first, subject("C", there)), AT_14V4)
                .differences()
                .get(0)
                .sharesInstruments());
    }

    @Test
    void manyPairsShareTheRisk() throws HistoryException {
        // A difference of 2.2 standard uncertainties is significant alone at 95 %, but not as one of three pairs.
        double other = 100 + 2.2 * Math.sqrt(2);
        List<Subject> two = List.of(subject("A", reading(14.4, other, 1, 0)), subject("B", reading(14.4, 100, 1, 0)));
        SubjectDifference alone = Comparison.of(two, AT_14V4).differences().get(0);
        assertTrue(alone.watts().value() > K95 * alone.watts().standardUncertainty());
        assertTrue(alone.significant());
        List<Subject> three = new ArrayList<>(two);
        three.add(subject("C", reading(14.4, 100.5, 1, 0)));
        Comparison comparison = Comparison.of(three, AT_14V4);
        assertEquals(3, comparison.differences().size());
        assertFalse(comparison.differences().get(0).significant());
    }

    @Test
    void statesThePowerOfTheWeakestChannel() throws HistoryException {
        Reading reading = on("2026-03-02")
                .channel(14.4, 105, 0.5, 0.5)
                .channel(14.4, 98, 0.5, 0.5)
                .reading();
        SubjectPower found = power(Comparison.of(List.of(subject("A", reading)), AT_14V4), 0);
        assertEquals("B", found.channel());
        assertEquals(98, found.watts().value(), 1e-9);
    }

    @Test
    void comparesWhatMostHaveInCommon() throws HistoryException {
        EndPoint ten = new EndPoint.DistortionLimit(0.1, DistortionMeasure.THD_F);
        Reading hard =
                on("2026-03-02").endPoint(ten).channel(14.4, 130, 0.5, 0.5).reading();
        List<Subject> subjects = List.of(
                subject("A", reading(14.4, 100, 0.5, 0.5), hard),
                subject("B", reading(14.4, 101, 0.5, 0.5)),
                subject("C", hard));
        Comparison comparison = Comparison.of(subjects, AT_14V4);
        assertEquals("1 % THD_F at 1000 Hz", comparison.ground().orElseThrow().words(), "of two the least distortion");
        assertEquals(2, comparison.powers().size());
        assertTrue(comparison.refusals().get(0).startsWith("C has no reading stereo into 4 ohm to 1 % THD_F"));
        ComparisonRequest asked = new ComparisonRequest(
                14.4, 4, Mode.STEREO, AT_14V4.kind(), Optional.of(ten), AT_14V4.frequencyHz(), 0.95);
        assertEquals(130, power(Comparison.of(subjects, asked), 0).watts().value(), 1e-9);
    }

    @Test
    void bringsThePowerToTheWantedLoad() throws HistoryException {
        ComparisonRequest request = ComparisonRequest.at(14.4, 4.02, Mode.STEREO);
        Estimate found = power(Comparison.of(List.of(subject("A", reading(14.4, 100, 0.5, 0.5))), request), 0)
                .watts();
        // Closed form: at the same volts the power goes with the conductance.
        assertEquals(100 * 4 / 4.02, found.value(), 1e-9);
    }

    @Test
    void nobodyFitsAnotherModeOrLoad() throws HistoryException {
        List<Subject> subjects = List.of(subject("A", reading(14.4, 100, 0.5, 0.5)));
        for (ComparisonRequest request :
                List.of(ComparisonRequest.at(14.4, 4, Mode.BRIDGED), ComparisonRequest.at(14.4, 2, Mode.STEREO))) {
            Comparison comparison = Comparison.of(subjects, request);
            assertTrue(comparison.powers().isEmpty());
            assertTrue(comparison.ground().isEmpty());
            assertTrue(comparison.refusals().get(0).contains("cannot be compared"));
        }
    }

    @Test
    void refusesNoneTooManyAndNamesakes() {
        Subject one = subject("A", reading(14.4, 100, 0.5, 0.5));
        assertThrows(HistoryException.class, () -> Comparison.of(List.of(), AT_14V4));
        assertThrows(HistoryException.class, () -> Comparison.of(List.of(one, one), AT_14V4));
        List<Subject> many = new ArrayList<>();
        for (int i = 0; i <= Comparison.MOST_SUBJECTS; i++) {
            many.add(one.withName("A" + i));
        }
        assertThrows(HistoryException.class, () -> Comparison.of(many, AT_14V4));
    }
}

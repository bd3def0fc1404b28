// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetReading;
import org.ohmstead.testlog.budget.ReadingBudget;

/** The readings that stand, with the supply volts their steps aimed for. */
final class Evidence {
    /** How mode, load and voltage follow one another everywhere in the sheet. */
    static final Comparator<Taken> ORDER = Comparator.comparing(
                    (Taken taken) -> taken.reading().mode())
            .thenComparing(
                    Comparator.comparingDouble((Taken taken) -> taken.reading().nominalLoadOhms())
                            .reversed())
            .thenComparingDouble(Taken::aimedVolts);

    private final ResultsSheet sheet;
    private final List<Taken> standing;
    private final Speech speech;

    /**
     * A reading that stands.
     *
     * @param entryId id of the log's entry
     * @param reading the reading
     * @param aimedVolts supply volts that its step aimed for; what was measured, to a tenth, when the plan lacks the step
     */
    record Taken(String entryId, Reading reading, double aimedVolts) {
        boolean is(PowerKind kind) {
            return reading.stimulus().powerKind() == kind;
        }

        /** Returns whether both worked into the same load in the same mode at the same supply volts. */
        boolean sameCell(Taken other) {
            return sameLoad(other) && Double.compare(aimedVolts, other.aimedVolts) == 0;
        }

        boolean sameLoad(Taken other) {
            return reading.mode() == other.reading.mode()
                    && Double.compare(reading.nominalLoadOhms(), other.reading.nominalLoadOhms()) == 0;
        }
    }

    Evidence(ResultsSheet sheet) {
        this(sheet, Speech.in(Locale.ENGLISH));
    }

    Evidence(ResultsSheet sheet, Speech speech) {
        this.sheet = sheet;
        this.speech = speech;
        this.standing =
                sheet.standingReadings().stream().map(this::taken).sorted(ORDER).toList();
    }

    private Taken taken(SheetReading entry) {
        Reading reading = entry.reading();
        double measured = Math.round(reading.channels().get(0).supplyVolts() * 10) / 10.0;
        double aimed =
                sheet.project().step(reading.stepId()).map(Step::supplyVolts).orElse(measured);
        return new Taken(entry.entryId(), reading, aimed);
    }

    /** Returns the words of the sheet. */
    Speech speech() {
        return speech;
    }

    /** Returns mode and load of a reading. */
    String cell(Taken taken) {
        return speech.of(taken.reading().mode()) + ",\u00a0"
                + speech.ohms(taken.reading().nominalLoadOhms());
    }

    List<Taken> standing() {
        return standing;
    }

    List<Taken> standing(PowerKind kind) {
        return standing.stream().filter(taken -> taken.is(kind)).toList();
    }

    /** Returns the colours of all loads and supply voltages that stand in the sheet. */
    Tones tones() {
        return new Tones(loads(standing), voltages(standing));
    }

    double confidence() {
        return sheet.project().sheet().confidence();
    }

    /** Returns the sheet's confidence in percent, with its sign. */
    String confidencePercent() {
        return speech.percent(confidence(), 4);
    }

    /** Returns k times the standard uncertainty, k from the normal distribution at the sheet's confidence. */
    double expanded(double standardUncertainty) {
        return Estimate.of(0, standardUncertainty).expandedUncertainty(confidence());
    }

    /** Returns the expanded uncertainty of a reading's power at the sheet's confidence, with the budget's degrees of freedom. */
    double expanded(ChannelReading channel) {
        return ReadingBudget.of(channel).coverageFactor(confidence()) * channel.standardUncertaintyWatts();
    }

    /** Returns power and expanded uncertainty as printed, with a sign before what is only a bound. */
    String power(ChannelReading channel) {
        return Words.bound(channel.outcome()) + speech.stated(channel.powerWatts(), expanded(channel));
    }

    static boolean reached(ChannelReading channel) {
        return channel.outcome() == EndPointOutcome.REACHED;
    }

    /** Returns the modes of a list in their order, each once. */
    static List<Mode> modes(List<Taken> list) {
        return list.stream()
                .map(taken -> taken.reading().mode())
                .distinct()
                .sorted()
                .toList();
    }

    /** Returns the nominal loads of a list in ohms, the highest first, each once. */
    static List<Double> loads(List<Taken> list) {
        return list.stream()
                .map(taken -> taken.reading().nominalLoadOhms())
                .distinct()
                .sorted(Comparator.reverseOrder())
                .toList();
    }

    /** Returns the supply volts aimed for in a list, rising, each once. */
    static List<Double> voltages(List<Taken> list) {
        return list.stream().map(Taken::aimedVolts).distinct().sorted().toList();
    }
}

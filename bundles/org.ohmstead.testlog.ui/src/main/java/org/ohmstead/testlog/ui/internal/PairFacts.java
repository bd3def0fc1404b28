// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.MethodComparison;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.testlog.budget.ReadingBudget;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.WorkProgress;

/** Puts two readings beside each other, line by line, and marks where they differ. */
final class PairFacts {
    private final PairSide first;
    private final PairSide second;
    private final List<PairRow> rows = new ArrayList<>();

    private PairFacts(PairSide first, PairSide second) {
        this.first = first;
        this.second = second;
    }

    /** Returns the lines without what Monte Carlo gives. */
    static List<PairRow> of(PairSide first, PairSide second) {
        return of(first, second, Optional.empty());
    }

    /**
     * Returns the lines.
     *
     * @param drawn what Monte Carlo gives, once it is known
     */
    static List<PairRow> of(PairSide first, PairSide second, Optional<Drawn> drawn) {
        PairFacts facts = new PairFacts(first, second);
        facts.result();
        facts.conditions();
        facts.settings();
        facts.instruments();
        facts.capture();
        facts.budget(drawn);
        return List.copyOf(facts.rows);
    }

    private void result() {
        rows.add(PairRow.heading("Result"));
        rows.add(PairRow.words(
                "Channel", first.channel().channel(), second.channel().channel()));
        rows.add(power());
        rows.add(channelWords("Outcome", channel -> Words.of(channel.outcome())));
        rows.add(channelFigure("Output (V RMS)", ChannelReading::outputVoltsRms, 3));
        rows.add(channelFigure("Load (\u03a9)", ChannelReading::loadOhms, 4));
        rows.add(PairRow.figures(
                "THD_F (%)",
                Figures.percent(first.channel().thdFRatio()),
                Figures.percent(second.channel().thdFRatio()),
                signed(100 * (second.channel().thdFRatio() - first.channel().thdFRatio()), 3)));
        rows.add(channelFigure("Frequency (Hz)", ChannelReading::frequencyHz, 2));
        rows.add(channelFigure("Supply (V)", ChannelReading::supplyVolts, 3));
        rows.add(optional(
                "Supply current (A)",
                first.channel().supplyAmps(),
                second.channel().supplyAmps(),
                2));
    }

    private PairRow power() {
        Estimate difference = PairDifference.of(first, second);
        double expanded = Coverage.expanded(difference.standardUncertainty());
        boolean beyond = Math.abs(difference.value()) > expanded;
        String sign = difference.value() > 0 ? "+" : "";
        String told = sign
                + Figures.stated(difference.value(), difference.standardUncertainty())
                        .text();
        boolean same = PairDifference.sameInstruments(first.reading(), second.reading());
        String hover = (beyond
                        ? "The powers differ by more than the uncertainty of their difference ("
                        : "The powers do not differ by more than the uncertainty of their difference (")
                + Coverage.words() + "). "
                + (same
                        ? "Both readings were taken with the same instruments, so what these do to both alike has"
                                + " cancelled."
                        : "The readings were not taken with the same instruments, so their uncertainties add up whole.");
        return new PairRow(
                "Power (W), " + Coverage.words(),
                power(first.channel()),
                power(second.channel()),
                told,
                beyond,
                false,
                hover);
    }

    private static String power(ChannelReading channel) {
        return Words.bound(channel.outcome())
                + Figures.stated(channel.powerWatts(), channel.standardUncertaintyWatts())
                        .text();
    }

    private PairRow channelFigure(String label, ToDoubleFunction<ChannelReading> figure, int places) {
        double left = figure.applyAsDouble(first.channel());
        double right = figure.applyAsDouble(second.channel());
        return PairRow.figures(
                label, Figures.fixed(left, places), Figures.fixed(right, places), signed(right - left, places));
    }

    private PairRow channelWords(String label, Function<ChannelReading, String> words) {
        return PairRow.words(label, words.apply(first.channel()), words.apply(second.channel()));
    }

    private PairRow readingWords(String label, Function<Reading, String> words) {
        return PairRow.words(label, words.apply(first.reading()), words.apply(second.reading()));
    }

    private static PairRow optional(String label, OptionalDouble left, OptionalDouble right, int places) {
        boolean both = left.isPresent() && right.isPresent();
        return PairRow.figures(
                label,
                Figures.fixed(left, places),
                Figures.fixed(right, places),
                both ? signed(right.getAsDouble() - left.getAsDouble(), places) : "");
    }

    private static String signed(double difference, int places) {
        String text = Figures.fixed(difference, places);
        boolean nothing = Math.abs(difference) < 0.5 * Math.pow(10, -places);
        return nothing ? "" : difference > 0 ? "+" + text : text;
    }

    private void conditions() {
        rows.add(PairRow.heading("Conditions"));
        rows.add(PairRow.figures(
                "Taken (UTC)",
                Figures.time(first.reading().takenAt()),
                Figures.time(second.reading().takenAt()),
                ""));
        rows.add(optional(
                "Air (\u00b0C)",
                first.reading().conditions().ambientCelsius(),
                second.reading().conditions().ambientCelsius(),
                1));
        rows.add(optional(
                "Case (\u00b0C)",
                first.reading().conditions().caseCelsius(),
                second.reading().conditions().caseCelsius(),
                1));
    }

    private void settings() {
        rows.add(PairRow.heading("Settings"));
        rows.add(specimen("Amplifier", Specimen::amplifier));
        rows.add(specimen("Serial number", Specimen::serialNumber));
        rows.add(specimen("Bench", Specimen::bench));
        rows.add(readingWords("Step", Reading::stepId));
        rows.add(readingWords("Mode", reading -> Words.of(reading.mode())));
        rows.add(readingWords(
                "Load stands for",
                reading -> Numbers.shown(reading.nominalLoadOhms()) + " \u03a9 (" + reading.loadId() + ")"));
        rows.add(readingWords("Stimulus", reading -> Words.of(reading.stimulus())));
        rows.add(readingWords("End point", reading -> Words.of(reading.endPoint())));
        rows.add(provenance("Procedure", each -> each.procedureId() + ", version " + each.procedureVersion()));
        rows.add(provenance("Software", Provenance::softwareVersion));
        rows.add(provenance("Operator", Provenance::operator));
        String left = first.reading().provenance().projectRevision();
        String right = second.reading().provenance().projectRevision();
        rows.add(PairRow.words("Project revision", Figures.shortHash(left), Figures.shortHash(right))
                .withHover(left + "\n" + right));
    }

    private PairRow specimen(String label, Function<Specimen, String> words) {
        return provenance(label, each -> each.specimen().map(words).orElse("not recorded"));
    }

    private PairRow provenance(String label, Function<Provenance, String> words) {
        return readingWords(label, reading -> orNone(words.apply(reading.provenance())));
    }

    private static String orNone(String text) {
        return text.isBlank() ? Figures.NONE : text;
    }

    private void instruments() {
        rows.add(PairRow.heading("Instruments"));
        Map<String, String> left = instruments(first.reading());
        Map<String, String> right = instruments(second.reading());
        Set<String> quantities = new LinkedHashSet<>(left.keySet());
        quantities.addAll(right.keySet());
        for (String quantity : quantities) {
            rows.add(PairRow.words(
                    quantity, left.getOrDefault(quantity, Figures.NONE), right.getOrDefault(quantity, Figures.NONE)));
        }
    }

    private static Map<String, String> instruments(Reading reading) {
        Map<String, String> words = new LinkedHashMap<>();
        for (InstrumentUsed used : reading.provenance().instruments()) {
            String quantity = Words.of(used.quantity());
            String label = Character.toUpperCase(quantity.charAt(0)) + quantity.substring(1);
            String calibrated =
                    used.calibratedOn().map(day -> ", calibrated " + day).orElse(", calibration not known");
            words.merge(
                    label,
                    used.name() + calibrated + (used.overdue() ? ", overdue" : ""),
                    (one, other) -> one + "; " + other);
        }
        return words;
    }

    private void capture() {
        rows.add(PairRow.heading("Capture nearest to the end point"));
        rows.add(captureWords("File", PairWave::fileName));
        rows.add(captureWords("SHA-256", wave -> Figures.shortHash(wave.sha256())));
        rows.add(PairRow.words("Volts per full scale", scale(first), scale(second)));
        rows.add(captureWords(
                "Sampled", wave -> Numbers.shown(wave.sampleRateHz()) + " samples/s, " + wave.formatText()));
        rows.add(captureFigure("THD+N_R (%)", analysis -> 100 * analysis.thdPlusNoiseRRatio(), 3));
        rows.add(captureFigure("Direct volts (V)", ChannelAnalysis::dcVolts, 3));
        rows.add(captureFigure("Crest factor (dB)", ChannelAnalysis::crestFactorDb, 2));
        rows.add(captureWords("Tops cut off", wave -> wave.analysis().clipping().clipped() ? "yes" : "no"));
    }

    private static String scale(PairSide side) {
        Optional<CaptureUsed> used = PairWaves.nearest(side.reading(), side.channel());
        return used.map(capture -> String.join(
                        " / ",
                        capture.voltsPerFullScale().stream().map(Numbers::shown).toList()))
                .orElse(Figures.NONE);
    }

    private PairRow captureWords(String label, Function<PairWave, String> words) {
        return PairRow.words(
                label,
                first.wave().map(words).orElse(Figures.NONE),
                second.wave().map(words).orElse(Figures.NONE));
    }

    private PairRow captureFigure(String label, ToDoubleFunction<ChannelAnalysis> figure, int places) {
        return optional(label, figure(first, figure), figure(second, figure), places);
    }

    private static OptionalDouble figure(PairSide side, ToDoubleFunction<ChannelAnalysis> figure) {
        return side.wave()
                .map(wave -> OptionalDouble.of(figure.applyAsDouble(wave.analysis())))
                .orElse(OptionalDouble.empty());
    }

    /** Both methods for both readings. */
    record Drawn(MethodComparison first, MethodComparison second) {
        /** Works them out, which takes some seconds. */
        static Drawn of(PairSide first, PairSide second, WorkProgress progress) {
            MethodComparison one = draw(first);
            progress.stopIfCancelled();
            return new Drawn(one, draw(second));
        }

        private static MethodComparison draw(PairSide side) {
            return ReadingBudget.of(side.channel()).monteCarlo(BudgetTexts.COVERAGE, ReadingBudget.USUAL_SEED);
        }
    }

    private void budget(Optional<Drawn> drawn) {
        rows.add(PairRow.heading("Standard uncertainty of the power (W)"));
        Set<String> sources = new LinkedHashSet<>();
        first.channel().uncertaintyParts().forEach(part -> sources.add(part.source()));
        second.channel().uncertaintyParts().forEach(part -> sources.add(part.source()));
        for (String source : sources) {
            rows.add(optional(source, part(first, source), part(second, source), 3));
        }
        rows.add(channelFigure("Together", ChannelReading::standardUncertaintyWatts, 3));
        ReadingBudget left = ReadingBudget.of(first.channel());
        ReadingBudget right = ReadingBudget.of(second.channel());
        rows.add(PairRow.figures(
                "Effective degrees of freedom", BudgetTexts.degrees(left), BudgetTexts.degrees(right), ""));
        rows.add(PairRow.figures("95 %, law of propagation (W)", interval(left), interval(right), ""));
        rows.add(PairRow.figures(
                "95 %, Monte Carlo (W)",
                drawn.map(each -> interval(each.first())).orElse("\u2026"),
                drawn.map(each -> interval(each.second())).orElse("\u2026"),
                ""));
        if (drawn.isPresent()
                && !(drawn.get().first().agrees() && drawn.get().second().agrees())) {
            rows.add(new PairRow(
                    "The methods",
                    agreement(drawn.get().first()),
                    agreement(drawn.get().second()),
                    "report the Monte Carlo interval",
                    true,
                    false,
                    BudgetTexts.verdict(
                            drawn.get().first().agrees()
                                    ? drawn.get().second()
                                    : drawn.get().first())));
        }
    }

    private static String agreement(MethodComparison comparison) {
        return comparison.agrees() ? "agree" : "do not agree";
    }

    private static String interval(ReadingBudget budget) {
        return BudgetTexts.interval(budget.interval(BudgetTexts.COVERAGE), budget.expandedWatts(BudgetTexts.COVERAGE));
    }

    private static String interval(MethodComparison comparison) {
        return BudgetTexts.interval(
                comparison.monteCarloInterval(), comparison.monteCarloInterval().width() / 2);
    }

    private static OptionalDouble part(PairSide side, String source) {
        return side.channel().uncertaintyParts().stream()
                .filter(part -> part.source().equals(source))
                .mapToDouble(UncertaintyPart::standardUncertaintyWatts)
                .findFirst();
    }
}

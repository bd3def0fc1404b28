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
import org.ohmstead.testlog.budget.BudgetLine;
import org.ohmstead.testlog.budget.ReadingBudget;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.WorkProgress;

/** Puts two readings beside each other, line by line, and marks where they differ. */
final class PairFacts {
    private static final Messages TEXTS = Messages.of(PairFacts.class);
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
        rows.add(PairRow.heading(TEXTS.text("pair.result")));
        rows.add(PairRow.words(
                TEXTS.text("details.channel"),
                first.channel().channel(),
                second.channel().channel()));
        rows.add(power());
        rows.add(channelWords(TEXTS.text("details.outcome"), channel -> Words.of(channel.outcome())));
        rows.add(channelFigure(TEXTS.text("details.outputVolts"), ChannelReading::outputVoltsRms, 3));
        rows.add(channelFigure(TEXTS.text("details.loadOhms"), ChannelReading::loadOhms, 4));
        rows.add(PairRow.figures(
                TEXTS.text("details.thd"),
                Figures.percent(first.channel().thdFRatio()),
                Figures.percent(second.channel().thdFRatio()),
                signed(100 * (second.channel().thdFRatio() - first.channel().thdFRatio()), 3)));
        rows.add(channelFigure(TEXTS.text("details.frequency"), ChannelReading::frequencyHz, 2));
        rows.add(channelFigure(TEXTS.text("details.supplyVolts"), ChannelReading::supplyVolts, 3));
        rows.add(optional(
                TEXTS.text("details.supplyAmps"),
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
        String hover = TEXTS.text(
                "pair.power." + (beyond ? "beyond" : "within") + (same ? ".same" : ".other"), Coverage.words());
        return new PairRow(
                TEXTS.text("details.power", Coverage.words()),
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
        rows.add(PairRow.heading(TEXTS.text("details.conditions")));
        rows.add(PairRow.figures(
                TEXTS.text("pair.taken"),
                Figures.time(first.reading().takenAt()),
                Figures.time(second.reading().takenAt()),
                ""));
        rows.add(optional(
                TEXTS.text("pair.air"),
                first.reading().conditions().ambientCelsius(),
                second.reading().conditions().ambientCelsius(),
                1));
        rows.add(optional(
                TEXTS.text("pair.case"),
                first.reading().conditions().caseCelsius(),
                second.reading().conditions().caseCelsius(),
                1));
    }

    private void settings() {
        rows.add(PairRow.heading(TEXTS.text("pair.settings")));
        rows.add(specimen(TEXTS.text("details.amplifier"), Specimen::amplifier));
        rows.add(specimen(TEXTS.text("details.serial"), Specimen::serialNumber));
        rows.add(specimen(TEXTS.text("details.bench"), Specimen::bench));
        rows.add(readingWords(TEXTS.text("details.step"), Reading::stepId));
        rows.add(readingWords(TEXTS.text("pair.mode"), reading -> Words.of(reading.mode())));
        rows.add(readingWords(
                TEXTS.text("pair.load"),
                reading -> Numbers.shown(reading.nominalLoadOhms()) + " \u03a9 (" + reading.loadId() + ")"));
        rows.add(readingWords(TEXTS.text("details.stimulus"), reading -> Words.of(reading.stimulus())));
        rows.add(readingWords(TEXTS.text("details.endPoint"), reading -> Words.of(reading.endPoint())));
        rows.add(provenance(
                TEXTS.text("details.procedure"),
                each -> TEXTS.text("details.procedure.value", each.procedureId(), each.procedureVersion())));
        rows.add(provenance(TEXTS.text("details.software"), Provenance::softwareVersion));
        rows.add(provenance(TEXTS.text("details.operator"), Provenance::operator));
        String left = first.reading().provenance().projectRevision();
        String right = second.reading().provenance().projectRevision();
        rows.add(PairRow.words(TEXTS.text("details.revision"), Figures.shortHash(left), Figures.shortHash(right))
                .withHover(left + "\n" + right));
    }

    private PairRow specimen(String label, Function<Specimen, String> words) {
        return provenance(label, each -> each.specimen().map(words).orElseGet(() -> TEXTS.text("pair.notRecorded")));
    }

    private PairRow provenance(String label, Function<Provenance, String> words) {
        return readingWords(label, reading -> orNone(words.apply(reading.provenance())));
    }

    private static String orNone(String text) {
        return text.isBlank() ? Figures.NONE : text;
    }

    private void instruments() {
        rows.add(PairRow.heading(TEXTS.text("pair.instruments")));
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
            String name = used.calibratedOn()
                    .map(day -> TEXTS.text("pair.instrument.calibrated", used.name(), day.toString()))
                    .orElseGet(() -> TEXTS.text("pair.instrument.uncalibrated", used.name()));
            words.merge(
                    Words.of(used.quantity()),
                    used.overdue() ? TEXTS.text("pair.instrument.overdue", name) : name,
                    (one, other) -> one + "; " + other);
        }
        return words;
    }

    private void capture() {
        rows.add(PairRow.heading(TEXTS.text("pair.capture")));
        rows.add(captureWords(TEXTS.text("pair.capture.file"), PairWave::fileName));
        rows.add(captureWords("SHA-256", wave -> Figures.shortHash(wave.sha256())));
        rows.add(PairRow.words(TEXTS.text("pair.capture.scale"), scale(first), scale(second)));
        rows.add(captureWords(
                TEXTS.text("pair.capture.sampled"),
                wave -> TEXTS.text(
                        "pair.capture.sampled.value", Numbers.shown(wave.sampleRateHz()), wave.formatText())));
        rows.add(captureFigure(TEXTS.text("pair.capture.noise"), analysis -> 100 * analysis.thdPlusNoiseRRatio(), 3));
        rows.add(captureFigure(TEXTS.text("pair.capture.dc"), ChannelAnalysis::dcVolts, 3));
        rows.add(captureFigure(TEXTS.text("pair.capture.crest"), ChannelAnalysis::crestFactorDb, 2));
        rows.add(captureWords(
                TEXTS.text("pair.capture.tops"),
                wave -> TEXTS.text(wave.analysis().clipping().clipped() ? "pair.capture.yes" : "pair.capture.no")));
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
        rows.add(PairRow.heading(TEXTS.text("pair.budget")));
        Set<String> sources = new LinkedHashSet<>();
        first.channel().uncertaintyParts().forEach(part -> sources.add(part.source()));
        second.channel().uncertaintyParts().forEach(part -> sources.add(part.source()));
        for (String source : sources) {
            rows.add(optional(BudgetLine.label(source, TEXTS.locale()), part(first, source), part(second, source), 3));
        }
        rows.add(channelFigure(TEXTS.text("details.budget.together"), ChannelReading::standardUncertaintyWatts, 3));
        ReadingBudget left = ReadingBudget.of(first.channel());
        ReadingBudget right = ReadingBudget.of(second.channel());
        rows.add(PairRow.figures(
                TEXTS.text("pair.budget.effective"), BudgetTexts.degrees(left), BudgetTexts.degrees(right), ""));
        rows.add(PairRow.figures(TEXTS.text("pair.budget.law"), interval(left), interval(right), ""));
        rows.add(PairRow.figures(
                TEXTS.text("pair.budget.monteCarlo"),
                drawn.map(each -> interval(each.first())).orElse("\u2026"),
                drawn.map(each -> interval(each.second())).orElse("\u2026"),
                ""));
        if (drawn.isPresent()
                && !(drawn.get().first().agrees() && drawn.get().second().agrees())) {
            rows.add(new PairRow(
                    TEXTS.text("pair.methods"),
                    agreement(drawn.get().first()),
                    agreement(drawn.get().second()),
                    TEXTS.text("pair.methods.advice"),
                    true,
                    false,
                    BudgetTexts.verdict(
                            drawn.get().first().agrees()
                                    ? drawn.get().second()
                                    : drawn.get().first())));
        }
    }

    private static String agreement(MethodComparison comparison) {
        return TEXTS.text(comparison.agrees() ? "pair.methods.agree" : "pair.methods.disagree");
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

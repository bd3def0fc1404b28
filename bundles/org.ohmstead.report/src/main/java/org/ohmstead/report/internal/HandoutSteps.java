// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPoint;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.internal.Evidence.Taken;
import org.ohmstead.report.internal.HandoutView.Prediction;
import org.ohmstead.report.internal.HandoutView.Step;
import org.ohmstead.testlog.budget.ReadingBudget;
import org.ohmstead.units.Decibels;

/** The steps of a handout, each with the numbers of the test; what was not measured has no step. */
final class HandoutSteps {
    private static final String WATTS = "\u00a0W";
    private static final String TIMES = " \u00d7 ";
    private static final String DECIBELS = "\u00a0dB";

    private final Speech speech;
    private final ResultsSheet sheet;
    private final List<Prediction> predictions = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();

    HandoutSteps(Speech speech, ResultsSheet sheet) {
        this.speech = speech;
        this.sheet = sheet;
    }

    List<Prediction> predictions() {
        return List.copyOf(predictions);
    }

    List<Step> steps() {
        return List.copyOf(steps);
    }

    /** Adds all steps that the readings can show. */
    void explain(Example example, LevelCharts charts) {
        power(example);
        example.lowerSupply().ifPresent(lower -> supply(example, lower));
        example.halfLoad().ifPresent(half -> load(example, half));
        example.bridged().ifPresent(bridged -> bridge(example, bridged));
        distortion(example, charts);
        example.burst().ifPresent(burst -> burst(example, burst));
        heat(example);
        uncertainty(example);
        verdict();
    }

    private void add(String key, String formula, List<String> worked, String measured, String meaning) {
        add(key, formula, worked, measured, meaning, List.of());
    }

    private void add(
            String key, String formula, List<String> worked, String measured, String meaning, List<Chart> charts) {
        String start = "step." + key + ".";
        steps.add(new Step(
                steps.size() + 1,
                speech.text(start + "title"),
                speech.text(start + "idea"),
                formula,
                speech.text(start + "symbols"),
                speech.text(start + "source"),
                worked,
                measured,
                meaning,
                charts));
    }

    /** Asks what the next step will answer. */
    private void ask(String key, String unit, Object... known) {
        predictions.add(new Prediction(steps.size() + 1, speech.text("step." + key + ".question", known), unit));
    }

    private String watts(double value) {
        return speech.significant(value, 4) + WATTS;
    }

    private String factor(double value) {
        return speech.significant(value, 3);
    }

    /** Returns the one result that all questions start from. */
    String given(Example example) {
        return speech.text(
                "handout.given",
                speech.within(example.main().reading().mode()),
                speech.ohms(example.loadOhms()),
                speech.volts(example.main().aimedVolts()),
                speech.of(example.main().reading().endPoint()),
                watts(example.channel().powerWatts()),
                example.channel().channel());
    }

    private void power(Example example) {
        ChannelReading channel = example.channel();
        double volts = Math.sqrt(channel.powerWatts() * channel.loadOhms());
        String power = watts(channel.powerWatts());
        String ohms = speech.significant(channel.loadOhms(), 4) + "\u00a0\u03a9";
        ask("power", "V", power, ohms);
        add(
                "power",
                "<i>P</i> = <i>U</i><sup>2</sup> / <i>R</i>, &#160; <i>U</i> = \u221a(<i>P</i> \u00b7 <i>R</i>)",
                List.of(
                        "U = \u221a(" + power + TIMES + ohms + ") = " + speech.significant(volts, 4) + "\u00a0V",
                        "\u00db = \u221a2 \u00b7 U = " + speech.significant(Math.sqrt(2) * volts, 4) + "\u00a0V",
                        "I = U / R = " + speech.significant(volts / channel.loadOhms(), 3) + "\u00a0A"),
                speech.text("step.power.measured", speech.significant(channel.outputVoltsRms(), 4) + "\u00a0V"),
                speech.text("step.power.meaning"));
    }

    private void supply(Example example, Taken lower) {
        ChannelReading low = lower.reading().weakestChannel();
        ChannelReading high = example.channel();
        double ratio = low.supplyVolts() / high.supplyVolts();
        double expected = high.powerWatts() * ratio * ratio;
        String lowVolts = speech.fixed(low.supplyVolts(), 2) + "\u00a0V";
        String highVolts = speech.fixed(high.supplyVolts(), 2) + "\u00a0V";
        ask("supply", "W", lowVolts, highVolts);
        add(
                "supply",
                "<i>P</i><sub>2</sub> / <i>P</i><sub>1</sub> = (<i>U</i><sub>2</sub> / <i>U</i><sub>1</sub>)<sup>2</sup>",
                List.of(
                        "(" + lowVolts + " / " + highVolts + ")\u00b2 = " + factor(ratio * ratio) + "  =  "
                                + speech.signed(Decibels.ofFieldRatio(ratio), 2) + DECIBELS,
                        watts(high.powerWatts()) + TIMES + factor(ratio * ratio) + " = " + watts(expected)),
                measured(expected, low.powerWatts()),
                speech.text(closeness("step.supply.meaning", low.powerWatts() / expected)));
    }

    /** Returns what was measured beside what the rule of thumb gave. */
    private String measured(double expected, double found) {
        return speech.text(
                "handout.measured", watts(found), speech.signed((found / expected - 1) * 100, 1) + "\u00a0%");
    }

    private static String closeness(String key, double ratio) {
        if (ratio > 1.03) {
            return key + ".more";
        }
        return ratio < 0.97 ? key + ".less" : key + ".same";
    }

    private void load(Example example, Taken half) {
        double single = example.channel().powerWatts();
        double found = half.reading().weakestChannel().powerWatts();
        double factor = example.loadOhms() / half.reading().nominalLoadOhms();
        ask("load", "W", speech.ohms(half.reading().nominalLoadOhms()));
        add(
                "load",
                "<i>P</i><sub>2</sub> / <i>P</i><sub>1</sub> = <i>R</i><sub>1</sub> / <i>R</i><sub>2</sub>",
                List.of(watts(single) + TIMES + factor(factor) + " = " + watts(single * factor)),
                measured(single * factor, found),
                speech.text(closeness("step.load.meaning", found / (single * factor))));
    }

    private void bridge(Example example, Taken bridged) {
        double found = bridged.reading().weakestChannel().powerWatts();
        double single = example.channel().powerWatts();
        String halfOhms = speech.ohms(example.loadOhms() / 2);
        ask("bridge", "W", speech.ohms(example.loadOhms()));
        List<String> worked = new ArrayList<>();
        worked.add(speech.text("step.bridge.ideal", watts(4 * single)));
        Optional<Double> half =
                example.halfLoad().map(taken -> taken.reading().weakestChannel().powerWatts());
        half.ifPresent(power -> worked.add(speech.text("step.bridge.half", halfOhms, watts(power), watts(2 * power))));
        double expected = half.map(power -> 2 * power).orElse(4 * single);
        add(
                "bridge",
                "<i>P</i><sub>B</sub>(<i>R</i>) = 2 \u00b7 <i>P</i>(<i>R</i> / 2)",
                worked,
                measured(expected, found),
                speech.text("step.bridge.meaning", halfOhms));
    }

    private void distortion(Example example, LevelCharts charts) {
        ChannelReading channel = example.channel();
        double ratio = channel.thdFRatio();
        double fundamental = channel.outputVoltsRms() / Math.sqrt(1 + ratio * ratio);
        double harmonics = fundamental * ratio;
        String limit = example.main().reading().endPoint() instanceof EndPoint.DistortionLimit given
                ? speech.percent(given.ratio(), 3)
                : speech.percent(ratio, 3);
        ask("distortion", "%", limit);
        add(
                "distortion",
                "THD<sub>F</sub> = \u221a(<i>U</i><sub>2</sub><sup>2</sup> + <i>U</i><sub>3</sub><sup>2</sup> + \u2026)"
                        + " / <i>U</i><sub>1</sub>",
                List.of(
                        speech.percent(ratio, 3) + TIMES + speech.significant(fundamental, 4) + "\u00a0V = "
                                + speech.significant(harmonics, 3) + "\u00a0V",
                        speech.text(
                                "step.distortion.power",
                                speech.percent(ratio, 3),
                                speech.percent(ratio * ratio, 2),
                                speech.fixed(Decibels.ofFieldRatio(ratio), 0) + DECIBELS)),
                "",
                speech.text("step.distortion.meaning"),
                charts.sweep(example.main()));
    }

    private void burst(Example example, Taken burst) {
        double found = burst.reading().weakestChannel().powerWatts();
        double steady = example.channel().powerWatts();
        ask("burst", "dB", speech.of(burst.reading().stimulus()));
        double decibels = Decibels.ofPowerRatio(found / steady);
        add(
                "burst",
                "10 log<sub>10</sub>(<i>P</i><sub>2</sub> / <i>P</i><sub>1</sub>) dB",
                List.of("10 log(" + watts(found) + " / " + watts(steady) + ") = " + speech.signed(decibels, 2)
                        + DECIBELS),
                "",
                speech.text(closeness("step.burst.meaning", found / steady)));
    }

    private void heat(Example example) {
        ChannelReading channel = example.channel();
        OptionalDouble amps = channel.supplyAmps();
        double out = example.main().reading().channels().stream()
                .mapToDouble(ChannelReading::powerWatts)
                .sum();
        double in = amps.orElse(0) * channel.supplyVolts();
        if (!(in > out)) {
            return;
        }
        ask("heat", "W", watts(out));
        add(
                "heat",
                "<i>\u03b7</i> = <i>P</i><sub>2</sub> / <i>P</i><sub>1</sub>, &#160; <i>P</i><sub>H</sub> ="
                        + " <i>P</i><sub>1</sub> \u2212 <i>P</i><sub>2</sub>",
                List.of(
                        speech.fixed(channel.supplyVolts(), 2) + "\u00a0V" + TIMES
                                + speech.significant(amps.orElse(0), 3) + "\u00a0A = " + watts(in),
                        watts(out) + " / " + watts(in) + " = " + speech.percent(out / in, 2),
                        watts(in) + " \u2212 " + watts(out) + " = " + speech.significant(in - out, 3) + WATTS),
                "",
                speech.text("step.heat.meaning"));
    }

    private void uncertainty(Example example) {
        ChannelReading channel = example.channel();
        double standard = channel.standardUncertaintyWatts();
        if (!(standard > 0)) {
            return;
        }
        double confidence = sheet.project().sheet().confidence();
        double factor = ReadingBudget.of(channel).coverageFactor(confidence);
        double expanded = factor * standard;
        ask("uncertainty", "\u00b1\u00a0W");
        add(
                "uncertainty",
                "<i>U</i> = <i>k</i> \u00b7 <i>u</i>",
                List.of(
                        speech.fixed(factor, 2) + TIMES + speech.significant(standard, 2) + WATTS + " = "
                                + speech.significant(expanded, 2) + WATTS,
                        "P = " + speech.stated(channel.powerWatts(), expanded) + WATTS),
                speech.text(
                        "step.uncertainty.measured",
                        watts(channel.powerWatts() - expanded),
                        watts(channel.powerWatts() + expanded),
                        speech.percent(confidence, 4)),
                speech.text("step.uncertainty.meaning"));
    }

    private void verdict() {
        Optional<RatingResult> judged = sheet.ratings().stream()
                .filter(result -> result.outcome().isPresent())
                .findFirst();
        if (judged.isEmpty()) {
            return;
        }
        RatingOutcome outcome = judged.get().outcome().orElseThrow();
        double rated = judged.get().rating().powerWatts();
        ask("verdict", "", new RatingLines(speech).claim(judged.get().rating()));
        add(
                "verdict",
                "10 log<sub>10</sub>(<i>P</i> / <i>P</i><sub>R</sub>) dB",
                List.of(
                        new RatingLines(speech).terms(judged.get().rating()),
                        "10 log(" + watts(outcome.powerWatts()) + " / " + watts(rated) + ") = "
                                + speech.signed(outcome.differenceDb(), 2) + DECIBELS + "  =  "
                                + speech.signed((outcome.powerRatio() - 1) * 100, 1) + "\u00a0%"),
                speech.text(
                        "step.verdict.measured",
                        speech.stated(outcome.powerWatts(), outcome.expandedUncertaintyWatts()) + WATTS,
                        speech.of(outcome.verdict())),
                speech.text("step.verdict.meaning."
                                + (outcome.verdict() == Verdict.UNDECIDED ? "undecided" : "decided"))
                        + " " + speech.sentence(sheet.project().sheet().rule()));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.ohmstead.signal.Burst;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Clipping;
import org.ohmstead.signal.Harmonic;
import org.ohmstead.workbench.look.Numbers;

/** The figures of a capture as rows of text, with their definitions. */
public final class Figures {
    private final List<LoadedChannel> channels;
    private final Certainty certainty;
    private final List<Figure> rows = new ArrayList<>();

    private Figures(List<LoadedChannel> channels, Certainty certainty) {
        this.channels = channels;
        this.certainty = certainty;
    }

    /** Returns the figures of the channels; none when no channel holds a tone. */
    public static List<Figure> of(List<LoadedChannel> channels, Certainty certainty) {
        if (channels.stream().allMatch(channel -> channel.tone().isEmpty())) {
            return List.of();
        }
        Figures figures = new Figures(channels, certainty);
        figures.addLevels();
        figures.addDistortion();
        figures.addClipping();
        figures.addBurst();
        return List.copyOf(figures.rows);
    }

    private void addLevels() {
        add("frequency", "Hz", each(a -> digits(a.frequencyHz(), 7)));
        addSure(
                "rms",
                "V",
                a -> digits(a.outputVoltsRms(), 5),
                (channel, a) -> certainty.ofVoltsRms(a.outputVoltsRms()));
        if (channels.stream().anyMatch(LoadedChannel::loadKnown)) {
            addSure(
                    "power",
                    "W",
                    a -> digits(a.burst().map(Burst::powerWatts).orElse(a.powerWatts()), 4),
                    (channel, a) -> certainty.ofPower(
                            channel.index(),
                            channel.name(),
                            a.burst().map(Burst::powerWatts).orElse(a.powerWatts()),
                            a.outputVoltsRms()));
        }
        add("peak", "V", each(a -> digits(a.outputVoltsPeak(), 5)));
        add("crest", "dB", each(a -> fixed("%.2f", a.crestFactorDb())));
        add("dc", "mV", each(a -> fixed("%.2f", 1000 * a.dcVolts())));
        addSure(
                "fundamental",
                "V",
                a -> digits(a.fundamentalVoltsRms(), 5),
                (channel, a) -> certainty.ofVoltsRms(a.fundamentalVoltsRms()));
    }

    private void addDistortion() {
        add("thdF", "%", each(a -> digits(100 * a.thdFRatio(), 4)));
        add("thdR", "%", each(a -> digits(100 * a.thdRRatio(), 4)));
        add("thdN", "%", each(a -> digits(100 * a.thdPlusNoiseRRatio(), 4)), (Object[]) band());
        add("sinad", "dB", each(a -> fixed("%.2f", a.sinadDb())));
        add("noise", "mV", each(a -> digits(1000 * noiseVoltsRms(a), 4)), (Object[]) band());
    }

    private void addClipping() {
        add("clipping", "", each(a -> clippingWords(a.clipping())));
        if (anyChannel(a -> a.clipping().clipped())) {
            add(
                    "overOnset",
                    "dB",
                    each(a ->
                            a.clipping().clipped() ? fixed("%.2f", a.clipping().driveOverOnsetDb()) : ""));
            add(
                    "timeClipped",
                    "%",
                    each(a -> a.clipping().clipped()
                            ? fixed("%.1f", 100 * a.clipping().flatShare())
                            : ""));
        }
    }

    private void addBurst() {
        if (!anyChannel(a -> a.burst().isPresent())) {
            return;
        }
        add("burst", "ms", each(a -> ofBurst(a, burst -> fixed("%.2f", 1000 * burst.onSeconds()))));
        add(
                "burstPeriod",
                "ms",
                each(a -> ofBurst(
                        a,
                        burst -> burst.periodSeconds().isPresent()
                                ? fixed("%.2f", 1000 * burst.periodSeconds().getAsDouble())
                                : "")));
        add("burstCycles", "", each(a -> ofBurst(a, burst -> String.valueOf(burst.cycles()))));
    }

    /** Volts RMS in the band that are neither fundamental nor listed harmonic. */
    static double noiseVoltsRms(ChannelAnalysis analysis) {
        double ratio = analysis.thdPlusNoiseRRatio();
        double fundamentalSquare = analysis.fundamentalVoltsRms() * analysis.fundamentalVoltsRms();
        double rest = ratio < 1 ? fundamentalSquare * ratio * ratio / (1 - ratio * ratio) : 0;
        double harmonics = 0;
        for (Harmonic harmonic : analysis.harmonics()) {
            if (harmonic.order() * analysis.frequencyHz() >= analysis.bandLowHz()) {
                harmonics += harmonic.ratioToFundamental() * harmonic.ratioToFundamental() * fundamentalSquare;
            }
        }
        return Math.sqrt(Math.max(0, rest - harmonics));
    }

    static String clippingWords(Clipping clipping) {
        if (!clipping.clipped()) {
            return Texts.say("clipping.none");
        }
        boolean upper = clipping.positiveDriveDb() > 0;
        boolean lower = clipping.negativeDriveDb() > 0;
        return Texts.say(upper && lower ? "clipping.both" : upper ? "clipping.upper" : "clipping.lower");
    }

    /** The ends of the band in which everything but the fundamental counts, those of the first channel that holds a tone. */
    private String[] band() {
        return channels.stream()
                .flatMap(channel -> channel.tone().stream())
                .map(LoadedChannel.Tone::analysis)
                .map(analysis -> new String[] {
                    Numbers.format("%.0f", analysis.bandLowHz()), Numbers.format("%.0f", analysis.bandHighHz())
                })
                .findFirst()
                .orElseThrow();
    }

    private boolean anyChannel(Function<ChannelAnalysis, Boolean> test) {
        return channels.stream()
                .flatMap(channel -> channel.tone().stream())
                .anyMatch(tone -> test.apply(tone.analysis()));
    }

    private List<String> each(Function<ChannelAnalysis, String> figure) {
        return channels.stream()
                .map(channel -> channel.tone()
                        .map(tone -> figure.apply(tone.analysis()))
                        .orElse(""))
                .toList();
    }

    private static String ofBurst(ChannelAnalysis analysis, Function<Burst, String> figure) {
        return analysis.burst().map(figure).orElse("");
    }

    private void add(String key, String unit, List<String> values, Object... definitionArguments) {
        rows.add(new Figure(name(key), unit, values, definition(key, definitionArguments), List.of()));
    }

    private static String name(String key) {
        return Texts.say("figure." + key);
    }

    private static String definition(String key, Object... arguments) {
        return Texts.say("figure." + key + ".what", arguments);
    }

    private void addSure(
            String key,
            String unit,
            Function<ChannelAnalysis, String> figure,
            BiFunction<LoadedChannel, ChannelAnalysis, String> sure) {
        List<String> sentences = channels.stream()
                .map(channel -> channel.tone()
                        .map(tone -> sure.apply(channel, tone.analysis()))
                        .orElse(""))
                .toList();
        rows.add(new Figure(name(key), unit, each(figure), definition(key), sentences));
    }

    private static String digits(double value, int count) {
        return Numbers.digits(value, count);
    }

    private static String fixed(String format, double value) {
        String text = Numbers.format(format, value);
        // Rounded to nothing, a value has no sign.
        return text.matches("-[0.,]+") ? text.substring(1) : text;
    }
}

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
        add(
                "Frequency",
                "Hz",
                each(a -> digits(a.frequencyHz(), 7)),
                "Of the tone, from a least-squares fit with its"
                        + " harmonics (the sine fit of IEEE Std 1057, extended).");
        addSure(
                "Output, RMS",
                "V",
                a -> digits(a.outputVoltsRms(), 5),
                "Root mean square over whole cycles, direct voltage taken off, everything else included.",
                (channel, a) -> certainty.ofVoltsRms(a.outputVoltsRms()));
        if (channels.stream().anyMatch(LoadedChannel::loadKnown)) {
            addSure(
                    "Power",
                    "W",
                    a -> digits(a.burst().map(Burst::powerWatts).orElse(a.powerWatts()), 4),
                    "Real power in the load: V\u00b2 Re(Y); with a resistance V\u00b2/R. Of a burst, inside the"
                            + " bursts.",
                    (channel, a) -> certainty.ofPower(
                            channel.index(),
                            channel.name(),
                            a.burst().map(Burst::powerWatts).orElse(a.powerWatts()),
                            a.outputVoltsRms()));
        }
        add(
                "Output, peak",
                "V",
                each(a -> digits(a.outputVoltsPeak(), 5)),
                "Largest distance of a sample from the"
                        + " direct voltage; between samples the wave may reach higher.");
        add(
                "Crest factor",
                "dB",
                each(a -> fixed("%.2f", a.crestFactorDb())),
                "20 log10 of peak over RMS; 3.01 dB for a" + " sine.");
        add("Direct voltage", "mV", each(a -> fixed("%.2f", 1000 * a.dcVolts())), "Constant part of the fitted wave.");
        addSure(
                "Fundamental, RMS",
                "V",
                a -> digits(a.fundamentalVoltsRms(), 5),
                "Root mean square of the fundamental alone.",
                (channel, a) -> certainty.ofVoltsRms(a.fundamentalVoltsRms()));
    }

    private void addDistortion() {
        add(
                "THD_F",
                "%",
                each(a -> digits(100 * a.thdFRatio(), 4)),
                "Total harmonic distortion: root of the sum of the"
                        + " squared harmonics that the table lists, over the fundamental.");
        add(
                "THD_R",
                "%",
                each(a -> digits(100 * a.thdRRatio(), 4)),
                "The same over the root mean square of fundamental" + " and harmonics: F/\u221a(1+F\u00b2).");
        add(
                "THD+N",
                "%",
                each(a -> digits(100 * a.thdPlusNoiseRRatio(), 4)),
                band("Everything in the band but the" + " fundamental, over everything in the band"));
        add("SINAD", "dB", each(a -> fixed("%.2f", a.sinadDb())), "-20 log10 of THD+N, at most 320 dB.");
        add(
                "Noise, RMS",
                "mV",
                each(a -> digits(1000 * noiseVoltsRms(a), 4)),
                band("What remains in the band without the"
                        + " fundamental and the listed harmonics: \u221a(rest\u00b2 - harmonics\u00b2)"));
    }

    private void addClipping() {
        add(
                "Clipping",
                "",
                each(a -> clippingWords(a.clipping())),
                "Whether the harmonics are those of a sine whose tops"
                        + " are cut off, judged from their proportions and signs.");
        if (anyChannel(a -> a.clipping().clipped())) {
            add(
                    "Drive over onset",
                    "dB",
                    each(a ->
                            a.clipping().clipped() ? fixed("%.2f", a.clipping().driveOverOnsetDb()) : ""),
                    "20 log10 of the peak that the sine would have, over the limit of the more deeply cut side.");
            add(
                    "Time clipped",
                    "%",
                    each(a -> a.clipping().clipped()
                            ? fixed("%.1f", 100 * a.clipping().flatShare())
                            : ""),
                    "Share of the time on the limits: for a symmetric limit k of the peak, 1 - 2 asin(k)/\u03c0.");
        }
    }

    private void addBurst() {
        if (!anyChannel(a -> a.burst().isPresent())) {
            return;
        }
        add(
                "Burst",
                "ms",
                each(a -> ofBurst(a, burst -> fixed("%.2f", 1000 * burst.onSeconds()))),
                "How long a burst" + " lasts. All other figures are of the inside of the first whole burst.");
        add(
                "Burst period",
                "ms",
                each(a -> ofBurst(
                        a,
                        burst -> burst.periodSeconds().isPresent()
                                ? fixed("%.2f", 1000 * burst.periodSeconds().getAsDouble())
                                : "")),
                "From one burst to the next; empty when the capture holds only one.");
        add("Cycles in a burst", "", each(a -> ofBurst(a, burst -> String.valueOf(burst.cycles()))), "Whole cycles.");
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
            return "none";
        }
        boolean upper = clipping.positiveDriveDb() > 0;
        boolean lower = clipping.negativeDriveDb() > 0;
        return upper && lower ? "both sides" : upper ? "upper side" : "lower side";
    }

    private String band(String sentence) {
        return channels.stream()
                .flatMap(channel -> channel.tone().stream())
                .findFirst()
                .map(tone -> Numbers.format(
                        "%s. Band: %.0f Hz to %.0f Hz.",
                        sentence, tone.analysis().bandLowHz(), tone.analysis().bandHighHz()))
                .orElse(sentence + ".");
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

    private void add(String name, String unit, List<String> values, String definition) {
        rows.add(new Figure(name, unit, values, definition, List.of()));
    }

    private void addSure(
            String name,
            String unit,
            Function<ChannelAnalysis, String> figure,
            String definition,
            BiFunction<LoadedChannel, ChannelAnalysis, String> sure) {
        List<String> sentences = channels.stream()
                .map(channel -> channel.tone()
                        .map(tone -> sure.apply(channel, tone.analysis()))
                        .orElse(""))
                .toList();
        rows.add(new Figure(name, unit, each(figure), definition, sentences));
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

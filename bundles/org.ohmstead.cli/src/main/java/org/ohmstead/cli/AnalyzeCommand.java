// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.signal.AnalysisSettings;
import org.ohmstead.signal.Burst;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Harmonic;
import org.ohmstead.signal.LoadImpedance;
import org.ohmstead.signal.StoredCapture;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Analyses one recorded waveform. */
@Command(
        name = "analyze",
        description = {"${bundle:analyze.does}", "", "${bundle:analyze.more}", "", "${bundle:analyze.long}", ""},
        footer = {"", "${bundle:analyze.example}"})
final class AnalyzeCommand implements Callable<Integer> {
    private static final QuantityFormat FIVE = QuantityFormat.digits(5);
    private static final QuantityFormat THREE = QuantityFormat.digits(3);

    private static final int PERCENT = 100;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "FILE", descriptionKey = "analyze.FILE")
    private Path file;

    @Option(
            names = "--volts-per-full-scale",
            paramLabel = "V",
            required = true,
            descriptionKey = "analyze.volts-per-full-scale")
    private List<String> voltsPerFullScale;

    @Option(names = "--load-ohms", paramLabel = "R", required = true, descriptionKey = "analyze.load-ohms")
    private String loadOhms;

    @Option(
            names = "--load-microhenries",
            paramLabel = "L",
            defaultValue = "0",
            descriptionKey = "analyze.load-microhenries")
    private double loadMicrohenries;

    @Option(names = "--frequency-hz", paramLabel = "F", descriptionKey = "analyze.frequency-hz")
    private String frequencyHz;

    AnalyzeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double ohms = Quantities.positive(loadOhms, Unit.OHM, "--load-ohms");
        if (!Double.isFinite(loadMicrohenries) || loadMicrohenries < 0) {
            throw new InputException(Texts.of("analyze.microhenries", loadMicrohenries));
        }
        List<Double> scales = new ArrayList<>();
        for (String text : voltsPerFullScale) {
            scales.add(Quantities.positive(text, Unit.VOLT, "--volts-per-full-scale"));
        }
        OptionalDouble frequency = frequencyHz == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(Quantities.positive(frequencyHz, Unit.HERTZ, "--frequency-hz"));
        LoadImpedance load = loadMicrohenries > 0
                ? new LoadImpedance.SeriesInductance(ohms, loadMicrohenries * 1e-6)
                : new LoadImpedance.Resistance(ohms);
        AnalysisSettings settings = AnalysisSettings.forLoad(load);
        if (frequency.isPresent()) {
            settings = settings.withFrequencyHz(frequency.getAsDouble());
        }
        try (StoredCapture capture = StoredCapture.open(
                file, scales.stream().mapToDouble(Double::doubleValue).toArray())) {
            List<ChannelAnalysis> channels = new ArrayList<>();
            for (int i = 0; i < capture.channels(); i++) {
                channels.add(analyze(capture, i, settings));
            }
            if (json.wanted()) {
                console.json(document(capture, channels));
            } else {
                print(capture, channels);
            }
        }
        return ExitCodes.DONE;
    }

    private ChannelAnalysis analyze(StoredCapture capture, int channel, AnalysisSettings settings)
            throws InputException {
        console.progress(channel + 1, capture.channels(), Texts.of("analyze.progress"));
        String percent = Texts.of("analyze.percent", (char) ('A' + channel), capture.sourceName());
        try {
            return capture.analyze(
                    channel, settings, share -> console.progress((int) (PERCENT * share), PERCENT, percent));
        } catch (CaptureException e) {
            throw new InputException(
                    Texts.of("analyze.fault", file.getFileName(), (char) ('A' + channel), e.getMessage()));
        }
    }

    private static ObjectNode document(StoredCapture capture, List<ChannelAnalysis> channels) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("file", capture.sourceName());
        root.put("format", capture.formatText());
        ArrayNode list = root.putArray("channels");
        for (ChannelAnalysis analysis : channels) {
            ObjectNode channel = list.addObject();
            channel.put("frequencyHz", analysis.frequencyHz());
            channel.put("outputVoltsRms", analysis.outputVoltsRms());
            channel.put("outputVoltsPeak", analysis.outputVoltsPeak());
            channel.put("dcVolts", analysis.dcVolts());
            channel.put("crestFactorDb", analysis.crestFactorDb());
            channel.put("powerWatts", analysis.powerWatts());
            channel.put("fundamentalPowerWatts", analysis.fundamentalPowerWatts());
            channel.put("thdFRatio", analysis.thdFRatio());
            channel.put("thdRRatio", analysis.thdRRatio());
            channel.put("thdPlusNoiseRRatio", analysis.thdPlusNoiseRRatio());
            channel.put("sinadDb", analysis.sinadDb());
            ArrayNode harmonics = channel.putArray("harmonics");
            for (Harmonic harmonic : analysis.harmonics()) {
                harmonics
                        .addObject()
                        .put("order", harmonic.order())
                        .put("ratioToFundamental", harmonic.ratioToFundamental())
                        .put("phaseDegrees", harmonic.phaseDegrees());
            }
            channel.putObject("clipping")
                    .put("clipped", analysis.clipping().clipped())
                    .put("driveOverOnsetDb", analysis.clipping().driveOverOnsetDb())
                    .put("flatShare", analysis.clipping().flatShare());
            if (analysis.burst().isPresent()) {
                burst(channel.putObject("burst"), analysis.burst().get());
            } else {
                channel.putNull("burst");
            }
            channel.put("bandLowHz", analysis.bandLowHz());
            channel.put("bandHighHz", analysis.bandHighHz());
            ArrayNode notes = channel.putArray("notes");
            analysis.notes().forEach(notes::add);
        }
        return root;
    }

    private static void burst(ObjectNode node, Burst burst) {
        node.put("onSeconds", burst.onSeconds());
        if (burst.periodSeconds().isPresent()) {
            node.put("periodSeconds", burst.periodSeconds().getAsDouble());
        } else {
            node.putNull("periodSeconds");
        }
        node.put("powerWatts", burst.powerWatts());
        node.put("meanPowerWatts", burst.meanPowerWatts());
    }

    private void print(StoredCapture capture, List<ChannelAnalysis> channels) {
        console.line(capture.sourceName() + "  (" + capture.formatText() + ")");
        for (int i = 0; i < channels.size(); i++) {
            ChannelAnalysis analysis = channels.get(i);
            console.line("");
            console.line(Texts.of("analyze.channel", (char) ('A' + i)));
            row(Texts.of("analyze.frequency"), FIVE.format(new Quantity(analysis.frequencyHz(), Unit.HERTZ)));
            row(
                    Texts.of("analyze.output"),
                    Texts.of(
                            "analyze.volts",
                            FIVE.format(new Quantity(analysis.outputVoltsRms(), Unit.VOLT)),
                            FIVE.format(new Quantity(analysis.outputVoltsPeak(), Unit.VOLT)),
                            THREE.format(new Quantity(shown(analysis.dcVolts()), Unit.VOLT))));
            row(Texts.of("analyze.crest"), Texts.fixed(analysis.crestFactorDb(), 2) + " dB");
            row(Texts.of("analyze.power"), FIVE.format(new Quantity(analysis.powerWatts(), Unit.WATT)));
            row(
                    Texts.of("analyze.distortion"),
                    Texts.of(
                            "analyze.thd",
                            THREE.format(100 * analysis.thdFRatio()),
                            THREE.format(100 * analysis.thdPlusNoiseRRatio()),
                            Texts.number(analysis.bandLowHz()),
                            Texts.number(analysis.bandHighHz()),
                            analysis.highestHarmonicCounted()));
            row("SINAD", Texts.fixed(analysis.sinadDb(), 1) + " dB");
            row(Texts.of("analyze.clipping"), clipping(analysis));
            analysis.burst().ifPresent(burst -> row(Texts.of("analyze.burst"), burstText(burst)));
            analysis.notes().forEach(note -> row(Texts.of("analyze.note"), note));
        }
    }

    /** A direct voltage of less than a microvolt is rounding, not something to read. */
    private static double shown(double dcVolts) {
        return Math.abs(dcVolts) < 1e-6 ? 0 : dcVolts;
    }

    private static String clipping(ChannelAnalysis analysis) {
        return analysis.clipping().clipped()
                ? Texts.of(
                        "analyze.overOnset",
                        Texts.fixed(analysis.clipping().driveOverOnsetDb(), 2),
                        Texts.fixed(100 * analysis.clipping().flatShare(), 1))
                : Texts.of("analyze.notClipped");
    }

    private static String burstText(Burst burst) {
        String power = FIVE.format(new Quantity(burst.powerWatts(), Unit.WATT));
        String on = THREE.format(new Quantity(burst.onSeconds(), Unit.SECOND));
        String mean = FIVE.format(new Quantity(burst.meanPowerWatts(), Unit.WATT));
        return burst.periodSeconds().isPresent()
                ? Texts.of(
                        "analyze.bursts",
                        power,
                        on,
                        THREE.format(new Quantity(burst.periodSeconds().getAsDouble(), Unit.SECOND)),
                        mean)
                : Texts.of("analyze.oneBurst", power, on, mean);
    }

    private void row(String name, String value) {
        console.line(Texts.row(name, value));
    }
}

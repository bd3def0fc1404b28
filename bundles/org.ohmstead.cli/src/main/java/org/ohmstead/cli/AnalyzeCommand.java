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
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.signal.Harmonic;
import org.ohmstead.signal.LoadImpedance;
import org.ohmstead.signal.WaveformAnalyzer;
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
        description = {
            "Analyse a recorded waveform: volts, power, distortion, clipping, tone bursts.",
            "",
            "Works on a WAV file (16, 24, 32 bit or float) or a CSV file (time in seconds, then one column for each channel)."
                    + " The tone's frequency is found by itself; harmonics up to the 20th within 20 Hz to 20 kHz count as distortion."
                    + " A tone burst is evaluated inside the burst only, over whole cycles.",
            ""
        },
        footer = {
            "",
            "Example: ohmstead analyze capture.wav --volts-per-full-scale 50 --load-ohms 4R0",
        })
final class AnalyzeCommand implements Callable<Integer> {
    private static final QuantityFormat FIVE = QuantityFormat.digits(5);
    private static final QuantityFormat THREE = QuantityFormat.digits(3);

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "FILE", description = "The recorded waveform.")
    private Path file;

    @Option(
            names = "--volts-per-full-scale",
            paramLabel = "V",
            required = true,
            description = "Volts that full scale stands for; give it again for each further channel that differs."
                    + " In a CSV file it multiplies the columns: 1 if they are in volts.")
    private List<String> voltsPerFullScale;

    @Option(
            names = "--load-ohms",
            paramLabel = "R",
            required = true,
            description = "Load resistance as seen from the terminals, for example 4, 4R02 or 0R5.")
    private String loadOhms;

    @Option(
            names = "--load-microhenries",
            paramLabel = "L",
            defaultValue = "0",
            description = "Inductance in series with it; power is then that of the real part (default 0).")
    private double loadMicrohenries;

    @Option(
            names = "--frequency-hz",
            paramLabel = "F",
            description = "Where to look for the tone, within 10 %%; without it the strongest component is taken.")
    private String frequencyHz;

    AnalyzeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double ohms = Quantities.positive(loadOhms, Unit.OHM, "--load-ohms");
        if (!Double.isFinite(loadMicrohenries) || loadMicrohenries < 0) {
            throw new InputException("--load-microhenries is " + loadMicrohenries + "; it must be at least 0.");
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
        Capture capture = CaptureFile.read(
                file, scales.stream().mapToDouble(Double::doubleValue).toArray());
        List<ChannelAnalysis> channels = new ArrayList<>();
        for (int i = 0; i < capture.channels().size(); i++) {
            console.progress(i + 1, capture.channels().size(), "channel");
            channels.add(analyze(capture, i, settings));
        }
        if (json.wanted()) {
            console.json(document(capture, channels));
        } else {
            print(capture, channels);
        }
        return ExitCodes.DONE;
    }

    private ChannelAnalysis analyze(Capture capture, int channel, AnalysisSettings settings) throws InputException {
        try {
            return WaveformAnalyzer.analyze(capture.channels().get(channel), settings);
        } catch (CaptureException e) {
            throw new InputException(
                    file.getFileName() + ", channel " + (char) ('A' + channel) + ": " + e.getMessage());
        }
    }

    private static ObjectNode document(Capture capture, List<ChannelAnalysis> channels) {
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

    private void print(Capture capture, List<ChannelAnalysis> channels) {
        console.line(capture.sourceName() + "  (" + capture.formatText() + ")");
        for (int i = 0; i < channels.size(); i++) {
            ChannelAnalysis analysis = channels.get(i);
            console.line("");
            console.line("Channel " + (char) ('A' + i));
            row("frequency", FIVE.format(new Quantity(analysis.frequencyHz(), Unit.HERTZ)));
            row(
                    "output",
                    FIVE.format(new Quantity(analysis.outputVoltsRms(), Unit.VOLT)) + " RMS, "
                            + FIVE.format(new Quantity(analysis.outputVoltsPeak(), Unit.VOLT)) + " peak, "
                            + THREE.format(new Quantity(shown(analysis.dcVolts()), Unit.VOLT)) + " direct");
            row("crest factor", Texts.fixed(analysis.crestFactorDb(), 2) + " dB");
            row("power", FIVE.format(new Quantity(analysis.powerWatts(), Unit.WATT)));
            row(
                    "distortion",
                    THREE.format(100 * analysis.thdFRatio()) + " % THD_F, "
                            + THREE.format(100 * analysis.thdPlusNoiseRRatio()) + " % THD+N ("
                            + Texts.number(analysis.bandLowHz()) + " Hz to " + Texts.number(analysis.bandHighHz())
                            + " Hz), harmonics 2 to " + analysis.highestHarmonicCounted());
            row("SINAD", Texts.fixed(analysis.sinadDb(), 1) + " dB");
            row("clipping", clipping(analysis));
            analysis.burst().ifPresent(burst -> row("burst", burstText(burst)));
            analysis.notes().forEach(note -> row("note", note));
        }
    }

    /** A direct voltage of less than a microvolt is rounding, not something to read. */
    private static double shown(double dcVolts) {
        return Math.abs(dcVolts) < 1e-6 ? 0 : dcVolts;
    }

    private static String clipping(ChannelAnalysis analysis) {
        return analysis.clipping().clipped()
                ? Texts.fixed(analysis.clipping().driveOverOnsetDb(), 2) + " dB over onset, flat for "
                        + Texts.fixed(100 * analysis.clipping().flatShare(), 1) + " % of the time"
                : "none";
    }

    private static String burstText(Burst burst) {
        String period = burst.periodSeconds().isPresent()
                ? " every " + THREE.format(new Quantity(burst.periodSeconds().getAsDouble(), Unit.SECOND))
                : "";
        return FIVE.format(new Quantity(burst.powerWatts(), Unit.WATT)) + " for "
                + THREE.format(new Quantity(burst.onSeconds(), Unit.SECOND)) + period + ", mean "
                + FIVE.format(new Quantity(burst.meanPowerWatts(), Unit.WATT));
    }

    private void row(String name, String value) {
        console.line(String.format("  %-13s %s", name, value));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.stimulus.Alignment;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds in a recording what was played. */
@Command(
        name = "align",
        description = {"${bundle:signal.align.does}", ""},
        footer = {"", "${bundle:signal.align.exit}", "${bundle:signal.align.example}"})
final class SignalAlignCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "CAPTURE", descriptionKey = "signal.align.CAPTURE")
    private Path capture;

    @Option(names = "--played", paramLabel = "FILE", required = true, descriptionKey = "signal.align.played")
    private Path played;

    @Option(names = "--channel", paramLabel = "N", defaultValue = "1", descriptionKey = "signal.align.channel")
    private int channel;

    @Option(names = "--cut", paramLabel = "OUT.wav", descriptionKey = "signal.align.cut")
    private Path cut;

    SignalAlignCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Capture original = CaptureFile.read(played, new double[] {1});
        Capture recording = CaptureFile.read(capture, new double[] {1});
        if (channel < 1 || channel > recording.channels().size()) {
            throw new InputException(Texts.of(
                    "align.channel",
                    channel,
                    capture.getFileName(),
                    recording.channels().size()));
        }
        Waveform wave = recording.channels().get(channel - 1);
        Alignment alignment = Alignment.find(loudest(original), wave);
        if (alignment instanceof Alignment.Missed missed) {
            if (json.wanted()) {
                console.json(JsonNodeFactory.instance
                        .objectNode()
                        .put("found", false)
                        .put("reason", missed.key()));
            }
            console.message(missed.sentence());
            return ExitCodes.FELL_SHORT;
        }
        Alignment.Found found = (Alignment.Found) alignment;
        if (cut != null) {
            write(recording, found);
        }
        if (json.wanted()) {
            console.json(document(found));
        } else {
            print(found);
        }
        return ExitCodes.DONE;
    }

    /** A file whose first channel is silent has its markers in the second. */
    private static Waveform loudest(Capture original) {
        Waveform best = original.channels().get(0);
        double most = 0;
        for (Waveform each : original.channels()) {
            double peak = 0;
            for (int i = 0; i < each.size(); i++) {
                peak = Math.max(peak, Math.abs(each.voltsAt(i)));
            }
            if (peak > most) {
                most = peak;
                best = each;
            }
        }
        return best;
    }

    private void write(Capture recording, Alignment.Found found) throws Exception {
        if (found.signalFromSeconds() >= recording.channels().get(0).durationSeconds()) {
            throw new InputException(Texts.of("align.short", capture.getFileName()));
        }
        List<Waveform> parts =
                recording.channels().stream().map(found::signalOf).toList();
        WavFile.writeFloat(cut, new Capture(parts, recording.sourceName(), recording.formatText()), new double[] {1});
    }

    private void print(Alignment.Found found) {
        console.line(Texts.of("align.head", capture.getFileName(), played.getFileName()));
        row(
                Texts.of("align.signal"),
                Texts.of(
                        "align.from",
                        Texts.fixed(found.signalFromSeconds(), 6),
                        Texts.fixed(found.signalToSeconds(), 6)));
        row(
                Texts.of("align.clocks"),
                found.clockPartsPerMillion().isPresent()
                        ? Texts.of(
                                "align.ppm",
                                Texts.fixed(found.clockPartsPerMillion().getAsDouble(), 2))
                        : Texts.of("align.noEnd"));
        row(
                Texts.of("align.gain"),
                Texts.of(
                        found.inverted() ? "align.inverted" : "align.kept",
                        Texts.fixed(20 * Math.log10(found.gainRatio()), 3)));
        row(Texts.of("align.match"), Texts.of("align.share", Texts.fixed(100 * found.match(), 1)));
        if (cut != null) {
            row(Texts.of("align.cut"), cut.toString());
        }
    }

    private void row(String name, String value) {
        console.line(Texts.row(name, value));
    }

    private static ObjectNode document(Alignment.Found found) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("found", true);
        root.put("startMarkerSeconds", found.startMarkerSeconds());
        if (found.endMarkerSeconds().isPresent()) {
            root.put("endMarkerSeconds", found.endMarkerSeconds().getAsDouble());
            root.put("clockRatio", found.clockRatio().orElseThrow());
        } else {
            root.putNull("endMarkerSeconds");
            root.putNull("clockRatio");
        }
        root.put("signalFromSeconds", found.signalFromSeconds());
        root.put("signalToSeconds", found.signalToSeconds());
        root.put("gainRatio", found.gainRatio());
        root.put("inverted", found.inverted());
        root.put("match", found.match());
        return root;
    }
}

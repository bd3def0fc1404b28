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
        description = {
            "Find the markers of a played file in a recording: when the signal begins and ends, how the clocks of player and recorder differ,"
                    + " gain and polarity.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when the markers are not found, or belong to another file.",
            "Example: ohmstead signal align recording.wav --played sweep.wav --cut signal.wav"
        })
final class SignalAlignCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "CAPTURE", description = "The recording, WAV or CSV.")
    private Path capture;

    @Option(
            names = "--played",
            paramLabel = "FILE",
            required = true,
            description = "The file that was played, made with --markers.")
    private Path played;

    @Option(
            names = "--channel",
            paramLabel = "N",
            defaultValue = "1",
            description = "The channel of the recording to look at, from 1 (default 1).")
    private int channel;

    @Option(
            names = "--cut",
            paramLabel = "OUT.wav",
            description = "Write the part of the recording that holds the signal, as floating-point samples.")
    private Path cut;

    SignalAlignCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Capture original = CaptureFile.read(played, new double[] {1});
        Capture recording = CaptureFile.read(capture, new double[] {1});
        if (channel < 1 || channel > recording.channels().size()) {
            throw new InputException("--channel is " + channel + "; " + capture.getFileName() + " has "
                    + recording.channels().size() + ".");
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
            throw new InputException(capture.getFileName() + " ends before the signal begins. Record for longer.");
        }
        List<Waveform> parts =
                recording.channels().stream().map(found::signalOf).toList();
        WavFile.writeFloat(cut, new Capture(parts, recording.sourceName(), recording.formatText()), new double[] {1});
    }

    private void print(Alignment.Found found) {
        console.line(capture.getFileName() + "  holds " + played.getFileName());
        row(
                "signal",
                "from " + Texts.fixed(found.signalFromSeconds(), 6) + " s to " + Texts.fixed(found.signalToSeconds(), 6)
                        + " s");
        row(
                "clocks",
                found.clockPartsPerMillion().isPresent()
                        ? "the recorder counts "
                                + Texts.fixed(found.clockPartsPerMillion().getAsDouble(), 2)
                                + " ppm more than the player"
                        : "not known: the recording ends before the end marker");
        row(
                "gain",
                Texts.fixed(20 * Math.log10(found.gainRatio()), 3) + " dB, polarity "
                        + (found.inverted() ? "inverted" : "kept"));
        row("match", Texts.fixed(100 * found.match(), 1) + " % of what is there is the marker");
        if (cut != null) {
            row("cut", cut.toString());
        }
    }

    private void row(String name, String value) {
        console.line(String.format("  %-13s %s", name, value));
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

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.stimulus.SignalFile;
import org.ohmstead.signal.stimulus.SignalLayout;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.signal.stimulus.StimulusFacts;
import org.ohmstead.signal.stimulus.StimulusRemark;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a file of a test signal. */
@Command(
        name = "make",
        description = {
            "Make a WAV file of a test signal with an exact level.",
            "",
            "The kinds and their settings are listed by ohmstead signal list; settings that are left out are as usual.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when the file was made but something falls short, such as a burst without a whole cycle.",
            "Example: ohmstead signal make sine tone.wav frequency=1kHz level=-10dB length=30s",
            "Example: ohmstead signal make tone-bursts bursts.wav frequency=50Hz on=20ms period=500ms between=-20dB",
            "Example: ohmstead signal make log-sweep sweep.wav --markers"
        })
final class SignalMakeCommand implements Callable<Integer> {
    /** Remarks that tell of a signal which does not do what was asked for. */
    private static final List<String> SHORTCOMINGS = List.of("burstShort", "burstParts", "crestMissed");

    private static final int PERCENT = 100;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private StimulusOptions signal;

    @Mixin
    private FileOptions stored;

    @Parameters(index = "0", paramLabel = "KIND", description = "The kind of signal, such as sine.")
    private String kind;

    @Parameters(index = "1", paramLabel = "OUT.wav", description = "The file; replaced when it is there.")
    private Path file;

    @Parameters(index = "2..*", arity = "0..*", paramLabel = "NAME=VALUE", description = "Settings.")
    private List<String> settings;

    @Option(
            names = "--markers",
            description = "Put markers and a leader of 1 kHz around the signal, so that a recording can be aligned.")
    private boolean markers;

    SignalMakeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Stimulus stimulus = signal.stimulus(kind, settings);
        SignalFile made = new SignalFile(
                stimulus, stored.format(SampleFormat.INTEGER_24), stored.channels(), markers, stored.seed());
        SignalFile.Written written = made.write(file, ratio -> {
            console.progress((int) (PERCENT * ratio), PERCENT, "writing");
            return true;
        });
        if (json.wanted()) {
            ObjectNode root = node(made, written);
            root.put("kind", kind);
            Cautions.put(root, SignalCautions.ALL);
            console.json(root);
        } else {
            print(made, written);
        }
        boolean fellShort = made.remarks().stream().anyMatch(remark -> SHORTCOMINGS.contains(remark.key()));
        return fellShort ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private void print(SignalFile made, SignalFile.Written written) {
        StimulusFacts facts = made.stimulus().facts();
        console.line(written.file() + "  (" + made.format().text() + ", "
                + made.stimulus().sampleRateHz() + " samples per second, " + FileOptions.name(made.channels()) + ")");
        row("level", Texts.fixed(facts.rmsDbfs(), 3) + " dBFS RMS, " + Texts.fixed(facts.peakDbfs(), 3) + " dBFS peak");
        row("crest factor", Texts.fixed(facts.crestFactorDb(), 3) + " dB");
        row("frequency", frequencies(facts.frequenciesHz()));
        row("length", Texts.time(made.stimulus().durationSeconds()) + (facts.seamless() ? ", can be repeated" : ""));
        made.layout()
                .ifPresent(layout -> row(
                        "markers",
                        "signal from " + Texts.fixed((double) layout.signal() / layout.sampleRateHz(), 3) + " s to "
                                + Texts.fixed((double) layout.signalEnd() / layout.sampleRateHz(), 3)
                                + " s, markers and leader at " + Texts.fixed(made.markerDbfs(), 1) + " dBFS"));
        if (written.limited() > 0) {
            row("limited", written.limited() + " samples at the last step");
        }
        for (StimulusRemark remark : made.remarks()) {
            row("note", remark.sentence());
        }
        Cautions.print(console, SignalCautions.ALL);
    }

    private static String frequencies(List<Double> hertz) {
        List<String> texts = hertz.stream().map(Texts::number).toList();
        return Texts.some(texts) + " Hz";
    }

    private void row(String name, String value) {
        console.line(String.format("  %-13s %s", name, value));
    }

    /** Returns a file for machines. */
    static ObjectNode node(SignalFile made, SignalFile.Written written) {
        StimulusFacts facts = made.stimulus().facts();
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("file", written.file().toString());
        node.put("samples", made.format().text());
        node.put("channels", FileOptions.name(made.channels()));
        node.put("sampleRateHz", made.stimulus().sampleRateHz());
        node.put("frames", written.frames());
        node.put("signalSeconds", made.stimulus().durationSeconds());
        node.put("rmsDbfs", facts.rmsDbfs());
        node.put("peakDbfs", facts.peakDbfs());
        node.put("crestFactorDb", facts.crestFactorDb());
        ArrayNode hertz = node.putArray("frequenciesHz");
        facts.frequenciesHz().forEach(hertz::add);
        node.put("seamless", facts.seamless());
        node.put("limitedSamples", written.limited());
        if (made.layout().isPresent()) {
            SignalLayout layout = made.layout().get();
            node.putObject("layout")
                    .put("startMarker", layout.startMarker())
                    .put("leader", layout.leader())
                    .put("signal", layout.signal())
                    .put("signalEnd", layout.signalEnd())
                    .put("endMarker", layout.endMarker())
                    .put("markerDbfs", made.markerDbfs());
        }
        ArrayNode remarks = node.putArray("remarks");
        made.remarks().forEach(remark -> remarks.add(remark.sentence()));
        return node;
    }
}

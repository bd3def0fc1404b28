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
        description = {"${bundle:signal.make.does}", "", "${bundle:signal.make.more}", ""},
        footer = {
            "",
            "${bundle:signal.make.exit}",
            "${bundle:signal.make.example}",
            "${bundle:signal.make.example2}",
            "${bundle:signal.make.example3}"
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

    @Parameters(index = "0", paramLabel = "KIND", descriptionKey = "signal.make.KIND")
    private String kind;

    @Parameters(index = "1", paramLabel = "OUT.wav", descriptionKey = "signal.make.OUT")
    private Path file;

    @Parameters(index = "2..*", arity = "0..*", paramLabel = "NAME=VALUE", descriptionKey = "signal.make.NAME-VALUE")
    private List<String> settings;

    @Option(names = "--markers", descriptionKey = "signal.make.markers")
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
            console.progress((int) (PERCENT * ratio), PERCENT, Texts.of("signal.writing"));
            return true;
        });
        if (json.wanted()) {
            ObjectNode root = node(made, written);
            root.put("kind", kind);
            Cautions.put(root, SignalCautions.all());
            console.json(root);
        } else {
            print(made, written);
        }
        boolean fellShort = made.remarks().stream().anyMatch(remark -> SHORTCOMINGS.contains(remark.key()));
        return fellShort ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private void print(SignalFile made, SignalFile.Written written) {
        StimulusFacts facts = made.stimulus().facts();
        console.line(Texts.of(
                "signal.head",
                written.file(),
                made.format().text(),
                made.stimulus().sampleRateHz(),
                FileOptions.name(made.channels())));
        row(
                Texts.of("signal.level"),
                Texts.of("signal.levels", Texts.fixed(facts.rmsDbfs(), 3), Texts.fixed(facts.peakDbfs(), 3)));
        row(Texts.of("signal.crest"), Texts.fixed(facts.crestFactorDb(), 3) + " dB");
        row(Texts.of("signal.frequency"), frequencies(facts.frequenciesHz()));
        String length = Texts.time(made.stimulus().durationSeconds());
        row(Texts.of("signal.length"), facts.seamless() ? Texts.of("signal.seamless", length) : length);
        made.layout()
                .ifPresent(layout -> row(
                        Texts.of("signal.markers"),
                        Texts.of(
                                "signal.layout",
                                Texts.fixed((double) layout.signal() / layout.sampleRateHz(), 3),
                                Texts.fixed((double) layout.signalEnd() / layout.sampleRateHz(), 3),
                                Texts.fixed(made.markerDbfs(), 1))));
        if (written.limited() > 0) {
            row(Texts.of("signal.limited"), Texts.of("signal.samples", written.limited()));
        }
        for (StimulusRemark remark : made.remarks()) {
            row(Texts.of("signal.note"), remark.sentence());
        }
        Cautions.print(console, SignalCautions.all());
    }

    private static String frequencies(List<Double> hertz) {
        List<String> texts = hertz.stream().map(Texts::number).toList();
        return Texts.some(texts) + " Hz";
    }

    private void row(String name, String value) {
        console.line(Texts.row(name, value));
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

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.stimulus.SignalFile;
import org.ohmstead.signal.stimulus.SignalSet;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.signal.stimulus.StimulusRemark;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes the numbered set of test signals for a player without a computer. */
@Command(
        name = "set",
        description = {"${bundle:signal.set.does}", ""},
        footer = {"", "${bundle:signal.set.example}"})
final class SignalSetCommand implements Callable<Integer> {
    private static final double MOST_OVERLAP_DB = 40;
    private static final double LOWEST_RATE = 44_100;
    private static final double HIGHEST_RATE = 192_000;
    private static final int PERCENT = 100;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private FileOptions stored;

    @Parameters(paramLabel = "FOLDER", descriptionKey = "signal.set.FOLDER")
    private Path folder;

    @Option(names = "--overlap-db", paramLabel = "DB", defaultValue = "10", descriptionKey = "signal.set.overlap-db")
    private String overlapDb;

    @Option(
            names = "--sample-rate-hz",
            paramLabel = "F",
            defaultValue = "44100",
            descriptionKey = "signal.set.sample-rate-hz")
    private String sampleRateHz;

    SignalSetCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double overlap = Quantities.within(overlapDb, Unit.DECIBEL, 0, MOST_OVERLAP_DB, "--overlap-db");
        double rate = Quantities.within(sampleRateHz, Unit.HERTZ, LOWEST_RATE, HIGHEST_RATE, "--sample-rate-hz");
        SignalSet set = SignalSet.standard(overlap);
        SignalSet.Making making = new SignalSet.Making(
                (int) Math.rint(rate), stored.format(SampleFormat.INTEGER_16), stored.channels(), stored.seed());
        for (SignalSet.Item item : set.items()) {
            Optional<StimulusRemark> whyNot = Stimulus.whyNot(item.signal(), making.sampleRateHz());
            if (whyNot.isPresent()) {
                throw new InputException(whyNot.get().sentence());
            }
        }
        List<SignalFile.Written> written = set.write(folder, making, ratio -> {
            console.progress((int) (PERCENT * ratio), PERCENT, Texts.of("set.writing"));
            return true;
        });
        if (json.wanted()) {
            console.json(document(set, making, written));
        } else {
            print(set, making, written);
        }
        return ExitCodes.DONE;
    }

    private void print(SignalSet set, SignalSet.Making making, List<SignalFile.Written> written) {
        TextTable table = TextTable.named("set.columns");
        for (int i = 0; i < written.size(); i++) {
            SignalFile file = set.file(i, making);
            table.row(
                    set.fileName(i),
                    Texts.fixed(file.stimulus().facts().rmsDbfs(), 2),
                    Texts.fixed(file.stimulus().facts().peakDbfs(), 2),
                    Texts.fixed(file.stimulus().facts().crestFactorDb(), 2),
                    Texts.fixed((double) file.frames() / making.sampleRateHz(), 1));
        }
        table.print(console);
        console.line("");
        console.line(Texts.of("set.print", folder.resolve(SignalSet.PAGE_INDEX), SignalSet.TEXT_INDEX));
        Cautions.print(console, SignalCautions.all());
    }

    private ObjectNode document(SignalSet set, SignalSet.Making making, List<SignalFile.Written> written) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("folder", folder.toString());
        root.put("overlapDb", set.overlapDb());
        ArrayNode files = root.putArray("files");
        for (int i = 0; i < written.size(); i++) {
            files.add(SignalMakeCommand.node(set.file(i, making), written.get(i)));
        }
        Cautions.put(root, SignalCautions.all());
        return root;
    }
}

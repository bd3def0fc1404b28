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
        description = {
            "Make the numbered set of test signals for a player without a computer, with an index as text and as a page to print.",
            ""
        },
        footer = {"", "Example: ohmstead signal set player/ --overlap-db 10"})
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

    @Parameters(paramLabel = "FOLDER", description = "The folder; made when it is not there.")
    private Path folder;

    @Option(
            names = "--overlap-db",
            paramLabel = "DB",
            defaultValue = "10",
            description = "Gain overlap: how far below full scale the end point is set (default 10).")
    private String overlapDb;

    @Option(
            names = "--sample-rate-hz",
            paramLabel = "F",
            defaultValue = "44100",
            description = "Samples per second (default 44100, which every player takes).")
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
            console.progress((int) (PERCENT * ratio), PERCENT, "writing the set");
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
        TextTable table = new TextTable("file", ">RMS dBFS", ">peak dBFS", ">crest dB", ">length s");
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
        console.line("Print " + folder.resolve(SignalSet.PAGE_INDEX)
                + " and keep it with the player; the same as text is " + SignalSet.TEXT_INDEX + ".");
        Cautions.print(console, SignalCautions.ALL);
    }

    private ObjectNode document(SignalSet set, SignalSet.Making making, List<SignalFile.Written> written) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("folder", folder.toString());
        root.put("overlapDb", set.overlapDb());
        ArrayNode files = root.putArray("files");
        for (int i = 0; i < written.size(); i++) {
            files.add(SignalMakeCommand.node(set.file(i, making), written.get(i)));
        }
        Cautions.put(root, SignalCautions.ALL);
        return root;
    }
}

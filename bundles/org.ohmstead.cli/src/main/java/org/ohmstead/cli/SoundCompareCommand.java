// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.SoundSeriesCsv;
import org.ohmstead.signal.sound.SeriesComparison;
import org.ohmstead.signal.sound.SoundPoint;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Two series against one another. */
@Command(
        name = "compare",
        description = {
            "Two series of levels point by point: before and after a change, or outside the cabin and in it (the cabin's response).",
            "",
            "Points of the same frequency, drive and weighting are compared. What all levels of one meter have in common cancels when"
                    + " both series name the same meter.",
            ""
        },
        footer = {"", "Example: ohmstead sound compare sound/before.csv sound/after.csv"})
final class SoundCompareCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(index = "0", paramLabel = "FIRST", description = "The series before, or outside.")
    private Path first;

    @Parameters(index = "1", paramLabel = "SECOND", description = "The series after, or inside.")
    private Path second;

    SoundCompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        SeriesComparison comparison = SeriesComparison.of(SoundSeriesCsv.read(first), SoundSeriesCsv.read(second));
        if (comparison.differences().isEmpty()) {
            throw new InputException(
                    "The series have no point of the same frequency, drive and weighting in common, so there is"
                            + " nothing to compare.");
        }
        if (json.wanted()) {
            console.json(document(comparison));
        } else {
            print(comparison);
        }
        return ExitCodes.DONE;
    }

    private void print(SeriesComparison comparison) {
        TextTable table = new TextTable(
                ">frequency Hz",
                ">drive dB",
                ">first dB",
                ">second dB",
                ">change dB",
                ">+- (k=2)",
                "told from none",
                "remark");
        for (SeriesComparison.Difference each : comparison.differences()) {
            SoundPoint point = each.second();
            table.row(
                    Texts.number(point.frequencyHz()),
                    SoundShowCommand.drive(point),
                    Texts.fixed(each.first().levelDb(), 1),
                    Texts.fixed(point.levelDb(), 1),
                    Texts.fixed(each.change().valueDb(), 1),
                    Texts.fixed(each.change().expandedUncertaintyDb(), 1),
                    each.significant() ? "yes" : "no",
                    each.moved() ? "microphone elsewhere" : "");
        }
        table.print(console);
        console.line("");
        console.line(
                comparison.sharedMeter()
                        ? "Both name the same meter, so what its levels have in common cancels."
                        : "They name no common meter, so the uncertainty of both counts in full.");
        int alone = comparison.onlyFirst().size() + comparison.onlySecond().size();
        if (alone > 0) {
            console.line(alone + " point(s) have no partner"
                    + (comparison.weightingsApart().isEmpty() ? "." : ", some because the weightings differ."));
        }
    }

    private static ObjectNode document(SeriesComparison comparison) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("sharedMeter", comparison.sharedMeter());
        ArrayNode list = root.putArray("differences");
        for (SeriesComparison.Difference each : comparison.differences()) {
            ObjectNode node = list.addObject();
            SoundShowCommand.put(node.putObject("first"), each.first());
            SoundShowCommand.put(node.putObject("second"), each.second());
            node.put("changeDb", each.change().valueDb());
            node.put("standardUncertaintyDb", each.change().standardUncertaintyDb());
            node.put("significant", each.significant());
            node.put("microphoneMoved", each.moved());
        }
        ArrayNode onlyFirst = root.putArray("onlyFirst");
        comparison.onlyFirst().forEach(point -> SoundShowCommand.put(onlyFirst.addObject(), point));
        ArrayNode onlySecond = root.putArray("onlySecond");
        comparison.onlySecond().forEach(point -> SoundShowCommand.put(onlySecond.addObject(), point));
        return root;
    }
}

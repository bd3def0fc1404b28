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
        description = {"${bundle:sound.compare.does}", "", "${bundle:sound.compare.more}", ""},
        footer = {"", "${bundle:sound.compare.example}"})
final class SoundCompareCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(index = "0", paramLabel = "FIRST", descriptionKey = "sound.compare.FIRST")
    private Path first;

    @Parameters(index = "1", paramLabel = "SECOND", descriptionKey = "sound.compare.SECOND")
    private Path second;

    SoundCompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        SeriesComparison comparison = SeriesComparison.of(SoundSeriesCsv.read(first), SoundSeriesCsv.read(second));
        if (comparison.differences().isEmpty()) {
            throw new InputException(Texts.of("series.apart"));
        }
        if (json.wanted()) {
            console.json(document(comparison));
        } else {
            print(comparison);
        }
        return ExitCodes.DONE;
    }

    private void print(SeriesComparison comparison) {
        TextTable table = TextTable.named("series.compare.columns");
        for (SeriesComparison.Difference each : comparison.differences()) {
            SoundPoint point = each.second();
            table.row(
                    Texts.number(point.frequencyHz()),
                    SoundShowCommand.drive(point),
                    Texts.fixed(each.first().levelDb(), 1),
                    Texts.fixed(point.levelDb(), 1),
                    Texts.fixed(each.change().valueDb(), 1),
                    Texts.fixed(each.change().expandedUncertaintyDb(), 1),
                    Texts.yesNo(each.significant()),
                    each.moved() ? Texts.of("series.moved") : "");
        }
        table.print(console);
        console.line("");
        console.line(comparison.sharedMeter() ? Texts.of("series.sameMeter") : Texts.of("series.otherMeter"));
        int alone = comparison.onlyFirst().size() + comparison.onlySecond().size();
        if (alone > 0) {
            console.line(Texts.of(
                    comparison.weightingsApart().isEmpty() ? "series.alone" : "series.alone.weightings", alone));
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

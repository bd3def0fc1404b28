// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindException;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.testlog.search.LogIndex;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds entries of the log. */
@Command(
        name = "find",
        description = {"${bundle:log.find.does}", "", "${bundle:log.find.more}", ""},
        footer = {"", "${bundle:log.find.exit}", "${bundle:log.find.note}", "${bundle:log.find.example}"})
final class LogFindCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "QUERY", descriptionKey = "log.find.QUERY")
    private List<String> query = List.of();

    @Option(names = "--sort", paramLabel = "COLUMN", descriptionKey = "log.find.sort")
    private IndexColumn column = IndexColumn.PLACE;

    @Option(names = "--falling", descriptionKey = "log.find.falling")
    private boolean falling;

    @Option(names = "--limit", paramLabel = "COUNT", descriptionKey = "log.find.limit")
    private int limit = 100;

    LogFindCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Find find = find();
        if (limit < 0) {
            throw new InputException(Texts.of("find.limit", limit));
        }
        ProjectFolder folder = project.open();
        try (TestLog log = folder.readLog();
                LogIndex index = LogIndex.open(LogIndex.beside(folder.logFile()), log.rows())) {
            index.refresh(new ConsoleIndexing(console));
            if (!index.state().remark().isEmpty()) {
                console.status(index.state().remark());
            }
            Found found = index.find(find, new FindOrder(column, falling));
            print(found.size(), found.page(0, limit));
            return found.size() == 0 ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
        }
    }

    private Find find() throws InputException {
        try {
            return Find.parse(String.join(" ", query));
        } catch (FindException mistake) {
            throw new InputException(mistake.getMessage());
        }
    }

    private void print(int size, List<IndexedEntry> entries) throws Exception {
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("found", size);
            ArrayNode list = root.putArray("entries");
            entries.forEach(entry -> list.add(node(entry)));
            console.json(root);
            return;
        }
        TextTable table = TextTable.named("find.columns");
        for (IndexedEntry entry : entries) {
            table.row(
                    entry.id(),
                    entry.takenAt().orElse(entry.recordedAt()).toString(),
                    entry.amplifier(),
                    entry.serialNumber(),
                    entry.stepId(),
                    entry.mode().map(Texts::mode).orElse(""),
                    entry.loadId(),
                    figure(entry.supplyVolts()),
                    figure(entry.powerWatts()),
                    Texts.state(entry),
                    entry.text());
        }
        table.print(console);
        String found = Texts.count("entries", size);
        console.line(
                size > entries.size() ? Texts.of("find.first", found, entries.size()) : Texts.of("find.found", found));
    }

    private static String figure(OptionalDouble value) {
        return value.isPresent() ? Texts.fixed(value.getAsDouble(), 2) : "";
    }

    private static ObjectNode node(IndexedEntry entry) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("id", entry.id());
        node.put("chain", entry.chain());
        node.put("sequence", entry.sequence());
        node.put("kind", entry.kind().word());
        node.put("state", entry.state().word());
        node.put("recordedAt", entry.recordedAt().toString());
        entry.takenAt().ifPresent(moment -> node.put("takenAt", moment.toString()));
        node.put("amplifier", entry.amplifier());
        node.put("serialNumber", entry.serialNumber());
        node.put("bench", entry.bench());
        node.put("operator", entry.operator());
        entry.mode().ifPresent(mode -> node.put("mode", mode.name()));
        node.put("loadId", entry.loadId());
        put(node, "loadOhms", entry.nominalLoadOhms());
        put(node, "supplyVolts", entry.supplyVolts());
        node.put("step", entry.stepId());
        node.put("stimulus", entry.stimulus());
        node.put("measurement", entry.measurement());
        put(node, "powerWatts", entry.powerWatts());
        put(node, "standardUncertaintyWatts", entry.standardUncertaintyWatts());
        put(node, "thdFRatio", entry.thdFRatio());
        entry.outcome().ifPresent(outcome -> node.put("outcome", outcome.name()));
        node.put("overdue", entry.overdue());
        node.put("text", entry.text());
        return node;
    }

    private static void put(ObjectNode node, String name, OptionalDouble value) {
        if (value.isPresent()) {
            node.put(name, value.getAsDouble());
        }
    }
}

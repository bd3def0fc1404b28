// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
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
        description = {
            "Find entries of the log, with an index that is kept beside it.",
            "",
            "A query has conditions, such as amplifier:Larkspur*, serial:, bench:, operator:, mode:stereo, load:4,"
                    + " step:, chain:B, kind:reading, state:valid, overdue:yes, from:2026-01-01, to:2026-01-31 (days of"
                    + " UTC), figures with a range, such as power:80..120, thd:..1%%, supply:13.. or dampingFactor:50..,"
                    + " and plain words.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when nothing was found.",
            "Put the query in single quotation marks, and values with blanks in it in double ones.",
            "Example: ohmstead log find kestrel.ohmstead 'amplifier:\"Larkspur 2\" power:80..120 sagged' --sort"
                    + " power_watts"
        })
final class LogFindCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "QUERY",
            description = "What to find; everything when it is left out.")
    private List<String> query = List.of();

    @Option(
            names = "--sort",
            paramLabel = "COLUMN",
            description = "What to order by (default: ${DEFAULT-VALUE}): ${COMPLETION-CANDIDATES}.")
    private IndexColumn column = IndexColumn.PLACE;

    @Option(names = "--falling", description = "The greatest, or newest, first.")
    private boolean falling;

    @Option(
            names = "--limit",
            paramLabel = "COUNT",
            description = "How many to list (default: ${DEFAULT-VALUE}); all are counted.")
    private int limit = 100;

    LogFindCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Find find = find();
        if (limit < 0) {
            throw new InputException("--limit is " + limit + ". Give a number of entries, at least 0.");
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
        TextTable table = new TextTable(
                "entry",
                "taken (UTC)",
                "amplifier",
                "serial",
                "step",
                "mode",
                "load",
                ">supply V",
                ">power W",
                "state",
                "remark");
        for (IndexedEntry entry : entries) {
            table.row(
                    entry.id(),
                    entry.takenAt().orElse(entry.recordedAt()).toString(),
                    entry.amplifier(),
                    entry.serialNumber(),
                    entry.stepId(),
                    entry.mode()
                            .map(mode -> mode.name().toLowerCase(Locale.ROOT))
                            .orElse(""),
                    entry.loadId(),
                    figure(entry.supplyVolts()),
                    figure(entry.powerWatts()),
                    entry.state().word() + (entry.overdue() ? ", overdue" : ""),
                    entry.text());
        }
        table.print(console);
        String left = size > entries.size() ? "; the first " + entries.size() + " are listed" : "";
        console.line((size == 1 ? "1 entry" : size + " entries") + " found" + left + ".");
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

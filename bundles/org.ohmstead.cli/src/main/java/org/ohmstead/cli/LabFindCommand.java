// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindException;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.testlog.search.LogIndex;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds entries of all benches. */
@Command(
        name = "find",
        description = {"${bundle:lab.find.does}", ""},
        footer = {"", "${bundle:lab.find.exit}", "${bundle:lab.find.example}"})
final class LabFindCommand implements Callable<Integer> {
    /** Name of the index of the shared log, in a project's folder. */
    static final String INDEX_NAME = "lab-index.db";

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "WORDS", descriptionKey = "lab.find.WORDS")
    private List<String> words = List.of();

    @Option(names = "--limit", paramLabel = "COUNT", descriptionKey = "lab.find.limit", defaultValue = "50")
    private int limit;

    LabFindCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (limit < 1) {
            throw new InputException(Texts.of("labFind.limit", limit));
        }
        Find find = find();
        ProjectFolder folder = project.open();
        List<IndexedEntry> entries;
        Map<String, String> benches;
        int count;
        try (SharedLab lab = LabAccess.of(folder).connect();
                LogIndex index = LogIndex.open(folder.folder().resolve(INDEX_NAME), lab.rows())) {
            index.refresh(IndexProgress.NONE);
            if (!index.state().remark().isEmpty()) {
                console.status(index.state().remark());
            }
            Found found = index.find(find, FindOrder.NEWEST_FIRST);
            count = found.size();
            entries = found.page(0, limit);
            benches = lab.chains().stream()
                    .collect(Collectors.toMap(chain -> chain.info().label(), chain -> chain.origin()
                            .bench()));
        }
        if (json.wanted()) {
            console.json(document(entries, benches, count));
        } else {
            print(entries, benches, count);
        }
        return count == 0 ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private Find find() throws InputException {
        try {
            return Find.parse(String.join(" ", words));
        } catch (FindException unclear) {
            throw new InputException(unclear.getMessage());
        }
    }

    private static Instant when(IndexedEntry entry) {
        return entry.takenAt().orElse(entry.recordedAt());
    }

    private static ObjectNode document(List<IndexedEntry> entries, Map<String, String> benches, int count) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("found", count);
        ArrayNode list = root.putArray("entries");
        for (IndexedEntry entry : entries) {
            ObjectNode node = list.addObject();
            node.put("id", entry.id())
                    .put("kind", entry.kind().word())
                    .put("chainBench", benches.getOrDefault(entry.chain(), ""))
                    .put("takenAt", when(entry).toString())
                    .put("amplifier", entry.amplifier())
                    .put("serialNumber", entry.serialNumber())
                    .put("mode", entry.mode().map(Texts::mode).orElse(null))
                    .put("stepId", entry.stepId())
                    .put("state", entry.state().word())
                    .put("overdue", entry.overdue())
                    .put("text", entry.text());
            put(node, "nominalLoadOhms", entry.nominalLoadOhms());
            put(node, "supplyVolts", entry.supplyVolts());
            put(node, "powerWatts", entry.powerWatts());
            put(node, "standardUncertaintyWatts", entry.standardUncertaintyWatts());
        }
        return root;
    }

    private static void put(ObjectNode node, String name, OptionalDouble value) {
        value.ifPresentOrElse(number -> node.put(name, number), () -> node.putNull(name));
    }

    private void print(List<IndexedEntry> entries, Map<String, String> benches, int count) {
        TextTable table = TextTable.named("labFind.columns");
        for (IndexedEntry entry : entries) {
            table.row(
                    entry.id(),
                    benches.getOrDefault(entry.chain(), ""),
                    when(entry).toString(),
                    entry.amplifier(),
                    entry.stepId(),
                    text(entry.nominalLoadOhms(), 2),
                    text(entry.supplyVolts(), 2),
                    text(entry.powerWatts(), 2),
                    Texts.state(entry),
                    entry.text());
        }
        table.print(console);
        console.line(
                count > entries.size()
                        ? Texts.of("labFind.newest", count, entries.size())
                        : Texts.of("labFind.found", count));
    }

    private static String text(OptionalDouble value, int decimals) {
        return value.isPresent() ? Texts.fixed(value.getAsDouble(), decimals) : "";
    }
}

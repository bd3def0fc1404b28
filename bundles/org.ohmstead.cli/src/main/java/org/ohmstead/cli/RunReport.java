// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.measure.engine.ItemState;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.testlog.LogEntry;

/**
 * What came of a run, for people and for machines.
 *
 * @param folder the project
 * @param plan what was wanted
 * @param state how all stands now
 * @param watch how each item ended that was tried
 * @param entries the whole log
 * @param confirmed the warnings that were said yes to
 * @param refused what was in the way, so that nothing was begun; empty when something was
 * @param seconds how long it took in all
 */
record RunReport(
        ProjectFolder folder,
        RunPlan plan,
        PlanState state,
        RunWatch watch,
        List<LogEntry> entries,
        List<Confirmations.Yes> confirmed,
        List<DryStep> refused,
        double seconds) {
    private static final double COVERAGE = 2;

    RunReport {
        entries = List.copyOf(entries);
        confirmed = List.copyOf(confirmed);
        refused = List.copyOf(refused);
    }

    ObjectNode document() {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("project", folder.project().title());
        root.put("folder", folder.folder().toString());
        root.put("revision", folder.loaded().revisionSha256());
        plan.driver().ifPresent(driver -> {
            ObjectNode node = root.putObject("driver");
            node.put("id", driver.id());
            node.put("version", driver.version());
            node.put("name", driver.name());
            node.put("kind", PluginJson.word(driver.kind()));
            ObjectNode settings = node.putObject("settings");
            plan.bench().settings().forEach(settings::put);
        });
        ArrayNode items = root.putArray("items");
        Map<String, LogEntry> byId = byId();
        state.items().forEach(each -> fill(items.addObject(), each, byId));
        plan.leftOut().forEach(root.putArray("leftOut")::add);
        ArrayNode yes = root.putArray("confirmed");
        for (Confirmations.Yes each : confirmed) {
            ObjectNode node = yes.addObject();
            each.stepIds().forEach(node.putArray("steps")::add);
            node.put("what", each.what()).put("who", each.who()).put("reason", each.reason());
        }
        ArrayNode inTheWay = root.putArray("refused");
        refused.forEach(step -> inTheWay.add(sentence(step)));
        root.put("complete", state.complete());
        root.put("entries", entries.size());
        root.put("headHash", headHash());
        root.put("seconds", seconds);
        return root;
    }

    /** Says what is in the way of a step. */
    static String sentence(DryStep step) {
        return Texts.of("run.step", step.item().stepId(), step.item().measurementId(), step.blocked());
    }

    private String headHash() {
        return entries.isEmpty() ? "" : entries.get(entries.size() - 1).hash();
    }

    private Map<String, LogEntry> byId() {
        return entries.stream().collect(Collectors.toMap(LogEntry::id, Function.identity()));
    }

    private void fill(ObjectNode node, ItemState item, Map<String, LogEntry> byId) {
        node.put("step", item.item().stepId());
        node.put("measurement", item.item().measurementId());
        node.put("status", item.status().name().toLowerCase(Locale.ROOT));
        node.put("triedNow", watch.ended(item.item()).isPresent());
        node.put(
                "sentence",
                watch.ended(item.item())
                        .map(ended -> ended.outcome().said().kept())
                        .orElse(item.sentence()));
        watch.ended(item.item()).ifPresent(ended -> {
            node.put("outcome", word(ended.outcome()));
            node.put("seconds", ended.seconds());
        });
        ArrayNode remarks = node.putArray("remarks");
        watch.ended(item.item())
                .ifPresent(ended -> ended.outcome().further().forEach(remark -> remarks.add(remark.kept())));
        ArrayNode ids = node.putArray("entryIds");
        item.entryIds().forEach(ids::add);
        ArrayNode results = node.putArray("results");
        for (String id : item.entryIds()) {
            LogEntry entry = byId.get(id);
            if (entry != null) {
                results.add(EntryJson.summary(entry));
            }
        }
    }

    /** finished, cancelled, emergency-stopped, stopped, failed, refused or not-kept. */
    private static String word(RunOutcome outcome) {
        return outcome.getClass()
                .getSimpleName()
                .replaceAll("(?<!^)([A-Z])", "-$1")
                .toLowerCase(Locale.ROOT);
    }

    void print(Console console) {
        TextTable table = TextTable.named("run.columns");
        Map<String, LogEntry> byId = byId();
        int rows = 0;
        for (ItemState item : state.items()) {
            boolean measuredNow = watch.ended(item.item())
                    .filter(ended -> ended.outcome() instanceof RunOutcome.Finished)
                    .isPresent();
            for (String id : measuredNow ? newest(item.entryIds()) : List.<String>of()) {
                LogEntry entry = byId.get(id);
                for (MeasuredFigure figure :
                        entry.figures().map(each -> each.figures()).orElse(List.of())) {
                    row(table, entry, item.item().stepId(), figure);
                    rows++;
                }
            }
        }
        if (rows > 0) {
            table.print(console);
            console.line("");
        }
        console.line(summary());
        if (!headHash().isEmpty()) {
            console.line(Texts.of("run.head", headHash()));
        }
    }

    /** The results of an item that was measured several times end with the last one: its figures. */
    private static List<String> newest(List<String> ids) {
        return ids.isEmpty() ? List.of() : List.of(ids.get(ids.size() - 1));
    }

    private static void row(TextTable table, LogEntry entry, String stepId, MeasuredFigure figure) {
        table.row(
                entry.id(),
                stepId,
                figure.id(),
                figure.channel(),
                figure.at(),
                Texts.four(figure.value()),
                figure.standardUncertainty().isPresent()
                        ? Texts.two(COVERAGE * figure.standardUncertainty().getAsDouble())
                        : "",
                figure.unit());
    }

    private String summary() {
        long done = count(ItemState.Status.DONE);
        long skipped = count(ItemState.Status.SKIPPED);
        long now = watch.ended().values().stream()
                .filter(ended -> ended.outcome() instanceof RunOutcome.Finished)
                .count();
        String summary = Texts.of(
                skipped == 0 ? "run.summary" : "run.summary.skipped",
                done,
                state.items().size(),
                now,
                Texts.time(seconds),
                skipped);
        return watch.ended().isEmpty() && state.complete() ? Texts.of("run.again", summary) : summary;
    }

    private long count(ItemState.Status status) {
        return state.items().stream().filter(each -> each.status() == status).count();
    }
}

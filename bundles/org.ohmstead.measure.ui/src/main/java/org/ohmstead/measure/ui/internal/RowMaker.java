// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.ItemState;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.LogSnapshot;

/**
 * Makes the rows of the plan.
 *
 * @param project whose plan
 * @param catalog knows what measurements are called
 * @param voided the entries of the log that were taken back, in order
 * @param resting the item before which the amplifier rests
 */
record RowMaker(Project project, CatalogView catalog, List<LogEntry> voided, Optional<PlanItem> resting) {
    private static final Messages TEXTS = Messages.of(RowMaker.class);

    static RowMaker of(Project project, CatalogView catalog, LogSnapshot log, Optional<PlanItem> resting) {
        return new RowMaker(
                project,
                catalog,
                log.entries().stream().filter(LogEntry::voided).toList(),
                resting);
    }

    /** Returns the rows of items of which nothing is known yet. */
    List<ItemRow> unknown(List<PlanItem> items) {
        return rows(items.stream()
                .map(item -> new ItemState(item, ItemState.Status.PENDING, List.of(), ""))
                .toList());
    }

    /** Returns the rows of items. */
    List<ItemRow> rows(List<ItemState> states) {
        List<ItemRow> rows = new ArrayList<>();
        boolean nextKnown = false;
        for (ItemState state : states) {
            ItemRow row = row(state);
            if (row.open() && !nextKnown) {
                nextKnown = true;
                row = row.status() == ItemRow.Status.OPEN ? with(row, ItemRow.Status.NEXT) : row;
            }
            rows.add(row);
        }
        return List.copyOf(rows);
    }

    private static ItemRow with(ItemRow row, ItemRow.Status status) {
        return new ItemRow(row.item(), status, row.step(), row.measurement(), row.sentence(), row.entryIds());
    }

    private ItemRow row(ItemState state) {
        PlanItem item = state.item();
        String step = project.step(item.stepId())
                .map(each -> StepWords.headline(project, each))
                .orElse(item.stepId());
        Optional<LogEntry> takenBack = state.status() == ItemState.Status.PENDING ? lastVoided(item) : Optional.empty();
        ItemRow.Status status = resting.filter(item::equals).isPresent()
                ? ItemRow.Status.RESTING
                : takenBack.isPresent() ? ItemRow.Status.VOIDED : status(state.status());
        String sentence = takenBack
                .map(entry -> TEXTS.text(
                        "status.voidedBecause",
                        entry.id(),
                        entry.voidedBy().orElseThrow().reason()))
                .orElse(state.sentence());
        return new ItemRow(item, status, step, measurementName(item.measurementId()), sentence, state.entryIds());
    }

    private static ItemRow.Status status(ItemState.Status status) {
        return switch (status) {
            case PENDING -> ItemRow.Status.OPEN;
            case RUNNING -> ItemRow.Status.RUNNING;
            case DONE -> ItemRow.Status.DONE;
            case SKIPPED -> ItemRow.Status.SKIPPED;
            case FAILED -> ItemRow.Status.FAILED;
        };
    }

    private Optional<LogEntry> lastVoided(PlanItem item) {
        return voided.stream().filter(entry -> isOf(entry, item)).reduce((first, second) -> second);
    }

    private static boolean isOf(LogEntry entry, PlanItem item) {
        return entry.reading()
                        .filter(reading -> reading.stepId().equals(item.stepId())
                                && reading.provenance().procedureId().equals(item.measurementId()))
                        .isPresent()
                || entry.figures()
                        .filter(figures -> figures.stepId().equals(item.stepId())
                                && figures.provenance().procedureId().equals(item.measurementId()))
                        .isPresent();
    }

    /** Returns what a measurement is called; its id when it is not there. */
    String measurementName(String id) {
        return catalog.measurements().stream()
                .filter(info -> info.id().equals(id))
                .map(MeasurementInfo::name)
                .findFirst()
                .orElseGet(() -> TEXTS.text("status.notInstalled", id));
    }
}

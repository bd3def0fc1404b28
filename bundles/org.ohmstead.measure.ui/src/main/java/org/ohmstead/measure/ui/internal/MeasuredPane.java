// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Tones;

/** What is measured at the chosen step, with the settings of the chosen measurement; and what is wrong with plug-ins. */
final class MeasuredPane extends Composite {
    private static final Messages TEXTS = Messages.of(MeasuredPane.class);

    private static final int ROWS = 5;
    private static final int SENTENCE_WIDTH = 220;

    private final RunDesk runs;
    private final ScrolledComposite scrolled;
    private final Composite page;
    private final Label heading;
    private final Table table;
    private final Label summary;
    private final SettingsForm settings;
    private final FaultList faults;
    private List<MeasurementInfo> infos = List.of();
    private List<String> ticked = List.of();
    private String stepId = "";
    private Optional<Choices> shown = Optional.empty();

    MeasuredPane(Composite parent, RunDesk runs, Slices slices) {
        super(parent, SWT.NONE);
        this.runs = runs;
        setLayout(new FillLayout());
        scrolled = BenchPane.scrolled(this);
        page = BenchPane.page(scrolled);
        heading = Ids.name(new Label(page, SWT.WRAP), "console.measured.heading");
        wide(heading);
        table = Ids.name(new Table(page, SWT.CHECK | SWT.SINGLE | SWT.BORDER | SWT.FULL_SELECTION), "console.measured");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, ROWS * table.getItemHeight())
                .applyTo(table);
        table.addListener(SWT.Selection, event -> {
            if (event.detail == SWT.CHECK) {
                tick();
            } else {
                showChosen();
            }
        });
        summary = Ids.name(new Label(page, SWT.WRAP), "console.measured.summary");
        wide(summary);
        settings = new SettingsForm(page, "console.measured.setting", slices, this::fit);
        faults = new FaultList(page, runs);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(faults);
        scrolled.addListener(SWT.Resize, event -> fit());
    }

    private static void wide(Label label) {
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(label);
    }

    private void fit() {
        int width = scrolled.getClientArea().width;
        scrolled.setMinSize(page.computeSize(Math.max(1, width), SWT.DEFAULT));
    }

    void refresh(Optional<ItemRow> chosen) {
        boolean otherFaults = faults.refresh(runs.catalog());
        Optional<PlanItem> item = chosen.map(ItemRow::item);
        String step = item.map(PlanItem::stepId).orElse("");
        boolean same = runs.catalog().measurements().equals(infos)
                && step.equals(stepId)
                && shown.filter(runs.choices()::equals).isPresent();
        table.setEnabled(!runs.running() && !runs.halted());
        if (!same) {
            boolean otherStep = !step.equals(stepId);
            infos = runs.catalog().measurements();
            stepId = step;
            shown = Optional.of(runs.choices());
            fill(item, otherStep);
        }
        if (!same || otherFaults) {
            page.layout(true, true);
            fit();
        }
    }

    private void fill(Optional<PlanItem> item, boolean otherStep) {
        heading.setText(stepId.isEmpty() ? TEXTS.text("measured.choose") : TEXTS.text("measured.at", stepId));
        ticked = runs.course().rows().stream()
                .map(ItemRow::item)
                .filter(each -> each.stepId().equals(stepId))
                .map(PlanItem::measurementId)
                .toList();
        int before = table.getSelectionIndex();
        table.setItemCount(infos.size());
        String hand = item.map(PlanItem::measurementId).orElse("");
        int first = -1;
        for (int i = 0; i < infos.size(); i++) {
            TableItem row = table.getItem(i);
            row.setText(infos.get(i).name());
            row.setChecked(ticked.contains(infos.get(i).id()));
            first = infos.get(i).id().equals(hand) ? i : first;
        }
        table.setSelection(otherStep || before < 0 ? first : before);
        showChosen();
    }

    private void showChosen() {
        int index = table.getSelectionIndex();
        Optional<MeasurementInfo> info =
                index < 0 || index >= infos.size() ? Optional.empty() : Optional.of(infos.get(index));
        summary.setForeground(Tones.of(this).mutedText());
        summary.setText(info.map(MeasuredPane::words).orElse(""));
        settings.show(
                info.map(MeasurementInfo::settings).orElse(List.of()),
                info.map(each -> runs.choices().measurementSettings().getOrDefault(each.id(), Map.of()))
                        .orElse(Map.of()),
                (id, text) ->
                        info.ifPresent(each -> runs.choose(now -> now.withMeasurementSetting(each.id(), id, text))));
        page.layout(true, true);
        fit();
    }

    private static String words(MeasurementInfo info) {
        return info.follows().isEmpty()
                ? info.summary()
                : TEXTS.text("measured.follows", info.summary(), String.join("; ", info.follows()));
    }

    private void tick() {
        List<String> now = new ArrayList<>(ticked);
        for (int i = 0; i < infos.size(); i++) {
            String id = infos.get(i).id();
            boolean checked = table.getItem(i).getChecked();
            if (checked && !now.contains(id)) {
                now.add(id);
            } else if (!checked) {
                now.remove(id);
            }
        }
        List<String> wanted = List.copyOf(now);
        shown = Optional.empty();
        runs.choose(choices -> choices.withMeasured(stepId, wanted));
    }

    @Override
    public boolean setFocus() {
        return !table.isDisposed() && table.setFocus();
    }
}

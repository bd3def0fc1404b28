// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SetAside;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** The readings behind the curves: which of them count, and why not. */
final class ReadingsPart implements StudyPart {
    private static final Messages TEXTS = Messages.of(ReadingsPart.class);

    private final ProjectDesk desk;
    private final Composite pane;
    private final SheetTable table;
    private final Text reason;
    private final Button commit;
    private final Button takeBack;
    private final MessageLine message;
    private List<LogEntry> shown = List.of();

    ReadingsPart(Composite parent, ProjectDesk desk) {
        this.desk = desk;
        pane = new Composite(parent, SWT.NONE);
        Spacing.tight(1).margins(0, Spacing.TIGHT).applyTo(pane);
        table = new SheetTable(pane, "power.readings");
        GridDataFactory.fillDefaults().grab(true, true).applyTo(table.control());
        Composite bar = new Composite(pane, SWT.NONE);
        Spacing.group(4).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        Label label = new Label(bar, SWT.NONE);
        label.setText(TEXTS.text("readings.reason"));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(label);
        reason = Ids.name(new Text(bar, SWT.BORDER | SWT.SINGLE), "power.aside.reason");
        reason.setMessage(TEXTS.text("readings.reasonPrompt"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(reason);
        commit = button(bar, TEXTS.text("readings.setAside"), "power.aside.commit");
        takeBack = button(bar, TEXTS.text("readings.takeBack"), "power.aside.back");
        message = new MessageLine(pane, "power.aside.message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        reason.addModifyListener(event -> check());
        reason.addListener(SWT.DefaultSelection, event -> setAside());
        commit.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> setAside()));
        takeBack.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> takeBack()));
        table.control().addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> rowChosen()));
        check();
    }

    private static Button button(Composite parent, String words, String id) {
        Button button = Ids.name(new Button(parent, SWT.PUSH), id);
        button.setText(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
        return button;
    }

    @Override
    public String title() {
        return TEXTS.text("readings.title");
    }

    @Override
    public Control control() {
        return pane;
    }

    @Override
    public void show(InView view) {
        Set<String> before = new TreeSet<>(chosenIds());
        shown = view.curves().readingsAbout(view.group());
        List<LogEntry> rows = shown;
        table.show(() -> sheet(rows, desk.session().map(ProjectSession::project)));
        table.control().deselectAll();
        for (int row = 0; row < shown.size(); row++) {
            boolean aside = reasonOf(shown.get(row)).isPresent();
            table.control().getItem(row).setForeground(aside ? Tones.of(pane).mutedText() : null);
            if (before.contains(shown.get(row).id())) {
                table.control().select(row);
            }
        }
        check();
    }

    /** Selects the reading that was chosen elsewhere. */
    void choose(Optional<LogEntry> entry) {
        for (int row = 0; row < shown.size(); row++) {
            boolean wanted =
                    entry.map(LogEntry::id).equals(Optional.of(shown.get(row).id()));
            if (wanted && !table.control().isSelected(row)) {
                table.control().setSelection(row);
            }
        }
        check();
    }

    static Sheet sheet(List<LogEntry> entries, Optional<Project> project) {
        List<Sheet.Header> headers = List.of(
                new Sheet.Header(TEXTS.text("readings.reading"), false, TEXTS.text("readings.readingHint")),
                new Sheet.Header(TEXTS.text("readings.load"), false, TEXTS.text("readings.loadHint")),
                new Sheet.Header(TEXTS.text("readings.supply"), true, TEXTS.text("readings.supplyHint")),
                new Sheet.Header(TEXTS.text("readings.power"), true, TEXTS.text("readings.powerHint")),
                new Sheet.Header(TEXTS.text("readings.counts"), false, TEXTS.text("readings.countsHint")),
                new Sheet.Header(TEXTS.text("readings.why"), false, TEXTS.text("readings.whyHint")));
        List<Sheet.Row> rows = new ArrayList<>();
        for (LogEntry entry : entries) {
            Reading reading = entry.reading().orElseThrow();
            ChannelReading weakest = reading.weakestChannel();
            String why =
                    project.flatMap(each -> each.reasonSetAside(entry.id())).orElse("");
            rows.add(new Sheet.Row(List.of(
                    Sheet.Cell.of(entry.id()),
                    Sheet.Cell.of(Words.load(new PlacedLoad(reading.nominalLoadOhms(), reading.mode()))),
                    Sheet.Cell.of(Figures.fixed(weakest.supplyVolts(), 2)),
                    Sheet.Cell.of(Figures.fixed(weakest.powerWatts(), 1)),
                    Sheet.Cell.of(why.isEmpty() ? TEXTS.text("readings.yes") : TEXTS.text("readings.aside")),
                    new Sheet.Cell(why, why))));
        }
        return new Sheet(headers, rows);
    }

    private Optional<String> reasonOf(LogEntry entry) {
        return desk.session().flatMap(session -> session.project().reasonSetAside(entry.id()));
    }

    private List<String> chosenIds() {
        List<String> ids = new ArrayList<>();
        for (int row : table.control().getSelectionIndices()) {
            if (row < shown.size()) {
                ids.add(shown.get(row).id());
            }
        }
        return ids;
    }

    private List<String> chosenIds(boolean aside) {
        Optional<Project> project = desk.session().map(ProjectSession::project);
        return chosenIds().stream()
                .filter(id -> project.flatMap(each -> each.reasonSetAside(id)).isPresent() == aside)
                .toList();
    }

    private void rowChosen() {
        int row = table.control().getSelectionIndex();
        if (table.control().getSelectionCount() == 1 && row < shown.size()) {
            desk.choose(Optional.of(shown.get(row)));
        }
        check();
    }

    /** Says what can be done now. */
    void check() {
        boolean readOnly = desk.session().map(ProjectSession::readOnly).orElse(true);
        reason.setEnabled(!readOnly);
        commit.setEnabled(
                !readOnly && !chosenIds(false).isEmpty() && !reason.getText().isBlank());
        takeBack.setEnabled(!readOnly && !chosenIds(true).isEmpty());
        if (desk.session().isPresent() && readOnly) {
            message.mention(TEXTS.text("readings.readOnly"));
        } else {
            message.mention(TEXTS.text("readings.how"));
        }
    }

    private void setAside() {
        List<String> ids = chosenIds(false);
        String why = reason.getText().strip();
        if (!commit.isEnabled() || desk.session().isEmpty()) {
            return;
        }
        desk.session().get().edit(named("readings.editAside", ids), project -> {
            List<SetAside> all = new ArrayList<>(project.setAside());
            ids.forEach(id -> all.add(new SetAside(id, why)));
            return project.withSetAside(all);
        });
        reason.setText("");
    }

    private void takeBack() {
        List<String> ids = chosenIds(true);
        if (!takeBack.isEnabled() || desk.session().isEmpty()) {
            return;
        }
        desk.session()
                .get()
                .edit(
                        named("readings.editBack", ids),
                        project -> project.withSetAside(project.setAside().stream()
                                .filter(each -> !ids.contains(each.entryId()))
                                .toList()));
    }

    private static String named(String key, List<String> ids) {
        return ids.size() == 1
                ? TEXTS.text(key + ".one", ids.get(0))
                : TEXTS.text(key + ".many", Integer.toString(ids.size()));
    }
}

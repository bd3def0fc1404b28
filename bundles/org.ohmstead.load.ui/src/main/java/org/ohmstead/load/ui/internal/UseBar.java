// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Says what is chosen, and writes it into a load of the project. */
final class UseBar extends Composite {
    private static final Messages TEXTS = Messages.of(UseBar.class);

    private final ProjectDesk desk;
    private final Combo into;
    private final Button use;
    private final MessageLine message;
    private List<String> loadIds = List.of();
    private Optional<FoundNetwork> chosen = Optional.empty();
    private Target target = Target.USUAL;

    UseBar(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        Spacing.group(4).spacing(Spacing.GAP, Spacing.TIGHT).applyTo(this);
        message = new MessageLine(this, "design.summary");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(message);
        Label label = new Label(this, SWT.NONE);
        label.setText(TEXTS.text("use.for"));
        into = Ids.name(new Combo(this, SWT.READ_ONLY | SWT.DROP_DOWN), "design.into");
        into.setToolTipText(TEXTS.text("use.forHint"));
        use = Ids.name(new Button(this, SWT.PUSH), "design.use");
        use.setText(TEXTS.text("use.use"));
        use.setToolTipText(TEXTS.text("use.useHint"));
        use.addListener(SWT.Selection, event -> use());
        refresh();
    }

    /** Offers the loads of the open project. */
    void refresh() {
        String before = into.getText();
        loadIds = desk.session()
                .map(session ->
                        session.project().loads().stream().map(BenchLoad::id).toList())
                .orElse(List.of());
        List<String> texts = new ArrayList<>(loadIds);
        texts.add(TEXTS.text("use.newLoad"));
        if (!texts.equals(List.of(into.getItems()))) {
            into.setItems(texts.toArray(String[]::new));
            into.select(texts.contains(before) ? texts.indexOf(before) : texts.size() - 1);
            requestLayout();
        }
        enable();
    }

    /** Chooses the load that is built. */
    void into(String loadId) {
        if (loadIds.contains(loadId)) {
            into.select(loadIds.indexOf(loadId));
        }
    }

    void show(Optional<FoundNetwork> newChosen, Target newTarget) {
        chosen = newChosen;
        target = newTarget;
        summarise();
        enable();
    }

    /** Says what is wrong with what is typed, or again what is chosen. */
    void fault(Optional<String> sentence) {
        if (sentence.isPresent()) {
            message.show(Severity.ERROR, sentence.get());
        } else {
            summarise();
        }
    }

    private void summarise() {
        if (chosen.isPresent()) {
            message.mention(text(chosen.get()));
        } else {
            message.clear();
        }
    }

    private static String text(FoundNetwork found) {
        String stated = Words.stated(found.ohms(), found.standardRatio());
        String error = Words.signedPercent(found.errorRatio());
        return found.powerLimitWatts().isPresent()
                ? TEXTS.text(
                        "use.chosen",
                        stated,
                        error,
                        Words.watts(found.powerLimitWatts().getAsDouble()))
                : TEXTS.text("use.chosenUnlimited", stated, error);
    }

    private void enable() {
        use.setEnabled(chosen.isPresent() && desk.session().isPresent());
        into.setEnabled(desk.session().isPresent());
    }

    private void use() {
        Optional<ProjectSession> session = desk.session();
        if (chosen.isEmpty() || session.isEmpty()) {
            return;
        }
        if (session.get().readOnly()) {
            message.show(Severity.WARNING, TEXTS.text("use.readOnly"));
            return;
        }
        int index = into.getSelectionIndex();
        Optional<String> loadId =
                index >= 0 && index < loadIds.size() ? Optional.of(loadIds.get(index)) : Optional.empty();
        Project before = session.get().project();
        String name = loadId.orElseGet(() -> LoadUse.freshId(before.loads(), target.ohms()));
        session.get().edit(TEXTS.text("use.edit", name), LoadUse.change(chosen.get(), target, loadId));
        refresh();
        into(name);
        message.mention(TEXTS.text("use.done", name, chosen.get().notation()));
    }
}

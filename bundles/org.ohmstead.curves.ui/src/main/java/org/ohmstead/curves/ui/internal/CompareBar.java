// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.RowLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.ui.internal.PowerCurves.Sort;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Project;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Chooses what is laid over the chart; remembered as long as the view is open. */
final class CompareBar {
    private static final Messages TEXTS = Messages.of(CompareBar.class);

    /** How many data sets may be laid over. */
    static final int MOST = 9;

    private static final int SENTENCE_WIDTH = 120;

    private final ProjectDesk desk;
    private final UnaryOperator<Optional<Path>> folders;
    private final Runnable changed;
    private final Composite bar;
    private final Button add;
    private final Combo kinds;
    private final Composite chips;
    private final Label sentence;
    private final List<LaidOver> all = new ArrayList<>();
    private List<Sort> offered = List.of();
    private String notice = "";

    /**
     * Makes the bar.
     *
     * @param folders asks for a project's folder, given where to begin; empty when the user does not want one after all
     * @param changed called when something else is laid over
     */
    CompareBar(Composite parent, ProjectDesk desk, UnaryOperator<Optional<Path>> folders, Runnable changed) {
        this.desk = desk;
        this.folders = folders;
        this.changed = changed;
        bar = new Composite(parent, SWT.NONE);
        Spacing.group(4).applyTo(bar);
        Label label = new Label(bar, SWT.NONE);
        label.setText(TEXTS.text("compare.with"));
        centred(label);
        add = Ids.name(new Button(bar, SWT.PUSH), "power.compare.add");
        add.setText(TEXTS.text("compare.add"));
        add.setToolTipText(TEXTS.text("compare.addHint"));
        add.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> addProject()));
        centred(add);
        kinds = Ids.name(new Combo(bar, SWT.READ_ONLY), "power.compare.kind");
        kinds.setToolTipText(TEXTS.text("compare.kindHint"));
        kinds.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> addKind()));
        centred(kinds);
        chips = Ids.name(new Composite(bar, SWT.NONE), "power.compare.list");
        RowLayoutFactory.fillDefaults().spacing(Spacing.GAP).center(true).applyTo(chips);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(chips);
        sentence = Ids.name(new Label(bar, SWT.WRAP), "power.compare.sentence");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .span(4, 1)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .exclude(true)
                .applyTo(sentence);
        sentence.setVisible(false);
        offer(PowerCurves.NOTHING);
    }

    /** Asks for a folder in a dialog. */
    static Optional<Path> ask(Shell shell, Optional<Path> start) {
        DirectoryDialog dialog = new DirectoryDialog(shell, SWT.OPEN);
        dialog.setText(TEXTS.text("compare.dialog"));
        dialog.setMessage(TEXTS.text("compare.dialogHint"));
        start.ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        return Optional.ofNullable(dialog.open()).map(Path::of);
    }

    private static void centred(Control control) {
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(control);
    }

    Composite control() {
        return bar;
    }

    /** Offers the kinds of power that the open project has. */
    void offer(PowerCurves open) {
        offered = open.sorts();
        List<String> texts = Stream.concat(
                        Stream.of(TEXTS.text("compare.prompt")),
                        offered.stream().map(Sort::text))
                .toList();
        if (!texts.equals(List.of(kinds.getItems()))) {
            kinds.setItems(texts.toArray(String[]::new));
        }
        kinds.select(0);
        showChips();
    }

    /** Forgets the kinds of power of a project that is no longer open. */
    void forgetKinds() {
        all.removeIf(LaidOver.OwnKind.class::isInstance);
        notice = "";
        showChips();
    }

    /** Returns what belongs in the chart of a group, and says what does not. */
    Comparison comparison(PowerCurves open, Optional<CurveGroup> inView) {
        Comparison found = inView.map(group -> Comparison.of(all, open, group)).orElse(Comparison.NONE);
        say(Stream.concat(Stream.of(notice), found.sentences().stream())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" ")));
        return found;
    }

    private void say(String words) {
        String text = words.replace("&", "&&");
        if (text.equals(sentence.getText())) {
            return;
        }
        sentence.setText(text);
        sentence.setForeground(Tones.of(bar).warning());
        sentence.setVisible(!words.isEmpty());
        ((GridData) sentence.getLayoutData()).exclude = words.isEmpty();
        bar.requestLayout();
    }

    private void addProject() {
        Optional<ProjectSession> session = desk.session();
        Optional<Path> start =
                session.map(ProjectSession::folder).map(Path::toAbsolutePath).map(Path::getParent);
        Optional<Path> chosen =
                folders.apply(start).map(folder -> folder.toAbsolutePath().normalize());
        if (chosen.isEmpty() || session.isEmpty()) {
            return;
        }
        Path folder = chosen.get();
        if (folder.equals(session.get().folder().toAbsolutePath().normalize())) {
            refuse(TEXTS.text("compare.isOpen", OtherLog.name(folder)));
            return;
        }
        if (!lay(new LaidOver.Awaited(folder))) {
            return;
        }
        Project project = session.get().project();
        Amplifier amplifier = project.amplifier();
        double confidence = project.sheet().confidence();
        desk.work()
                .start(
                        TEXTS.text("compare.reading", OtherLog.name(folder)),
                        progress -> OtherLog.read(folder, amplifier, confidence, progress),
                        this::arrived,
                        failure -> failed(folder, failure));
    }

    private void addKind() {
        int index = kinds.getSelectionIndex() - 1;
        kinds.select(0);
        if (index >= 0 && index < offered.size()) {
            lay(new LaidOver.OwnKind(offered.get(index)));
        }
    }

    private boolean lay(LaidOver wanted) {
        if (all.stream().anyMatch(wanted::same)) {
            refuse(TEXTS.text("compare.already"));
            return false;
        }
        all.add(wanted);
        tell();
        return true;
    }

    private void refuse(String words) {
        notice = words;
        changed.run();
    }

    private void tell() {
        notice = "";
        showChips();
        changed.run();
    }

    private void arrived(LaidOver.Known known) {
        int index = indexOf(known);
        if (bar.isDisposed() || index < 0) {
            return;
        }
        String label = known.label();
        for (int count = 2; taken(label); count++) {
            label = known.label() + " (" + count + ")";
        }
        all.set(index, known.withLabel(label));
        tell();
    }

    private boolean taken(String label) {
        return all.stream().anyMatch(each -> each.label().equals(label));
    }

    private int indexOf(LaidOver wanted) {
        for (int index = 0; index < all.size(); index++) {
            if (all.get(index).same(wanted)) {
                return index;
            }
        }
        return -1;
    }

    private void failed(Path folder, Exception failure) {
        int index = indexOf(new LaidOver.Awaited(folder));
        if (bar.isDisposed() || index < 0) {
            return;
        }
        all.remove(index);
        showChips();
        refuse(failure.getMessage() == null ? failure.toString() : failure.getMessage());
    }

    private void showChips() {
        for (Control child : chips.getChildren()) {
            child.dispose();
        }
        for (int index = 0; index < all.size(); index++) {
            chip(index + 1, all.get(index));
        }
        boolean room = all.size() < MOST;
        add.setEnabled(room && !offered.isEmpty());
        kinds.setEnabled(room && offered.size() > 1);
        chips.requestLayout();
    }

    private void chip(int number, LaidOver laid) {
        Composite chip = new Composite(chips, SWT.NONE);
        Spacing.tight(2).applyTo(chip);
        Label label = Ids.name(new Label(chip, SWT.NONE), "power.compare.label." + number);
        label.setText((number + "\u2002" + laid.label()).replace("&", "&&"));
        if (laid instanceof LaidOver.OtherProject project) {
            label.setToolTipText(project.folder().toString());
        }
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(label);
        Button remove = Ids.name(new Button(chip, SWT.PUSH), "power.compare.remove." + number);
        remove.setText("\u00d7");
        remove.setToolTipText(TEXTS.text("compare.away", laid.label()));
        remove.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> remove(laid)));
    }

    private void remove(LaidOver laid) {
        add.setFocus();
        all.remove(laid);
        tell();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Two readings side by side: the waves and spectra of their captures, and line by line what they have in common and what not. */
public final class PairComposite extends Composite {
    private static final Messages TEXTS = Messages.of(PairComposite.class);
    private static final int[] WEIGHTS = {56, 44};
    private static final int EMPTY_WIDTH = 420;
    private static final int CHARTS = 4;

    private final ProjectDesk desk;
    private final PairChoice choice;
    private final PairBar bar;
    private final MessageLine message;
    private final Composite body;
    private final StackLayout stack = new StackLayout();
    private final Label empty;
    private final SashForm sash;
    private final Slices building;
    private PairCharts charts;
    private PairTable table;
    private Optional<PairLoading.Loaded> loaded = Optional.empty();
    private Optional<PairFacts.Drawn> drawn = Optional.empty();
    private long wanted;
    private boolean complete;

    /** Makes the view, whose parts come in the next turns of the event loop. */
    public PairComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.choice = PairChoice.of(desk);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        bar = new PairBar(this, choice, this::load, this::overlay);
        message = new MessageLine(this, "pair.message");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message);
        body = new Composite(this, SWT.NONE);
        body.setLayout(stack);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(body);
        Composite emptyPage = new Composite(body, SWT.NONE);
        Spacing.page(1).applyTo(emptyPage);
        empty = Ids.name(new Label(emptyPage, SWT.WRAP | SWT.CENTER), "pair.empty");
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .align(SWT.CENTER, SWT.CENTER)
                .hint(EMPTY_WIDTH, SWT.DEFAULT)
                .applyTo(empty);
        sash = new SashForm(body, SWT.VERTICAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        stack.topControl = emptyPage;
        building = new Slices(this);
        building.add(() -> charts = new PairCharts(sash));
        for (int chart = 0; chart < CHARTS; chart++) {
            building.add(() -> charts.makeNext());
        }
        building.add(this::makeTable);
        building.add(this::start);
    }

    private void makeTable() {
        Composite room = new Composite(sash, SWT.NONE);
        room.setLayout(new FillLayout());
        table = new PairTable(room);
        sash.setWeights(WEIGHTS);
    }

    private void start() {
        complete = true;
        Registration listening = desk.listen(new Hears());
        Registration choosing = choice.listen(this::load);
        addDisposeListener(event -> {
            listening.close();
            choosing.close();
        });
        charts.showDisplay();
        load();
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            choice.choose("", "");
            load();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            charts.showDisplay();
            loaded.ifPresent(PairComposite.this::showRows);
        }
    }

    private void overlay() {
        if (complete) {
            charts.overlay(bar.overlaid());
        }
    }

    /** Reads what is chosen anew; of several wishes only the newest is answered. */
    private void load() {
        if (!complete || isDisposed()) {
            return;
        }
        wanted++;
        bar.showIds();
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            sayEmpty(TEXTS.text("pair.noProject"));
            return;
        }
        if (choice.first().isEmpty() || choice.second().isEmpty()) {
            sayEmpty(TEXTS.text("pair.choose"));
            return;
        }
        long mine = wanted;
        message.mention(TEXTS.text("pair.reading", choice.first(), choice.second()));
        PairLoading loading = new PairLoading(
                session.get().logFile(),
                session.get().capturesFolder(),
                choice.first(),
                choice.second(),
                bar.channel());
        desk.work()
                .start(
                        TEXTS.text("pair.comparing", choice.first(), choice.second()),
                        loading,
                        both -> answer(mine, () -> show(both)),
                        failure -> answer(mine, () -> fail(failure)));
    }

    private void answer(long number, Runnable shown) {
        if (number == wanted && !isDisposed()) {
            shown.run();
        }
    }

    private void sayEmpty(String sentence) {
        loaded = Optional.empty();
        message.clear();
        empty.setText(sentence);
        empty.setForeground(Tones.of(this).mutedText());
        stack.topControl = empty.getParent();
        empty.getParent().layout();
        body.layout();
    }

    private void fail(Exception failure) {
        String sentence = failure.getMessage() == null ? failure.toString() : failure.getMessage();
        sayEmpty(TEXTS.text("pair.nothing"));
        message.show(Severity.ERROR, sentence);
    }

    private void show(PairLoading.Loaded both) {
        loaded = Optional.of(both);
        drawn = Optional.empty();
        stack.topControl = sash;
        body.layout();
        bar.offer(Stream.of(both.first(), both.second())
                .flatMap(side -> side.reading().channels().stream())
                .map(ChannelReading::channel)
                .distinct()
                .toList());
        charts.show(both.first(), both.second());
        showRows(both);
        tell(both);
        long mine = wanted;
        desk.work()
                .start(
                        TEXTS.text("pair.drawing.job"),
                        progress -> PairFacts.Drawn.of(both.first(), both.second(), progress),
                        result -> answer(mine, () -> {
                            drawn = Optional.of(result);
                            showRows(both);
                        }),
                        failure -> answer(mine, () -> message.show(Severity.ERROR, failure.getMessage())));
    }

    private void showRows(PairLoading.Loaded both) {
        List<PairRow> rows = PairFacts.of(both.first(), both.second(), drawn);
        table.show(title(both.first()), title(both.second()), rows);
    }

    private static String title(PairSide side) {
        String id = side.entry().id();
        return side.entry().voided() ? TEXTS.text("pair.voided", id) : id;
    }

    private void tell(PairLoading.Loaded both) {
        List<String> troubles = Stream.of(both.first(), both.second())
                .map(PairSide::whyNoWave)
                .filter(why -> !why.isEmpty())
                .toList();
        if (!troubles.isEmpty()) {
            message.show(Severity.WARNING, String.join(" ", troubles));
            return;
        }
        long differ = PairFacts.of(both.first(), both.second()).stream()
                .filter(PairRow::marked)
                .count();
        message.mention(
                differ == 0
                        ? TEXTS.text("pair.differ.none")
                        : TEXTS.text(differ == 1 ? "pair.differ.one" : "pair.differ.many", Long.toString(differ)));
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && bar.setFocus();
    }
}

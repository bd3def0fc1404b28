// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Bench quality: the check standards, their control charts, what was found, and a place to type new values. */
public final class QualityComposite extends Composite {
    private static final Messages TEXTS = Messages.of(QualityComposite.class);
    private static final int[] TOP_AND_REST = {27, 73};
    private static final int[] LIST_AND_ENTRY = {66, 34};
    private static final int[] CHARTS_AND_TABS = {58, 42};

    private final ProjectDesk desk;
    private final Clock clock;
    private final QualitySource source;
    private final ViewMemory memory;
    private final StackLayout stack = new StackLayout();
    private final Slices building;
    private final Slices showing;
    private final Runnable addStandard;
    private final Composite content;
    private Optional<EmptyState> empty = Optional.empty();
    private ChecksTable checks;
    private ValueEntry entry;
    private MessageLine sentence;
    private ControlCharts charts;
    private CheckTabs tabs;
    private List<CheckView> read = List.of();
    private long newest;
    private boolean complete;

    /**
     * Makes the view; its parts come one after the other in the next turns of the event loop.
     *
     * @param clock in the user's time zone
     * @param addStandard leads to where check standards are added
     */
    QualityComposite(
            Composite parent,
            ProjectDesk desk,
            Clock clock,
            QualitySource source,
            ViewMemory memory,
            Runnable addStandard) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.clock = clock;
        this.source = source;
        this.memory = memory;
        setLayout(stack);
        building = new Slices(this);
        showing = new Slices(this);
        this.addStandard = addStandard;
        content = new Composite(this, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(content);
        SashForm halves = sash(content, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(halves);
        SashForm top = sash(halves, SWT.HORIZONTAL);
        Composite list = room(top);
        Composite typing = room(top);
        top.setWeights(LIST_AND_ENTRY);
        Composite rest = room(halves);
        halves.setWeights(TOP_AND_REST);
        building.add(() -> makeList(list));
        building.add(() -> makeEntry(typing));
        building.add(() -> makeCharts(rest));
        building.add(this::start);
        turn();
    }

    private static SashForm sash(Composite parent, int direction) {
        SashForm sash = new SashForm(parent, direction | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        return sash;
    }

    private static Composite room(Composite parent) {
        Composite room = new Composite(parent, SWT.NONE);
        Spacing.group(1).applyTo(room);
        return room;
    }

    private void makeList(Composite room) {
        checks = new ChecksTable(room, chosen -> showChosen());
        GridDataFactory.fillDefaults().grab(true, true).applyTo(checks.control());
        room.requestLayout();
    }

    private void makeEntry(Composite room) {
        entry = new ValueEntry(room, memory, this::write);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(entry.control());
        room.requestLayout();
    }

    /** The charts and the tabs put pieces of their own before the start. */
    private void makeCharts(Composite room) {
        sentence = new MessageLine(room, "quality.sentence");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(sentence);
        SashForm halves = sash(room, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(halves);
        charts = new ControlCharts(halves, showing, index -> tabs.choose(index));
        tabs = new CheckTabs(halves, showing, this::valueChosen);
        halves.setWeights(CHARTS_AND_TABS);
        room.requestLayout();
    }

    /** Says what there is to say of a value, and turns the other views to its entry. */
    private void valueChosen(int index) {
        charts.point(index);
        checks.chosen()
                .filter(check -> index < check.values().size())
                .flatMap(check -> desk.log().entry(check.values().get(index).entryId()))
                .ifPresent(entry -> desk.choose(Optional.of(entry)));
    }

    private void start() {
        complete = true;
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> {
            newest++;
            listening.close();
        });
        styleReadOut();
        readAnew();
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            take(List.of());
            readAnew();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            boolean matters = !before.checkStandards().equals(after.checkStandards())
                    || !before.plan().equals(after.plan())
                    || !before.setAside().equals(after.setAside())
                    || !before.bench().place().equals(after.bench().place());
            if (matters) {
                readAnew();
            }
        }

        @Override
        public void logChanged(LogSnapshot log) {
            readAnew();
        }

        @Override
        public void stateChanged() {
            showEntry();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            styleReadOut();
            take(read);
        }
    }

    private void styleReadOut() {
        charts.style(
                new ReadOutStyle(desk.display().decimalComma(), desk.display().coverageWords()));
    }

    /** Reads in the background; of several requests only the newest is answered. */
    private void readAnew() {
        newest++;
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty() || session.get().project().checkStandards().isEmpty()) {
            take(List.of());
            return;
        }
        long mine = newest;
        Project project = session.get().project();
        Path folder = session.get().folder();
        LocalDate today = LocalDate.now(clock);
        desk.work()
                .start(
                        TEXTS.text("quality.job"),
                        progress -> source.read(project, folder, today, progress),
                        found -> ifNewest(mine, () -> take(found)),
                        failure -> ifNewest(mine, () -> fail(failure)));
    }

    private void ifNewest(long number, Runnable action) {
        if (number == newest && !isDisposed()) {
            action.run();
        }
    }

    private void take(List<CheckView> found) {
        read = found;
        showing.add(() -> {
            if (read == found) {
                checks.show(found);
                showChosen();
                turn();
            }
        });
    }

    /** Shows the content when there is some, else what to do. */
    private void turn() {
        boolean any = desk.session()
                .map(session -> !session.project().checkStandards().isEmpty())
                .orElse(false);
        Control wanted = any ? content : whyEmpty().control();
        if (stack.topControl != wanted) {
            stack.topControl = wanted;
            layout(true, true);
        }
    }

    /** Returns what is shown instead of the content; made when it is needed first. */
    private EmptyState whyEmpty() {
        EmptyState shown =
                empty.orElseGet(() -> new EmptyState(this, "quality.empty", TEXTS.text("quality.add"), addStandard));
        empty = Optional.of(shown);
        if (desk.session().isEmpty()) {
            shown.show(TEXTS.text("quality.noProject"), TEXTS.text("quality.noProject.hint"), false);
        } else {
            shown.show(TEXTS.text("quality.none"), TEXTS.text("quality.none.hint"), true);
        }
        return shown;
    }

    private void fail(Exception failure) {
        take(List.of());
        showing.add(() -> sentence.show(Severity.ERROR, TEXTS.text("problem.unread", Shown.reason(failure))));
    }

    private void showChosen() {
        Optional<CheckView> chosen = checks.chosen();
        showEntry();
        chosen.ifPresentOrElse(
                check -> {
                    if (check.standing() == Standing.STOP) {
                        sentence.show(Severity.ERROR, said(check));
                    } else if (check.standing() == Standing.LOOK
                            || !check.reminder().isEmpty()) {
                        sentence.show(Severity.WARNING, said(check));
                    } else {
                        sentence.mention(said(check));
                    }
                },
                sentence::clear);
        String message = chosen.map(check -> check.standard().isTypedIn()
                        ? TEXTS.text("quality.noValue.typed", check.standard().name())
                        : TEXTS.text(
                                "quality.noValue.step",
                                check.standard().name(),
                                check.standard().stepId()))
                .orElse("");
        showing.add(() -> charts.show(chosen, message));
        showing.add(() -> tabs.show(chosen));
    }

    private static String said(CheckView check) {
        String words = Shown.sentence(TEXTS.text("check.said", check.standing().words(), check.sentence()));
        return check.reminder().isEmpty() || words.contains(check.reminder()) ? words : words + " " + check.reminder();
    }

    private void showEntry() {
        if (!complete) {
            return;
        }
        Optional<CheckView> chosen = checks.chosen();
        boolean readOnly = desk.session().map(ProjectSession::readOnly).orElse(true);
        entry.of(chosen, whyClosed(chosen, readOnly));
    }

    private static String whyClosed(Optional<CheckView> chosen, boolean readOnly) {
        if (chosen.isEmpty()) {
            return "";
        }
        if (!chosen.get().standard().isTypedIn()) {
            return TEXTS.text("entry.ofStep", chosen.get().standard().stepId());
        }
        return readOnly ? TEXTS.text("entry.readOnly") : "";
    }

    private void write(CheckView check, double value, String operator, Consumer<Optional<String>> done) {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            done.accept(Optional.of(TEXTS.text("entry.closed")));
            return;
        }
        ProjectSession open = session.get();
        QualitySource.Typed typed = new QualitySource.Typed(
                open.project(), open.revisionSha256(), open.folder(), check.standard(), value, operator);
        desk.work()
                .start(
                        TEXTS.text("entry.job", check.standard().name()),
                        progress -> {
                            source.append(typed);
                            return true;
                        },
                        written -> {
                            done.accept(Optional.empty());
                            desk.refreshLog();
                        },
                        failure -> done.accept(Optional.of(Shown.reason(failure))));
    }

    @Override
    public boolean setFocus() {
        if (isDisposed()) {
            return false;
        }
        if (!complete) {
            return forceFocus();
        }
        // A composite that is being disposed is asked to give the focus to one of its own.
        if (stack.topControl.isDisposed() || checks.control().isDisposed()) {
            return false;
        }
        return stack.topControl == content
                ? checks.control().setFocus()
                : empty.map(EmptyState::focus).orElse(false) || forceFocus();
    }
}

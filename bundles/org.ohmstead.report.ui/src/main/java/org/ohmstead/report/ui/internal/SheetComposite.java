// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/**
 * The results sheet of the open project as it would be published now: verdicts, pages, publishing and export. It is made anew in the
 * background when the project or the log changes.
 */
public final class SheetComposite extends Composite {
    private static final int SETTLE_MILLISECONDS = 400;
    private static final int EMPTY_WIDTH = 420;

    private final ProjectDesk desk;
    private final SheetMaker maker;
    private final SheetBar bar;
    private final ChoiceBar choices;
    private final NoticeBar notice;
    private final SheetFiles files;
    private final Composite area;
    private final StackLayout stack = new StackLayout();
    private final Composite emptyPage;
    private final Label empty;
    private final Composite preview;
    private final Slices building;
    private VerdictStrip verdicts;
    private PageBar pageBar;
    private PageColumn pages;
    private final Runnable refresh = this::refresh;
    private Optional<ProjectSession> shownOf = Optional.empty();
    private boolean stale;
    private boolean shown;
    private boolean draftAsked;
    private boolean complete;
    private long generation;
    private long shownGeneration;

    /**
     * Makes the view; the preview, which is not in sight at first, comes in the next turns of the event loop.
     *
     * @param parent where it stands
     * @param desk with the project
     * @param softwareVersion that sheets name, not blank
     */
    public SheetComposite(Composite parent, ProjectDesk desk, String softwareVersion) {
        this(
                parent,
                desk,
                new SheetMaker(softwareVersion, Clock.systemUTC()),
                folder -> Program.launch(folder.toString()));
    }

    SheetComposite(Composite parent, ProjectDesk desk, SheetMaker maker, Consumer<Path> folderOpener) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.maker = maker;
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        bar = new SheetBar(this, new Buttons());
        choices = new ChoiceBar(this, projectsChoice(), chosen -> outOfDate());
        notice = new NoticeBar(this);
        files = new SheetFiles(desk, maker, notice, folderOpener, choices::choice);
        area = new Composite(this, SWT.NONE);
        area.setLayout(stack);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(area);
        emptyPage = new Composite(area, SWT.NONE);
        Spacing.page(1).applyTo(emptyPage);
        empty = Ids.name(new Label(emptyPage, SWT.WRAP | SWT.CENTER), "sheet.empty");
        GridDataFactory.fillDefaults()
                .grab(true, true)
                .align(SWT.CENTER, SWT.CENTER)
                .hint(EMPTY_WIDTH, SWT.DEFAULT)
                .applyTo(empty);
        preview = new Composite(area, SWT.NONE);
        Spacing.group(1).applyTo(preview);
        bar.allow(desk.session().isPresent());
        showEmpty(emptyReason().orElse(Texts.say("state.making")));
        building = new Slices(this);
        building.add(this::addChoices);
        building.add(() -> verdicts = new VerdictStrip(preview));
        building.add(() -> verdicts.addColumns());
        building.add(this::makePages);
        building.add(this::start);
    }

    private void addChoices() {
        choices.fill();
        choices.allow(desk.session().isPresent());
        layout(true, true);
    }

    /** Returns what the open project says of the form of its sheet, or what is usual. */
    private SheetChoice projectsChoice() {
        return SheetChoice.of(desk.session()
                .map(session -> session.project().sheet().layout())
                .orElse(SheetLayout.USUAL));
    }

    private void makePages() {
        GridDataFactory.fillDefaults().grab(true, false).applyTo(verdicts.control());
        pageBar = new PageBar(preview);
        pages = new PageColumn(preview, desk.work(), pageBar::update);
        pageBar.connect(pages);
        GridDataFactory.fillDefaults().grab(true, true).hint(SWT.DEFAULT, 120).applyTo(pages.control());
    }

    /** Has the sheet made when there is where to show it. */
    private void start() {
        complete = true;
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> {
            listening.close();
            getDisplay().timerExec(-1, refresh);
        });
        startOver();
    }

    private final class Buttons implements SheetBar.Actions {
        @Override
        public void publish() {
            files.publish();
        }

        @Override
        public void export(ExportForm form) {
            askFile(form).ifPresent(SheetComposite.this::export);
        }
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            notice.clear();
            choices.show(projectsChoice());
            startOver();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            choices.show(choices.choice()
                    .after(before.sheet().layout(), after.sheet().layout()));
            outOfDate();
        }

        @Override
        public void stateChanged() {
            // Saving turns a draft into what can be published; nothing else of the state stands in the sheet.
            if (!stale && desk.session().map(ProjectSession::dirty).orElse(false) != draftAsked) {
                outOfDate();
            }
        }

        @Override
        public void logChanged(LogSnapshot log) {
            outOfDate();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            // The sheet itself is published and stays as it is.
            verdicts.refresh();
        }
    }

    /** Exports to a file; how its name ends says what: .html or .pdf the sheet, .csv the readings, .jsonl the whole log. */
    public void export(Path file) {
        files.export(file);
    }

    /** Makes the sheet anew if it is out of date; for whoever brings the view to the front. */
    public void refreshIfStale() {
        if (!isDisposed() && !complete) {
            building.add(this::refreshIfStale);
        } else if (stale && !isDisposed()) {
            getDisplay().timerExec(0, refresh);
        }
    }

    private Optional<Path> askFile(ExportForm form) {
        if (desk.session().isEmpty()) {
            return Optional.empty();
        }
        FileDialog dialog = new FileDialog(getShell(), SWT.SAVE);
        dialog.setText(Texts.say("export.title"));
        dialog.setFilterNames(new String[] {form.filterName()});
        dialog.setFilterExtensions(new String[] {"*" + form.ending()});
        String name = form.isSheet()
                ? Texts.say("export.sheetName") + choices.choice().suffix()
                : Texts.say("export.logName");
        dialog.setFileName(name + form.ending());
        dialog.setFilterPath(desk.session().get().folder().getParent().toString());
        dialog.setOverwrite(true);
        return Optional.ofNullable(dialog.open()).map(Path::of).map(chosen -> {
            boolean ended = chosen.getFileName().toString().contains(".");
            return ended ? chosen : chosen.resolveSibling(chosen.getFileName() + form.ending());
        });
    }

    private void startOver() {
        shown = false;
        shownOf = desk.session();
        pages.show(Optional.empty());
        outOfDate();
    }

    private void outOfDate() {
        stale = true;
        generation++;
        bar.allow(desk.session().isPresent());
        choices.allow(desk.session().isPresent());
        Optional<String> reason = emptyReason();
        if (reason.isPresent()) {
            showEmpty(reason.get());
            return;
        }
        if (shown) {
            bar.state(Texts.say("state.refreshing"), true);
        } else {
            showEmpty(Texts.say("state.making"));
        }
        getDisplay().timerExec(SETTLE_MILLISECONDS, refresh);
    }

    /** Returns what to say in place of a sheet, or empty when there is one to be made. */
    private Optional<String> emptyReason() {
        LogSnapshot log = desk.log();
        if (desk.session().isEmpty()) {
            return Optional.of(Texts.say("empty.noProject"));
        }
        if (log.state() == LogState.READING) {
            return shown ? Optional.empty() : Optional.of(Texts.say("empty.reading"));
        }
        if (log.state() == LogState.BROKEN || log.state() == LogState.UNREADABLE) {
            return SheetFiles.refusal(log);
        }
        if (log.entries().stream().noneMatch(entry -> entry.reading().isPresent())) {
            return Optional.of(Texts.say("empty.noReadings"));
        }
        return Optional.empty();
    }

    private void showEmpty(String sentence) {
        boolean bad = desk.session().isPresent()
                && (desk.log().state() == LogState.BROKEN || desk.log().state() == LogState.UNREADABLE);
        Tones tones = Tones.of(empty);
        empty.setForeground(bad ? tones.error() : tones.mutedText());
        empty.setText(sentence.replace("&", "&&"));
        bar.state("", false);
        shown = false;
        top(emptyPage);
        emptyPage.layout();
    }

    private void top(Composite wanted) {
        if (stack.topControl != wanted) {
            stack.topControl = wanted;
            area.layout();
        }
    }

    private void refresh() {
        if (isDisposed() || !stale || emptyReason().isPresent() || desk.log().state() == LogState.READING) {
            return;
        }
        // A view behind others is made when it comes to the front.
        if (!isVisible()) {
            return;
        }
        stale = false;
        long asked = generation;
        SheetInput input = SheetInput.of(desk.session().orElseThrow(), desk.log());
        SheetChoice choice = choices.choice();
        draftAsked = input.draft();
        EndedWork.start(
                desk.work(),
                Texts.say("state.job"),
                progress -> {
                    ResultsSheet sheet = maker.sheet(input, choice);
                    ResultsSheet told = maker.told(sheet, input, choice);
                    progress.stopIfCancelled();
                    desk.work().later(() -> ifCurrent(asked, () -> verdicts.show(told)));
                    return SheetMaker.pages(sheet, told);
                },
                made -> ifCurrent(asked, () -> show(made, input.draft())),
                failure -> ifCurrent(asked, () -> failed(failure.getMessage())),
                () -> ifCurrent(asked, () -> failed(Texts.say("state.cancelled"))));
    }

    private void ifCurrent(long asked, Runnable action) {
        if (!isDisposed() && asked == generation) {
            action.run();
        }
    }

    private void show(SheetMaker.Pages made, boolean draft) {
        shown = true;
        stale = false;
        shownGeneration = generation;
        top(preview);
        pages.show(Optional.of(made));
        String state = Texts.say(draft ? "state.draft" : "state.current");
        bar.state(
                made.remark().isEmpty() ? state : made.remark(),
                draft || !made.remark().isEmpty());
    }

    private void failed(String sentence) {
        stale = true;
        if (shown) {
            bar.state(sentence, true);
        } else {
            showEmpty(sentence);
        }
    }

    /** Returns whether the sheet is shown as things are now, every visible page sharp. */
    boolean settled() {
        return shown && shownGeneration == generation && shownOf.equals(desk.session()) && pages.complete();
    }

    PageColumn pages() {
        return pages;
    }

    @Override
    public boolean setFocus() {
        // A composite that is being disposed is asked to give the focus to one of its own.
        if (!isDisposed() && stack.topControl == preview) {
            return !pages.control().isDisposed() && pages.control().setFocus();
        }
        return !isDisposed() && super.setFocus();
    }
}

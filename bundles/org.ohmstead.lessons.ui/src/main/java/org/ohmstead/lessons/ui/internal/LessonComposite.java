// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonProvider;
import org.ohmstead.lessons.LessonSheet;
import org.ohmstead.lessons.Lessons;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** The lessons: a list, and the chosen one with its controls, question, plots and figures; works without a project too. */
public final class LessonComposite extends Composite {
    private static final int[] LIST_AND_LESSON = {19, 81};
    private static final int[] FLOW_AND_PICTURES = {43, 57};
    private static final int LARGER = 4;

    /** What is around the view. */
    public interface Surroundings {
        /** Returns what registered lessons of its own; asked away from the user interface too. */
        List<LessonProvider> providers();

        /** Asks for a file to write, given a name for it. */
        Optional<Path> askFile(String name);

        /** Shows a file with the program that the machine has for it. */
        void open(Path file);
    }

    private final ProjectDesk desk;
    private final Surroundings surroundings;
    private final LessonSheets sheets;
    private final PaneStyle style;
    private final LessonList list;
    private final LessonHead head;
    private final ScrolledComposite left;
    private final ScrolledComposite right;
    private final SheetLine message;
    private final Slices building;
    private final Refreshing refreshing;
    private final Runnable fitting = this::fit;
    private final List<Runnable> parts = List.of(
            this::showFlow, this::showFigures, this::showPictures, this::showHead, this::showExplanation, fitting);
    private PicturesPane pictures;
    private FiguresPane figures;
    private Composite seen;
    private Optional<LessonRun> run = Optional.empty();
    private Optional<LessonFlow> flow = Optional.empty();
    private Optional<PresenterWindow> presenter = Optional.empty();
    private Optional<String> wanted = Optional.empty();
    private long reading;

    /**
     * Makes the view; its parts come in the next turns of the event loop.
     *
     * @param parent where it stands
     * @param desk the open project, or none
     * @param surroundings what is around the view
     */
    public LessonComposite(Composite parent, ProjectDesk desk, Surroundings surroundings) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.surroundings = surroundings;
        sheets = new LessonSheets(desk, this::written, this::failed);
        style = PaneStyle.view(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        SashForm main = sash(this);
        list = new LessonList(main, this::begin, this::read);
        Composite lesson = new Composite(main, SWT.NONE);
        Spacing.group(1).applyTo(lesson);
        main.setWeights(LIST_AND_LESSON);
        head = new LessonHead(lesson, titleFont(), new Doings());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(head.control());
        SashForm halves = sash(lesson);
        left = scrolled(halves, "lesson.flow");
        right = scrolled(halves, "lesson.seen");
        halves.setWeights(FLOW_AND_PICTURES);
        message = new SheetLine(lesson, surroundings::open);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(message.control());
        building = new Slices(this);
        refreshing = new Refreshing(new Slices(this));
        building.add(this::makeSeen);
        building.add(this::start);
        addListener(SWT.Dispose, event -> end());
    }

    private Font titleFont() {
        Font font = FontDescriptor.createFrom(getFont())
                .setStyle(SWT.BOLD)
                .increaseHeight(LARGER)
                .createFont(getDisplay());
        addListener(SWT.Dispose, event -> font.dispose());
        return font;
    }

    private static SashForm sash(Composite parent) {
        SashForm sash = new SashForm(parent, SWT.HORIZONTAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        return sash;
    }

    private ScrolledComposite scrolled(Composite parent, String id) {
        ScrolledComposite made = Ids.name(new ScrolledComposite(parent, SWT.V_SCROLL), id);
        made.setExpandHorizontal(true);
        made.setExpandVertical(true);
        made.setShowFocusedControl(true);
        made.addListener(SWT.Resize, event -> fit());
        return made;
    }

    private void makeSeen() {
        seen = new Composite(right, SWT.NONE);
        Spacing.group(1).applyTo(seen);
        figures = new FiguresPane(seen, style, false);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(figures.control());
        pictures = new PicturesPane(seen);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(pictures.control());
        right.setContent(seen);
    }

    private void start() {
        Registration listening = desk.listen(new Hears());
        addListener(SWT.Dispose, event -> listening.close());
        read();
    }

    private void end() {
        building.clear();
        run.ifPresent(LessonRun::stop);
        presenter.ifPresent(PresenterWindow::close);
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            message.clear();
            read();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            read();
        }
    }

    /** Reads the lessons in the background; the chosen one stays, with its values, if it is still there. */
    private void read() {
        reading++;
        long number = reading;
        Locale locale = LessonLocale.now();
        Optional<Path> project = desk.session().map(ProjectSession::folder);
        desk.work()
                .start(
                        Texts.say("list.job"),
                        progress -> LessonLibrary.read(locale, surroundings.providers(), project),
                        library -> {
                            if (number == reading && !isDisposed()) {
                                take(library);
                            }
                        },
                        failure -> failed(String.valueOf(failure.getMessage())));
    }

    private void take(LessonLibrary library) {
        list.show(library);
        Optional<Lesson> lesson = wanted.or(() -> run.map(now -> now.lesson().id()))
                .flatMap(id -> Lessons.find(library.lessons(), id))
                .or(() -> library.lessons().stream().findFirst());
        wanted = Optional.empty();
        lesson.ifPresent(
                chosen -> begin(chosen, run.filter(now -> now.lesson().id().equals(chosen.id()))));
    }

    private void begin(Lesson lesson) {
        if (run.isEmpty() || !run.get().lesson().equals(lesson)) {
            begin(lesson, Optional.empty());
        }
    }

    private void begin(Lesson lesson, Optional<LessonRun> earlier) {
        message.clear();
        list.select(Optional.of(lesson));
        run.ifPresent(LessonRun::stop);
        building.clear();
        LessonRun fresh = new LessonRun(getDisplay(), lesson, earlier);
        run = Optional.of(fresh);
        fresh.listen(this::show);
        head.begin(fresh);
        flow.ifPresent(before -> before.control().dispose());
        LessonFlow made = new LessonFlow(left, fresh, style, building, this::show, this::fitSoon);
        flow = Optional.of(made);
        left.setContent(made.control());
        left.setOrigin(0, 0);
        show();
        presenter.filter(PresenterWindow::isOpen).ifPresent(window -> window.follow(fresh));
    }

    /** Has all that may have changed shown anew, soon. */
    private void show() {
        parts.forEach(refreshing::ask);
    }

    private void showFlow() {
        flow.ifPresent(LessonFlow::show);
    }

    private void showExplanation() {
        flow.ifPresent(LessonFlow::showExplanation);
    }

    private void showHead() {
        run.ifPresent(head::show);
    }

    private void showFigures() {
        run.filter(now -> figures != null).ifPresent(now -> figures.show(now));
    }

    private void showPictures() {
        run.filter(now -> pictures != null).ifPresent(now -> pictures.show(now));
    }

    private void fitSoon() {
        refreshing.ask(fitting);
    }

    private void fit() {
        flow.ifPresent(LessonFlow::fit);
        int width = right.getClientArea().width;
        if (seen != null && width > 0) {
            int height = seen.computeSize(width, SWT.DEFAULT, false).y;
            if (height != right.getMinHeight()) {
                right.setMinHeight(height);
            }
        }
    }

    private final class Doings implements LessonHead.Actions {
        @Override
        public void present() {
            run.ifPresent(LessonComposite.this::present);
        }

        @Override
        public void sheetIntoProject(LessonSheet.Kind kind) {
            run.ifPresent(now -> sheets.folder()
                    .ifPresent(folder ->
                            sheets.write(now, kind, folder.resolve(LessonSheets.fileName(now.lesson(), kind)))));
        }

        @Override
        public void sheetIntoFile(LessonSheet.Kind kind) {
            run.ifPresent(now -> surroundings
                    .askFile(LessonSheets.fileName(now.lesson(), kind))
                    .ifPresent(file -> sheets.write(now, kind, file)));
        }

        @Override
        public boolean projectOpen() {
            return sheets.folder().isPresent();
        }
    }

    private void present(LessonRun now) {
        if (presenter.filter(PresenterWindow::isOpen).isEmpty()) {
            presenter = Optional.of(new PresenterWindow(getShell(), now));
        }
        presenter.get().toFront();
    }

    /** Returns the window before the room, while it is open. */
    Optional<PresenterWindow> presenter() {
        return presenter.filter(PresenterWindow::isOpen);
    }

    /** Returns the lesson as it is worked through. */
    Optional<LessonRun> run() {
        return run;
    }

    /** Returns the ids of the lessons in the list. */
    List<String> lessonIds() {
        return list.ids();
    }

    /** Returns whether all parts of the chosen lesson are there, with what its model gave. */
    boolean complete() {
        return building.done()
                && refreshing.done()
                && run.filter(now -> now.result().isPresent() || now.trouble().isPresent())
                        .isPresent();
    }

    private void written(Path file) {
        if (!isDisposed()) {
            message.written(file);
        }
    }

    private void failed(String sentence) {
        if (!isDisposed()) {
            message.show(Severity.ERROR, sentence);
        }
    }

    /** Chooses a lesson by its id as soon as it is there. */
    public void choose(String lessonId) {
        wanted = Optional.of(lessonId);
        if (reading > 0) {
            read();
        }
    }

    /** Returns the id of the lesson that is shown. */
    public Optional<String> chosen() {
        return run.map(now -> now.lesson().id()).or(() -> wanted);
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && list.setFocus();
    }
}

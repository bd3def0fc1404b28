// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Layout;
import org.eclipse.swt.widgets.Monitor;
import org.eclipse.swt.widgets.Shell;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Tones;

/**
 * A lesson before a room: one thing at a time in large type, with the controls of the view. Page keys and arrows step, F5 takes the whole
 * screen, Escape gives it back and then ends.
 */
final class PresenterWindow {
    private static final double SHARE_OF_SCREEN = 0.85;
    private static final int MARGIN = 26;

    private final Shell shell;
    private final PresenterType type;
    private final Label lessonTitle;
    private final Label stepTitle;
    private final Composite place;
    private final Button back;
    private final Button next;
    private final CLabel hint;
    private LessonRun run;
    private Runnable stopListening = () -> {};
    private List<PresenterStep> steps = List.of();
    private int index;
    private Optional<PresenterPage> page = Optional.empty();
    private Optional<PresenterColumn> column = Optional.empty();
    private Tones tones;
    private boolean refitting;
    private boolean answerWanted;

    /** Opens the window beside its owner; on a second screen, where there is one, it takes all of that. */
    PresenterWindow(Shell owner, LessonRun run) {
        this.run = run;
        shell = Ids.name(new Shell(owner.getDisplay(), SWT.SHELL_TRIM), "presenter");
        shell.setText(Texts.say("presenter.title", run.lesson().title()));
        shell.setImages(owner.getImages());
        type = new PresenterType(shell.getDisplay());
        tones = Tones.of(owner);
        lessonTitle = Ids.name(new Label(shell, SWT.NONE), "presenter.lesson");
        stepTitle = Ids.name(new Label(shell, SWT.RIGHT), "presenter.step");
        place = Ids.name(new Composite(shell, SWT.NONE), "presenter.page");
        Composite foot = new Composite(shell, SWT.NONE);
        back = Ids.name(new Button(foot, SWT.PUSH), "presenter.back");
        hint = Ids.name(new CLabel(foot, SWT.CENTER), "presenter.hint");
        next = Ids.name(new Button(foot, SWT.PUSH), "presenter.next");
        place.setLayout(new ColumnAndPage());
        back.setText(Texts.say("presenter.back"));
        back.addListener(SWT.Selection, event -> back());
        next.addListener(SWT.Selection, event -> next());
        GridLayoutFactory.fillDefaults().numColumns(2).applyTo(shell);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(lessonTitle);
        GridDataFactory.fillDefaults().align(SWT.END, SWT.FILL).applyTo(stepTitle);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, true).hint(1, 1).applyTo(place);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(foot);
        GridLayoutFactory.fillDefaults().numColumns(3).applyTo(foot);
        GridDataFactory.fillDefaults().applyTo(back);
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .applyTo(hint);
        GridDataFactory.fillDefaults().applyTo(next);
        PresenterKeys keys = new PresenterKeys(this, shell);
        shell.addListener(SWT.Dispose, event -> end(keys));
        listen();
        steps = PresenterStep.of(run);
        openOn(owner);
        shell.addListener(SWT.Resize, event -> refitLater());
        shell.addListener(SWT.Activate, event -> followTheme(owner));
    }

    private void end(PresenterKeys keys) {
        keys.stop();
        stopListening.run();
        type.dispose();
    }

    private void openOn(Shell owner) {
        Monitor here = owner.getMonitor();
        Optional<Monitor> other = List.of(shell.getDisplay().getMonitors()).stream()
                .filter(monitor -> !monitor.equals(here))
                .findFirst();
        Rectangle room = other.orElse(here).getClientArea();
        int width = (int) (SHARE_OF_SCREEN * room.width);
        int height = (int) (SHARE_OF_SCREEN * room.height);
        shell.setBounds(room.x + (room.width - width) / 2, room.y + (room.height - height) / 2, width, height);
        refit();
        shell.open();
        shell.setFullScreen(other.isPresent());
    }

    private void listen() {
        stopListening.run();
        stopListening = run.listen(this::changed);
    }

    boolean isOpen() {
        return !shell.isDisposed();
    }

    void close() {
        if (isOpen()) {
            shell.dispose();
        }
    }

    void toFront() {
        shell.setActive();
    }

    Shell shell() {
        return shell;
    }

    /** Returns the page that is shown. */
    PresenterPage page() {
        return page.orElseThrow();
    }

    /** Shows another lesson, or the same one made anew, where the other was. */
    void follow(LessonRun other) {
        boolean same = other.lesson().id().equals(run.lesson().id());
        run = other;
        listen();
        shell.setText(Texts.say("presenter.title", run.lesson().title()));
        steps = PresenterStep.of(run);
        index = same ? Math.min(index, steps.size() - 1) : 0;
        refit();
    }

    private void changed() {
        if (!isOpen()) {
            return;
        }
        String before = steps.get(index).key();
        steps = PresenterStep.of(run);
        Optional<PresenterStep> here =
                steps.stream().filter(step -> step.key().equals(before)).findFirst();
        if (here.isEmpty()) {
            answerWanted = false;
            goTo(indexOf(PresenterStep.Kind.QUESTION));
        } else {
            index = steps.indexOf(here.get());
            page.ifPresent(PresenterPage::show);
            column.ifPresent(PresenterColumn::show);
            showFoot();
        }
        if (answerWanted && run.open()) {
            answerWanted = false;
            goTo(indexOf(PresenterStep.Kind.ANSWER));
        }
    }

    private int indexOf(PresenterStep.Kind kind) {
        return steps.indexOf(
                steps.stream().filter(step -> step.kind() == kind).findFirst().orElseThrow());
    }

    /** Goes to the next step; the question is left only with a prediction. */
    void next() {
        if (steps.get(index).kind() == PresenterStep.Kind.QUESTION && !run.open()) {
            answerWanted = true;
            page.flatMap(PresenterPage::prediction).ifPresent(PredictionPane::check);
            if (run.guess().isEmpty()) {
                answerWanted = false;
                hint.setText(Texts.say("presenter.first"));
                hint.setForeground(tones.warning());
            } else {
                changed();
            }
        } else if (index + 1 < steps.size()) {
            goTo(index + 1);
        }
    }

    /** Goes to the step before. */
    void back() {
        if (index > 0) {
            goTo(index - 1);
        }
    }

    /** Goes to the first step, or to the last that may be shown. */
    void goToEnd(boolean last) {
        goTo(last ? steps.size() - 1 : 0);
    }

    /** Chooses an option of the question by its place from 0. */
    void choose(int option) {
        page.flatMap(PresenterPage::prediction).ifPresent(pane -> pane.choose(option));
    }

    /** Takes the whole screen, or gives it back. */
    void toggleFullScreen() {
        shell.setFullScreen(!shell.getFullScreen());
    }

    private void goTo(int wanted) {
        index = wanted;
        showPage();
    }

    /** Sizes come by the dozen while a window is drawn larger. */
    private void refitLater() {
        if (!refitting) {
            refitting = true;
            shell.getDisplay().asyncExec(() -> {
                refitting = false;
                if (isOpen()) {
                    refit();
                }
            });
        }
    }

    private void followTheme(Shell owner) {
        if (!owner.isDisposed() && !Tones.of(owner).equals(tones)) {
            tones = Tones.of(owner);
            refit();
        }
    }

    private void refit() {
        Rectangle room = shell.getClientArea();
        type.fit(room.width, room.height);
        int margin = type.pixels(MARGIN);
        GridLayoutFactory.fillDefaults()
                .numColumns(2)
                .margins(margin, margin / 2)
                .spacing(margin, margin / 2)
                .applyTo(shell);
        shell.setBackground(tones.background());
        place.setBackground(tones.background());
        hint.getParent().setBackground(tones.background());
        for (Control label : List.of(lessonTitle, stepTitle, hint)) {
            label.setBackground(tones.background());
            label.setForeground(tones.mutedText());
            label.setFont(type.font(PresenterType.LEAST_POINTS, false));
        }
        for (Button button : List.of(back, next)) {
            button.setFont(type.font(PresenterType.LEAST_POINTS, false));
        }
        stepTitle.setForeground(tones.accent());
        shell.layout(true, true);
        column.ifPresent(PresenterColumn::dispose);
        column = Optional.empty();
        showPage();
    }

    private void showPage() {
        PresenterStep step = steps.get(index);
        lessonTitle.setText(Texts.plain(run.lesson().title()));
        stepTitle.setText(Texts.plain(step.title()));
        page.ifPresent(PresenterPage::dispose);
        showFoot();
        showColumn(step.live());
        shell.layout(new Control[] {lessonTitle, stepTitle});
        if (!keepsFocus(step)) {
            next.setFocus();
        }
        page = Optional.of(new PresenterPage(place, run, step, type, tones, this::pageShown));
    }

    /** Returns whether a slider that has the focus is still in sight. */
    private boolean keepsFocus(PresenterStep step) {
        Control focus = shell.getDisplay().getFocusControl();
        return step.live() && focus != null && focus.getShell() == shell && focus.getParent() != next.getParent();
    }

    private void pageShown() {
        if (!run.open()) {
            page.flatMap(PresenterPage::prediction).ifPresent(PredictionPane::setFocus);
        }
    }

    /** Shows the controls, which are made when they are wanted first. */
    private void showColumn(boolean wanted) {
        if (wanted && column.isEmpty()) {
            column = Optional.of(new PresenterColumn(place, run, type, tones));
        }
        column.ifPresent(made -> made.control().setVisible(wanted));
    }

    /** Returns the controls, once they were wanted. */
    Optional<PresenterColumn> column() {
        return column;
    }

    /** The column of controls at the left, where there is one now, and the page. */
    private final class ColumnAndPage extends Layout {
        @Override
        protected Point computeSize(Composite composite, int widthHint, int heightHint, boolean flush) {
            return new Point(Math.max(0, widthHint), Math.max(0, heightHint));
        }

        @Override
        protected void layout(Composite composite, boolean flush) {
            Rectangle room = composite.getClientArea();
            int width = PresenterColumn.width(composite);
            column.map(PresenterColumn::control)
                    .filter(control -> !control.isDisposed())
                    .ifPresent(control -> control.setBounds(0, 0, width, room.height));
            page.flatMap(PresenterPage::control)
                    .ifPresent(control -> control.setBounds(
                            room.width - page.get().width(), 0, page.get().width(), room.height));
        }
    }

    private void showFoot() {
        PresenterStep step = steps.get(index);
        boolean asking = step.kind() == PresenterStep.Kind.QUESTION && !run.open();
        String forward = Texts.say(asking ? "presenter.check" : "presenter.next");
        if (!forward.equals(next.getText())) {
            next.setText(forward);
            next.requestLayout();
        }
        back.setEnabled(index > 0);
        next.setEnabled(asking || index + 1 < steps.size());
        String place = index == 0
                ? Texts.say("presenter.keys")
                : Texts.say("presenter.place", String.valueOf(index + 1), String.valueOf(steps.size()));
        hint.setForeground(tones.mutedText());
        hint.setText(run.trouble().orElse(place));
    }
}

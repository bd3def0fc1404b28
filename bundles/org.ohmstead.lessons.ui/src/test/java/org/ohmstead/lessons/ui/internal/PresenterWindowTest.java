// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.workbench.look.Ids;

class PresenterWindowTest {
    @TempDir
    Path folder;

    private Stage stage;
    private LessonComposite view;
    private PresenterWindow presenter;

    @BeforeEach
    void open() throws Exception {
        stage = new Stage(folder);
    }

    @AfterEach
    void close() {
        stage.close();
        assertFalse(presenter.isOpen(), "the presenter ends with the view");
    }

    private LessonRun present(String id) {
        if (view == null) {
            view = stage.lessons();
        }
        stage.choose(view, id);
        stage.select(stage.find("lesson.present", Button.class));
        presenter = view.presenter().orElseThrow();
        ready();
        return view.run().orElseThrow();
    }

    /** Gives the window an area of that size inside its frame. */
    private void size(int width, int height) {
        Rectangle trim = presenter.shell().computeTrim(0, 0, width, height);
        presenter.shell().setSize(trim.width, trim.height);
        stage.until(
                "the window has its size",
                () -> presenter.shell().getClientArea().width == width
                        && presenter.shell().getClientArea().height == height);
        ready();
    }

    private void next() {
        presenter.next();
        ready();
    }

    private void ready() {
        stage.until("the page is there", presenter.page()::complete);
    }

    private PresenterStep.Kind kind() {
        return presenter.page().step().kind();
    }

    private void press(int key, char character) {
        Event event = new Event();
        event.keyCode = key;
        event.character = character;
        stage.display.getFocusControl().notifyListeners(SWT.KeyDown, event);
        if (presenter.isOpen()) {
            ready();
        }
    }

    private <C extends Control> C find(String id, Class<C> type) {
        return Ids.find(presenter.shell(), id, type);
    }

    @ParameterizedTest
    @CsvSource({"en, 1280, 720", "de, 1280, 720", "en, 1920, 1080", "de, 1920, 1080"})
    void everyPageOfEveryLessonFitsWithoutScrollingAndIsReadFromTheBack(String language, int width, int height) {
        System.setProperty("ohmstead.language", language);
        try {
            view = stage.lessons();
            for (String id : view.lessonIds()) {
                LessonRun run = present(id);
                size(width, height);
                List<PresenterStep.Kind> seen = new ArrayList<>();
                String before = "";
                while (!presenter.page().step().key().equals(before)) {
                    before = presenter.page().step().key();
                    seen.add(kind());
                    checkPage(id + " " + before, height);
                    if (kind() == PresenterStep.Kind.QUESTION) {
                        run.check(Answers.wrong(run));
                        stage.until("it is open", run::open);
                    }
                    next();
                    stage.settle();
                }
                assertTrue(seen.containsAll(List.of(PresenterStep.Kind.values())), id + " showed only " + seen);
            }
        } finally {
            System.clearProperty("ohmstead.language");
        }
    }

    private void checkPage(String where, int height) {
        ready();
        if (presenter.page().step().live()) {
            PresenterColumn column = presenter.column().orElseThrow();
            stage.until("the controls are there", column::complete);
            assertEquals(PresenterType.LEAST_POINTS, column.points(), where);
        }
        assertTrue(
                presenter.page().points() >= PresenterType.LEAST_POINTS,
                where + " is set in " + presenter.page().points() + " points");
        check(where, presenter.shell(), height);
    }

    private void check(String where, Composite parent, int height) {
        assertFalse(parent instanceof ScrolledComposite, where);
        Rectangle room = parent.getClientArea();
        for (Control each : parent.getChildren()) {
            if (!each.isVisible() || each.getSize().x == 0) {
                continue;
            }
            Rectangle bounds = each.getBounds();
            String what = where + ": " + each + " at " + bounds + " in " + room;
            assertTrue(bounds.x + bounds.width <= room.x + room.width + 1, what);
            assertTrue(bounds.y + bounds.height <= room.y + room.height + 1, what);
            if (each instanceof Label || each instanceof Button || each instanceof Text || each instanceof CLabel) {
                double pixels = each.getFont().getFontData()[0].getHeight() * stage.display.getDPI().y / 72.0;
                // 20 points at 96 dots an inch are 26.7 pixels; that at a height of 720.
                assertTrue(pixels >= 26.6 * height / 720, what + " has type of " + pixels);
                Point needed = needed(each, bounds.width);
                assertTrue(needed.y <= bounds.height + 1, what + " needs " + needed);
                assertTrue(needed.x <= bounds.width + 1, what + " needs " + needed);
            }
            if (each instanceof Composite composite) {
                check(where, composite, height);
            }
        }
    }

    private static Point needed(Control control, int width) {
        if (control instanceof Text text) {
            // What GTK wants for a field is that of the font which it had first.
            GC gc = new GC(text);
            try {
                gc.setFont(text.getFont());
                return gc.textExtent(text.getText());
            } finally {
                gc.dispose();
            }
        }
        boolean wraps = (control.getStyle() & SWT.WRAP) != 0 && !(control instanceof Button);
        return control.computeSize(wraps ? width : SWT.DEFAULT, SWT.DEFAULT);
    }

    @Test
    void itStepsByKeysAndTheQuestionIsLeftOnlyWithAPrediction() {
        LessonRun run = present("decibels");
        assertEquals(PresenterStep.Kind.IDEA, kind());
        press(SWT.PAGE_DOWN, '\0');
        assertEquals(PresenterStep.Kind.SETTINGS, kind());
        press(SWT.ARROW_RIGHT, '\0');
        assertEquals(PresenterStep.Kind.QUESTION, kind());
        press(SWT.PAGE_DOWN, '\0');
        assertEquals(PresenterStep.Kind.QUESTION, kind());
        assertTrue(find("presenter.hint", CLabel.class).getText().contains("prediction first"));
        assertFalse(run.open());
        presenter.choose(1);
        press(SWT.PAGE_DOWN, '\0');
        stage.until("the answer is there", () -> kind() == PresenterStep.Kind.ANSWER);
        assertEquals(new Guess.Option("at-best"), run.guess().orElseThrow());
        press(SWT.PAGE_UP, '\0');
        assertEquals(PresenterStep.Kind.QUESTION, kind());
        find("presenter.next", Button.class).setFocus();
        press(SWT.END, '\0');
        assertEquals(PresenterStep.Kind.SOURCES, kind());
        press(SWT.HOME, '\0');
        assertEquals(PresenterStep.Kind.IDEA, kind());
        press(SWT.ESC, SWT.ESC);
        assertFalse(presenter.isOpen());
    }

    @Test
    void aDigitChoosesAnOption() {
        LessonRun run = present("decibels");
        next();
        next();
        find("presenter.next", Button.class).setFocus();
        press('3', '3');
        assertTrue(find("presenter.guess.threshold", Button.class).getSelection());
        next();
        stage.until("the answer is there", () -> kind() == PresenterStep.Kind.ANSWER);
        assertEquals(new Guess.Option("threshold"), run.guess().orElseThrow());
    }

    @Test
    void aFieldAndASliderKeepTheirArrows() {
        present("load-and-power");
        next();
        stage.until(
                "the controls are there", () -> presenter.column().orElseThrow().complete());
        Scale scale = find("presenter.control.load", Scale.class);
        scale.setFocus();
        press(SWT.ARROW_RIGHT, '\0');
        assertEquals(PresenterStep.Kind.SETTINGS, kind());
        next();
        Text guess = find("presenter.guess", Text.class);
        assertTrue(guess.isFocusControl(), "the question waits for typing");
        press(SWT.ARROW_LEFT, '\0');
        assertEquals(PresenterStep.Kind.QUESTION, kind());
        guess.setText("1.9");
        press(SWT.PAGE_DOWN, '\0');
        stage.until("the answer is there", () -> kind() == PresenterStep.Kind.ANSWER);
    }

    @Test
    void theControlsAreThoseOfTheView() {
        LessonRun run = present("load-and-power");
        next();
        stage.until(
                "the controls are there", () -> presenter.column().orElseThrow().complete());
        Scale large = find("presenter.control.load", Scale.class);
        large.setSelection(0);
        large.notifyListeners(SWT.Selection, new Event());
        stage.until(
                "the view followed",
                () -> view.complete()
                        && stage.find("lesson.control.load", Scale.class).getSelection() == 0);
        assertEquals(1, run.values().number("load"));
        run.set("load", 16);
        stage.settle();
        assertEquals(large.getMaximum(), large.getSelection());
    }

    @Test
    void predictingAgainGoesBackToTheQuestion() {
        LessonRun run = present("load-and-power");
        run.check(Answers.right(run));
        stage.until("it is open", run::open);
        next();
        next();
        next();
        assertEquals(PresenterStep.Kind.ANSWER, kind());
        Button again = find("presenter.again", Button.class);
        again.notifyListeners(SWT.Selection, new Event());
        stage.settle();
        assertEquals(PresenterStep.Kind.QUESTION, kind());
        assertFalse(run.open());
        presenter.goToEnd(true);
        assertEquals(PresenterStep.Kind.QUESTION, kind());
    }

    @Test
    void itFollowsTheLessonThatIsChosen() {
        present("load-and-power");
        next();
        stage.choose(view, "clipping");
        stage.until(
                "it follows",
                () -> find("presenter.lesson", Label.class).getText().equals("What clipping adds"));
        assertEquals(PresenterStep.Kind.IDEA, kind());
        stage.select(stage.find("lesson.present", Button.class));
        assertEquals(presenter, view.presenter().orElseThrow(), "one window is enough");
    }

    @Test
    void aLargerWindowHasLargerType() {
        present("load-and-power");
        size(1280, 720);
        Label text = find("presenter.text", Label.class);
        int small = text.getFont().getFontData()[0].getHeight();
        size(1920, 1080);
        int large =
                find("presenter.text", Label.class).getFont().getFontData()[0].getHeight();
        assertNotEquals(small, large);
        assertEquals(1.5, (double) large / small, 0.05);
    }

    @Test
    void noStepKeepsTheRoomWaiting() {
        LessonRun run = present("uncertainty-and-verdicts");
        size(1280, 720);
        run.check(Answers.right(run));
        stage.until("it is open", run::open);
        stage.time.longestMilliseconds();
        String before = "";
        while (!presenter.page().step().key().equals(before)) {
            before = presenter.page().step().key();
            stage.display.asyncExec(presenter::next);
            stage.settle();
            double longest = stage.time.longestMilliseconds();
            assertTrue(longest < 50, before + ": " + longest + " ms, " + stage.time.what());
        }
    }
}

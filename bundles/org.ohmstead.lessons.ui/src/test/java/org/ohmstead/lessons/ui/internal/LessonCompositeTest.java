// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Lessons;
import org.ohmstead.lessons.Picture;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.DisplaySettings;

class LessonCompositeTest {
    @TempDir
    Path folder;

    private Stage stage;
    private LessonComposite view;

    @BeforeEach
    void open() throws Exception {
        stage = new Stage(folder);
    }

    @AfterEach
    void close() {
        stage.desk.setDisplay(DisplaySettings.USUAL);
        stage.close();
    }

    static Stream<String> ids() {
        return Lessons.builtIn().stream().map(Lesson::id);
    }

    private LessonRun begin(String id) {
        view = stage.lessons();
        stage.choose(view, id);
        return run();
    }

    private LessonRun run() {
        return view.run().orElseThrow();
    }

    private String label(String id) {
        return stage.label(id);
    }

    private ChartCanvas chart(int index) {
        return stage.find("lesson.picture." + index, ChartCanvas.class);
    }

    private boolean shown(String id) {
        return stage.shown(id);
    }

    private void awaitResult(String what) {
        stage.until(
                what,
                () -> view.complete()
                        && run().result().isPresent()
                        && run().result()
                                .get()
                                .figures()
                                .equals(run().lesson().at(run().values()).figures()));
    }

    @ParameterizedTest
    @MethodSource("ids")
    void aLessonOpensCoveredAndThePredictionUncoversIt(String id) {
        LessonRun run = begin(id);
        LessonResult result = run.result().orElseThrow();
        assertEquals(run.lesson().title(), label("lesson.title"));
        assertEquals(run.lesson().idea(), label("lesson.idea"));
        assertEquals(run.lesson().prediction().question(), label("lesson.question"));
        for (String caution : run.lesson().cautions()) {
            assertTrue(label("lesson.caution").contains(caution), caution);
        }
        run.lesson().controls().forEach(control -> assertTrue(shown("lesson.control." + control.id()), control.id()));
        checkShown(result, run, false);
        assertFalse(Ids.exists(stage.shell, "lesson.explanation"));
        run.check(Answers.right(run));
        stage.until("the explanation is there", () -> view.complete() && shown("lesson.explanation"));
        checkShown(result, run, true);
        assertTrue(label("lesson.feedback").startsWith("Right"), label("lesson.feedback"));
        result.cautions().forEach(caution -> assertTrue(label("lesson.caution").contains(caution), caution));
        // What was uncovered is covered again for the next learner.
        stage.select(stage.find("lesson.again", Button.class));
        stage.until("it is covered", view::complete);
        checkShown(result, run, false);
        assertFalse(shown("lesson.feedback"));
        assertFalse(Ids.exists(stage.shell, "lesson.explanation"));
    }

    private void checkShown(LessonResult result, LessonRun run, boolean open) {
        for (Figure figure : result.figures()) {
            boolean covered = figure.revealing() && !open;
            assertEquals(
                    covered ? "?" : figure.text(run.lesson().locale()),
                    label("lesson.figure." + figure.id()),
                    figure.id());
        }
        List<Picture> pictures = result.pictures();
        for (int i = 0; i < pictures.size(); i++) {
            boolean covered = pictures.get(i).revealing() && !open;
            assertEquals(
                    covered, chart(i).message().isPresent(), pictures.get(i).id());
        }
        assertFalse(Ids.exists(stage.shell, "lesson.picture." + pictures.size()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void nothingIsCutOffInTheScrolledHalves(String language) {
        System.setProperty("ohmstead.language", language);
        try {
            view = stage.lessons();
            for (String id : view.lessonIds()) {
                stage.choose(view, id);
                run().check(Answers.wrong(run()));
                stage.until("the explanation is there", () -> view.complete() && shown("lesson.explanation"));
                for (String half : List.of("lesson.flow", "lesson.seen")) {
                    checkRoom(id + " " + half, stage.find(half, ScrolledComposite.class));
                }
            }
        } finally {
            System.clearProperty("ohmstead.language");
        }
    }

    private static void checkRoom(String where, ScrolledComposite scrolled) {
        Composite content = (Composite) scrolled.getContent();
        int width = scrolled.getClientArea().width;
        int needed = content.computeSize(width, SWT.DEFAULT, true).y;
        assertTrue(content.getSize().y >= needed, where + " has " + content.getSize().y + " of " + needed);
        checkLabels(where, content);
    }

    private static void checkLabels(String where, Composite parent) {
        for (Control each : parent.getChildren()) {
            if (each instanceof Label label
                    && label.isVisible()
                    && !label.getText().isEmpty()) {
                int needed = label.computeSize(label.getSize().x, SWT.DEFAULT).y;
                assertTrue(label.getSize().y >= needed, where + ": " + label);
                assertTrue(label.getBounds().y + needed <= parent.getSize().y, where + ": " + label);
            } else if (each instanceof Composite composite && !(each instanceof ChartCanvas)) {
                checkLabels(where, composite);
            }
        }
    }

    @Test
    void aSliderMovesTheFigureToTheModelsValue() {
        LessonRun run = begin("load-and-power");
        Scale scale = stage.find("lesson.control.load", Scale.class);
        scale.setSelection(scale.getMaximum() / 4);
        stage.select(scale);
        awaitResult("the model answered");
        // A quarter of the logarithmic way from 1 to 16 ohms is 2.
        assertEquals(2, run.values().number("load"));
        assertEquals(
                "2.00 \u03a9",
                stage.find("lesson.control.load.value", Text.class).getText());
        // (14.4 V x 2.8 - 3 V) x 2 / 2.1, squared, over twice 2 ohms.
        double peakVolts = (14.4 * 2.8 - 3) * 2 / 2.1;
        assertEquals(
                peakVolts * peakVolts / 4,
                run.result().orElseThrow().figure("power").value(),
                1e-9);
        assertEquals("315.8 W", label("lesson.figure.power"));
    }

    @Test
    void aTypedValueCountsAndAWrongOneIsRefusedInWords() {
        LessonRun run = begin("load-and-power");
        Text entry = stage.find("lesson.control.supply.value", Text.class);
        entry.setText("12,5");
        entry.notifyListeners(SWT.DefaultSelection, new Event());
        awaitResult("the model answered");
        assertEquals(12.5, run.values().number("supply"), 1e-9);
        assertEquals("12.5 V", entry.getText());
        entry.setText("40");
        entry.notifyListeners(SWT.FocusOut, new Event());
        stage.settle();
        assertEquals(12.5, run.values().number("supply"), 1e-9);
        assertEquals("12.5 V", entry.getText());
        assertTrue(shown("lesson.controls.refusal"));
        assertTrue(
                label("lesson.controls.refusal").contains("goes from 10.0 V to 16.0 V"),
                label("lesson.controls.refusal"));
        Event up = new Event();
        up.keyCode = SWT.ARROW_UP;
        entry.notifyListeners(SWT.KeyDown, up);
        stage.settle();
        assertEquals("12.6 V", entry.getText());
    }

    @Test
    void aWrongPredictionIsToldTheAnswerAndLaterMovesTellItsNewValue() {
        LessonRun run = begin("load-and-power");
        Text guess = stage.find("lesson.guess", Text.class);
        guess.setText("2");
        guess.notifyListeners(SWT.DefaultSelection, new Event());
        stage.until("feedback", run::open);
        stage.until("it is shown", view::complete);
        assertTrue(label("lesson.feedback").startsWith("Not quite: it is 1.91"), label("lesson.feedback"));
        assertFalse(guess.getEditable());
        run.set("output", 0);
        awaitResult("the model answered");
        // Without resistance half the load takes just twice the power.
        assertTrue(label("lesson.feedback").startsWith("At these settings: 2.00"), label("lesson.feedback"));
        assertTrue(label("lesson.remarks").contains("exactly 2"), label("lesson.remarks"));
        stage.select(stage.find("lesson.over", Button.class));
        awaitResult("it began anew");
        assertEquals(run.lesson().start(), run.values());
        assertFalse(run.open());
        assertEquals("", guess.getText());
        assertTrue(guess.getEditable());
    }

    @Test
    void withoutAPredictionTheButtonSaysWhatIsWanted() {
        LessonRun run = begin("decibels");
        stage.select(stage.find("lesson.check", Button.class));
        assertFalse(run.open());
        assertTrue(label("lesson.guess.refusal").startsWith("Predict first"));
        stage.choose(view, "clipping");
        stage.select(stage.find("lesson.check", Button.class));
        assertFalse(run().open());
        assertTrue(label("lesson.guess.refusal").startsWith("Predict first"));
    }

    @Test
    void cautionsThatTellTheAnswerOfAChoiceWaitForThePrediction() {
        LessonRun run = begin("bridging");
        run.set("load", 1);
        awaitResult("the model answered");
        List<String> cautions = run.result().orElseThrow().cautions();
        assertFalse(cautions.isEmpty());
        assertFalse(label("lesson.caution").contains(cautions.get(0)));
        run.check(Answers.right(run));
        stage.until("it is open", () -> run.open() && view.complete());
        assertTrue(label("lesson.caution").contains(cautions.get(0)));
    }

    @Test
    void whatIsSaidToThePredictionComesIntoSight() {
        LessonRun run = begin("uncertainty-and-verdicts");
        stage.shell.setSize(1280, 460);
        stage.settle();
        run.check(Answers.right(run));
        stage.until("the explanation is there", () -> view.complete() && shown("lesson.explanation"));
        ScrolledComposite flow = stage.find("lesson.flow", ScrolledComposite.class);
        Label feedback = stage.find("lesson.feedback", Label.class);
        int bottom = stage.display.map(feedback, flow, 0, feedback.getSize().y).y;
        assertTrue(bottom > 0 && bottom <= flow.getClientArea().height, bottom + " of " + flow.getClientArea().height);
    }

    @Test
    void itSpeaksGerman() {
        System.setProperty("ohmstead.language", "de");
        try {
            LessonRun run = begin("load-and-power");
            assertEquals("Last und Leistung", label("lesson.title"));
            assertEquals(
                    "Vorhersage &pr\u00fcfen",
                    stage.find("lesson.check", Button.class).getText());
            assertTrue(chart(0).message().orElseThrow().contains("Erst vorhersagen, dann nachsehen"));
            run.check(Answers.wrong(run));
            stage.until("it is open", () -> run.open() && view.complete());
            assertTrue(label("lesson.feedback").startsWith("Nicht ganz"), label("lesson.feedback"));
        } finally {
            System.clearProperty("ohmstead.language");
        }
    }

    @Test
    void theUsersDecimalSignGoesAtOnceAndNothingIsLost() {
        LessonRun before = begin("load-and-power");
        before.set("supply", 12.5);
        before.check(new Guess.Number(1.5));
        stage.until("it is open", () -> before.open() && view.complete());
        stage.desk.setDisplay(new DisplaySettings(2, true));
        stage.until("it is made anew", () -> run() != before && view.complete() && run().open());
        assertEquals(
                "12,5 V", stage.find("lesson.control.supply.value", Text.class).getText());
        assertTrue(label("lesson.feedback").contains("1,50"), label("lesson.feedback"));
    }

    @Test
    void aLessonIsWorkedThroughByKeysAlone() {
        view = stage.lessons();
        stage.ready(view, "load-and-power");
        Table list = stage.find("lessons.list", Table.class);
        view.setFocus();
        assertTrue(list.isFocusControl());
        // The tab key goes from the list to what the user needs, in the order of the lesson.
        List<String> order = List.of(
                "lessons.list",
                "lessons.again",
                "lesson.present",
                "lesson.sheet",
                "lesson.control.load",
                "lesson.control.load.value",
                "lesson.control.supply",
                "lesson.control.supply.value",
                "lesson.control.output",
                "lesson.control.output.value",
                "lesson.guess");
        for (int i = 1; i < order.size(); i++) {
            stage.display.getFocusControl().traverse(SWT.TRAVERSE_TAB_NEXT);
            stage.settle();
            assertEquals(Optional.of(order.get(i)), Ids.of(stage.display.getFocusControl()));
        }
        Text guess = stage.find("lesson.guess", Text.class);
        guess.setText("1.9");
        guess.notifyListeners(SWT.DefaultSelection, new Event());
        stage.until("it is open", () -> run().open() && view.complete());
        assertTrue(label("lesson.feedback").startsWith("Right"), label("lesson.feedback"));
    }

    @Test
    void noEventKeepsTheUserWaiting() {
        begin("load-and-power");
        stage.choose(view, "uncertainty-and-verdicts");
        stage.time.longestMilliseconds();
        for (String id : view.lessonIds()) {
            stage.choose(view, id);
            LessonRun run = run();
            org.ohmstead.lessons.Control first = run.lesson().controls().get(0);
            if (first instanceof org.ohmstead.lessons.Control.Slider slider) {
                SliderPlaces places = new SliderPlaces(slider);
                for (int place = 0; place <= places.last(); place += Math.max(1, places.last() / 25)) {
                    run.set(slider.id(), places.value(place));
                    stage.settle();
                }
            }
            awaitResult("the model answered");
            run.check(Answers.right(run));
            stage.until("it is open", () -> run.open() && view.complete());
            double longest = stage.time.longestMilliseconds();
            assertTrue(longest < 50, id + ": " + longest + " ms, " + stage.time.what());
        }
    }
}

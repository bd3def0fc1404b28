// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.bench.TypedBenchDriver;
import org.ohmstead.workbench.look.Ids;

/** The console in a bare shell, worked by its keys and buttons. */
class ConsoleCompositeTest {
    @TempDir
    Path folder;

    private final List<String> asked = new ArrayList<>();
    private ConsoleStage stage;

    @BeforeEach
    void make() {
        stage = new ConsoleStage(folder);
    }

    @AfterEach
    void close() {
        stage.close();
    }

    /** Writes down what the console asks of the workbench. */
    private final class Noted implements ConsoleHost {
        @Override
        public void open(String where) {
            asked.add(where);
        }

        @Override
        public void command(String id) {
            asked.add(id);
        }

        @Override
        public void show() {
            asked.add("show");
        }
    }

    private void show() {
        ConsoleComposite console = stage.show(parent -> new ConsoleComposite(parent, stage.runs(), new Noted()));
        stage.until("all is shown", console::upToDate);
    }

    private RunDesk ready(Map<String, String> settings) throws Exception {
        stage.open();
        RunDesk runs = stage.ready();
        runs.choose(choices -> choices.withBenchSetting("seed", "2").withDriver(ConsoleStage.SIMULATED, settings));
        show();
        stage.until(
                "it is ready",
                () -> stage.said("console.state").equals("Ready")
                        && !runs.dryRuns().busy());
        return runs;
    }

    private void key(Control control, int modifiers, int code) {
        Event event = new Event();
        event.stateMask = modifiers;
        event.keyCode = code;
        event.character = (char) code;
        event.doit = true;
        control.notifyListeners(SWT.KeyDown, event);
        stage.settle();
    }

    private String word(int item) {
        return stage.find("console.plan", Table.class).getItem(item).getText(0);
    }

    private void write(String id, String words) {
        stage.find(id, Text.class).setText(words);
        stage.settle();
    }

    @Test
    void saysWhatToDoWithoutAProject() {
        show();
        assertTrue(stage.said("console.empty").startsWith("No project is open."));
        stage.press("console.empty.demo");
        assertEquals(List.of("org.ohmstead.workbench.demo"), asked);
    }

    @Test
    void leadsFromAFreshProjectToTheBench() throws Exception {
        stage.open();
        show();
        assertEquals("Not ready", stage.said("console.state"));
        assertEquals("4R+4R", stage.said("console.step.connect").replaceAll(".*strapped as (\\S+) .*", "$1"));
        stage.press("console.first");
        stage.until("the plan was gone through", () -> stage.said("console.dry.summary")
                .startsWith("32 items are still to be done"));
        assertTrue(stage.find("console.first", Button.class).getText().contains("Choose the &bench"));
    }

    @Test
    void runsTheNextItemByAKeyAndShowsWhatItFound() throws Exception {
        RunDesk runs = ready(Map.of());
        key(stage.find("console.plan", Table.class), SWT.MOD1, SWT.CR);
        assertTrue(runs.running());
        stage.until("it is done", () -> word(0).equals("done"));
        stage.until("it is said", () -> stage.said("console.message").contains("W (k = 2)"));
        assertEquals("next", word(1));
        assertTrue(stage.find("console.figure.supply", FigureTile.class).text().startsWith("Supply: 11.5"));
    }

    @Test
    void escapeTwiceStopsAndTheConsoleSaysSoUntilItIsReleased() throws Exception {
        RunDesk runs = ready(Map.of("realPace", "true"));
        stage.press("console.run.next");
        stage.until(
                "something was recorded", () -> runs.course().progress().look().isPresent());
        Table plan = stage.find("console.plan", Table.class);
        key(plan, 0, SWT.ESC);
        assertFalse(runs.stopped().isPresent());
        key(plan, 0, SWT.ESC);
        stage.until("it is stopped", () -> stage.said("console.state").equals("Stopped") && !runs.running());
        stage.until("it says so", () -> stage.said("console.stopped").contains("The feed is silent"));
        assertFalse(stage.find("console.run.next", Button.class).isEnabled());
        stage.press("console.release");
        write("console.reason.who", "");
        assertFalse(stage.find("console.reason.commit", Button.class).isEnabled());
        stage.type("console.reason.who", "N. N.");
        stage.until("it is ready again", () -> stage.said("console.state").equals("Ready"));
        assertFalse(stage.find("console.stopped", Label.class).isVisible());
    }

    @Test
    void theStopButtonStopsTheMomentItIsPressed() throws Exception {
        RunDesk runs = ready(Map.of("realPace", "true"));
        stage.press("console.run.next");
        stage.until(
                "something was recorded", () -> runs.course().progress().look().isPresent());
        stage.press("console.stop");
        assertTrue(runs.stopped().isPresent());
        stage.until("it is stopped", () -> runs.halted() && !runs.running());
    }

    @Test
    void asksForAReasonInlineBeforeItSkips() throws Exception {
        ready(Map.of());
        stage.press("console.skip");
        assertTrue(stage.find("console.reason.panel", Control.class).getVisible());
        assertFalse(stage.find("console.reason.commit", Button.class).isEnabled());
        stage.type("console.reason.why", "No such load today.");
        stage.until("it is skipped", () -> word(0).equals("skipped"));
        assertFalse(stage.find("console.reason.panel", Control.class).getVisible());
        assertTrue(stage.find("console.run.next", Button.class).getVisible());
    }

    @Test
    void showsAWarningWithItsRemedyAndTakesAYes() throws Exception {
        stage.catalog.bindPrecaution(new Careful());
        RunDesk runs = ready(Map.of());
        stage.press("console.confirm.0");
        assertTrue(stage.said("console.reason.question").contains(Careful.WARNING));
        stage.type("console.reason.why", "Measured today.");
        stage.until("nothing is in the way", () -> Ids.exists(stage.shell, "console.ready"));
        assertFalse(Ids.exists(stage.shell, "console.confirm.0"));
        assertTrue(runs.dryRuns()
                .of(runs.course().rows().get(0).item())
                .orElseThrow()
                .mayRun());
    }

    @Test
    void refusesASettingOutOfItsRangeBesideTheField() throws Exception {
        RunDesk runs = ready(Map.of());
        stage.until("the form is there", () -> Ids.exists(stage.shell, "console.bench.setting.clipVolts"));
        stage.type("console.bench.setting.clipVolts", "5000");
        assertTrue(stage.said("console.bench.setting.clipVolts.message").contains("1000"));
        assertFalse(runs.choices().benchSettings().containsKey("clipVolts"));
        stage.type("console.bench.setting.clipVolts", "30 V");
        assertEquals("30.0", runs.choices().benchSettings().get("clipVolts"));
    }

    @Test
    void asksWhatAnInstrumentShowsAndPointsOutWhatTheForecastDoesNotExpect() throws Exception {
        stage.catalog.bindDriver(new TypedBenchDriver(stage.questions));
        RunDesk runs = ready(Map.of());
        runs.choose(
                choices -> choices.withDriver("org.ohmstead.bench.typed", Map.of("output", "volts and distortion")));
        stage.until(
                "it is ready", () -> runs.whyNot().isEmpty() && !runs.dryRuns().busy());
        stage.press("console.run.next");
        // First it has the bench set up, with a yes to each; then it wants to know what the meters show.
        stage.until("a value is asked for", () -> {
            if (stage.questions.asked().filter(each -> each.value().isEmpty()).isPresent()
                    && stage.find("console.ask.yes", Button.class).isVisible()) {
                stage.find("console.ask.yes", Button.class).notifyListeners(SWT.Selection, new Event());
            }
            return stage.find("console.ask.answer", Text.class).isVisible();
        });
        assertTrue(asked.contains("show"));
        stage.until("a value is asked for", () -> stage.find("console.ask.answer", Text.class)
                .getVisible());
        write("console.ask.answer", "ninety");
        assertFalse(stage.find("console.ask.yes", Button.class).isEnabled());
        write("console.ask.answer", "90 V");
        assertTrue(stage.said("console.ask.message").startsWith("The forecast expects"));
        OperatorQuestions.Asked question = stage.questions.asked().orElseThrow();
        stage.press("console.ask.yes");
        assertEquals("90.0", question.answer().get().orElseThrow());
        runs.deeds().cancel("N. N.");
        stage.until("it has ended", () -> !runs.running());
    }

    @Test
    void offersToBringBackAPluginThatWasSetAside() throws Exception {
        stage.catalog.bindMeasurement(new Broken());
        RunDesk runs = ready(Map.of());
        runs.choose(choices -> choices.withMeasured("stereo-8ohm-11V5", List.of(Broken.ID)));
        for (int run = 0; run < 3; run++) {
            stage.until(
                    "it is ready",
                    () -> runs.whyNot().isEmpty() && !runs.dryRuns().busy());
            stage.press("console.run.next");
            stage.until("it has ended", () -> !runs.running());
        }
        assertEquals("failed", word(0));
        stage.until("it is offered", () -> Ids.exists(stage.shell, "console.back." + Broken.ID));
        assertTrue(stage.said("console.fault").contains("Broken measurement"));
        stage.press("console.back." + Broken.ID);
        stage.until("it is back", () -> !Ids.exists(stage.shell, "console.back." + Broken.ID));
    }
}

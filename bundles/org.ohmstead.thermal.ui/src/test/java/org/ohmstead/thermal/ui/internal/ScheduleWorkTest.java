// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rest;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.workbench.session.LogSnapshot;

/** What the user does to the schedule. */
class ScheduleWorkTest extends ForecastStage {
    private static final String STEP = "stereo-2ohm-11V5";

    private List<Rest> rests() {
        return stage.project().heat().pacing().rests();
    }

    private double total() {
        List<ScheduleSlot> slots = strip().slots();
        return slots.get(slots.size() - 1).endSeconds();
    }

    /** How many points a time is wide. */
    private double pointsOf(double seconds) {
        ScheduleLanes lanes = strip().lanes().orElseThrow();
        return lanes.toX(seconds) - lanes.toX(0);
    }

    @Test
    void draggingTheEndOfARestShowsWhatComesOfItAndStoresItWhenLetGo() throws Exception {
        open();
        double before = total();
        int x = gripX(STEP);
        int y = gripY();
        int further = (int) Math.round(pointsOf(120));
        press(x, y);
        move(x + further, y);
        stage.until("the forecast follows", () -> slot(STEP).restSeconds() > 0);
        double rest = slot(STEP).restSeconds();
        // A point of the strip is some seconds wide.
        assertEquals(120, rest, 1 / pointsOf(1) + 1);
        assertEquals(before + rest, total(), 1e-6);
        assertTrue(strip().sentence().startsWith("Rest of "), strip().sentence());
        assertTrue(strip().sentence().contains(" longer than before."), strip().sentence());
        assertTrue(rests().isEmpty());
        assertEquals("you", cell(ids().indexOf(STEP), "Rest for"));
        release(x + further, y);
        assertEquals(List.of(new Rest(STEP, rest)), rests());
        assertEquals(Optional.of("Rest before " + STEP), undoName());
        stage.until("it is forecast", () -> Math.abs(total() - before - rest) < 1e-6);
        undo();
        assertTrue(rests().isEmpty());
        stage.until("the plan is as it was", () -> Math.abs(total() - before) < 1e-6);
    }

    @Test
    void theTimeAxisStandsStillWhileSomethingIsDragged() throws Exception {
        open();
        double upper = area().x().upper();
        int x = gripX(STEP);
        press(x, gripY());
        move(x + (int) pointsOf(600), gripY());
        stage.until("the forecast follows", () -> slot(STEP).restSeconds() > 300);
        drawn();
        assertEquals(upper, area().x().upper(), 1e-9);
        release(x + (int) pointsOf(600), gripY());
        stage.until("the axis follows", () -> area().x().upper() > upper);
    }

    @Test
    void escapeGivesUpWhatIsDragged() throws Exception {
        open();
        Project before = stage.project();
        double seconds = total();
        press(gripX(STEP), gripY());
        move(gripX(STEP) + 60, gripY());
        stage.until("the forecast follows", () -> slot(STEP).restSeconds() > 0);
        key(SWT.ESC);
        assertEquals(seconds, total(), 1e-9);
        release(gripX(STEP) + 60, gripY());
        assertEquals(before, stage.project());
        assertEquals(Optional.empty(), undoName());
    }

    @Test
    void draggingAStepPutsItElsewhere() throws Exception {
        open();
        List<String> before = planIds();
        int from = stepX("stereo-8ohm-14V4");
        int to = stepX("stereo-8ohm-12V5") - (int) Math.ceil(pointsOf(12));
        press(from, stepY());
        move((from + to) / 2, stepY());
        move(to, stepY());
        stage.until("the forecast follows", () -> ids().indexOf("stereo-8ohm-14V4") == 1);
        assertTrue(strip().sentence().startsWith("\"stereo-8ohm-14V4\" as number 2."), strip().sentence());
        assertEquals(before, planIds());
        release(to, stepY());
        List<String> wanted = new ArrayList<>(before);
        wanted.remove("stereo-8ohm-14V4");
        wanted.add(1, "stereo-8ohm-14V4");
        assertEquals(wanted, planIds());
        assertEquals(Optional.of("Move stereo-8ohm-14V4"), undoName());
        forecast();
        // Higher supply volts come before lower ones of the same load now.
        assertTrue(state().contains("\"stereo-8ohm-14V4\" runs ahead of \"stereo-8ohm-12V5\""), state());
        undo();
        assertEquals(before, planIds());
        forecast();
    }

    @Test
    void aStepThatIsDroppedWhereItWasChangesNothing() throws Exception {
        open();
        List<String> before = planIds();
        int x = stepX("stereo-4ohm-12V5");
        press(x, stepY());
        move(x + 30, stepY());
        move(x, stepY());
        release(x, stepY());
        assertEquals(before, planIds());
        assertEquals(Optional.empty(), undoName());
        assertEquals(before, ids());
    }

    @Test
    void aBridgedStepAheadOfStereoIsSaid() throws Exception {
        open();
        choose("bridged-8ohm-11V5");
        key(SWT.ARROW_LEFT, SWT.MOD3);
        forecast();
        assertTrue(ids().indexOf("bridged-8ohm-11V5") < ids().indexOf("burst-stereo-2ohm-14V4"));
        String sentence =
                ForecastOrder.sentence(new Forecasts(stage.project()).made()).orElse("");
        assertTrue(sentence.contains("better"), sentence);
        undo();
        // Without the bursts, which the demo runs last, its order is as it should be.
        stage.edit(project -> project.withPlan(project.plan().stream()
                .filter(step -> !step.id().startsWith("burst"))
                .toList()));
        forecast();
        assertEquals("", state());
        choose("bridged-8ohm-11V5");
        key(SWT.ARROW_LEFT, SWT.MOD3);
        forecast();
        assertEquals(
                "\"bridged-8ohm-11V5\" runs ahead of \"stereo-1ohm-14V4\"; better what is not bridged first.", state());
    }

    /** A forecast beside the view. */
    private record Forecasts(Project project) {
        Forecast made() {
            return Forecast.of(project, LIKE_PARTS, ForecastReadings.of(LogSnapshot.NONE, project), () -> false);
        }
    }

    @Test
    void keysChooseMoveAndRest() throws Exception {
        open();
        key(SWT.ARROW_RIGHT);
        assertEquals(planIds().get(0), strip().selected().orElseThrow().id());
        key(SWT.END);
        assertEquals(planIds().size() - 1, table().getSelectionIndex());
        key(SWT.HOME);
        key(SWT.ARROW_RIGHT);
        String second = planIds().get(1);
        assertEquals(second, strip().selected().orElseThrow().id());
        key('+');
        forecast();
        assertEquals(List.of(new Rest(second, 10)), rests());
        stage.until("it is forecast", () -> slot(second).restSeconds() == 10);
        key('+');
        stage.until("it is forecast", () -> slot(second).restSeconds() == 20);
        key('-');
        stage.until("it is forecast", () -> slot(second).restSeconds() == 10);
        assertEquals(List.of(new Rest(second, 10)), rests());
        key(SWT.DEL);
        assertTrue(rests().isEmpty());
        assertEquals(Optional.of("Remove the rest before " + second), undoName());
        stage.until("it is forecast", () -> slot(second).restSeconds() == 0);
        key(SWT.ARROW_RIGHT, SWT.MOD3);
        assertEquals(second, planIds().get(2));
        forecast();
        // The same step stays chosen wherever it goes.
        assertEquals(second, strip().selected().orElseThrow().id());
        assertEquals(2, table().getSelectionIndex());
        key(SWT.ARROW_LEFT, SWT.MOD3);
        assertEquals(second, planIds().get(1));
    }

    @Test
    void aRestThatALimitNeedsCannotBeShortened() throws Exception {
        open();
        pace(pacing -> pacing.withStepSeconds(60));
        stage.until("rests are needed", () -> strip().slots().stream()
                .anyMatch(slot -> slot.cause() == ScheduledJob.Cause.LIMIT));
        drawn();
        ScheduleSlot forced = strip().slots().stream()
                .filter(slot -> slot.cause() == ScheduledJob.Cause.LIMIT)
                .findFirst()
                .orElseThrow();
        // Its devices come to 145 degrees: their limit of 150 less the margin of 5 K.
        assertEquals("hottest device of the amplifier", cell(ids().indexOf(forced.id()), "Rest for"));
        assertEquals("145.0 (5)", cell(ids().indexOf(forced.id()), "Devices"));
        choose(forced.id());
        key('-');
        assertTrue(state().startsWith("The rest before \"" + forced.id() + "\" cannot be shorter"), state());
        press(gripX(forced.id()), gripY());
        move(gripX(forced.id()) - 40, gripY());
        stage.until("the forecast follows", () -> strip().sentence().contains("the least that the hottest device"));
        release(gripX(forced.id()) - 40, gripY());
        stage.settle();
        assertTrue(rests().isEmpty());
        // The scheduler finds the least rest to within a thousandth of a second.
        assertEquals(forced.restSeconds(), slot(forced.id()).restSeconds(), 1e-2);
    }

    @Test
    void findsTheShortestOrderAndUsesItInOneEdit() throws Exception {
        open();
        Project before = stage.project();
        double planned = total();
        assertFalse(offered("forecast.use"));
        find();
        assertTrue(total() < planned);
        assertTrue(message().startsWith("This order takes ") && message().contains(" instead of "), message());
        assertEquals(before, stage.project());
        assertTrue(offered("forecast.use") && offered("forecast.back"));
        List<String> found = ids();
        stage.press("forecast.use");
        assertEquals(found, planIds());
        assertEquals(Optional.of("Use the shortest order"), undoName());
        forecast();
        assertFalse(offered("forecast.use"));
        assertEquals("", state());
        undo();
        assertEquals(before, stage.project());
    }

    @Test
    void goesBackToThePlansOrder() throws Exception {
        open();
        find();
        assertFalse(ids().equals(planIds()));
        stage.press("forecast.back");
        assertEquals(planIds(), ids());
        assertEquals("", message());
        assertFalse(offered("forecast.back"));
    }

    @Test
    void aRestInTheOrderThatWasFoundKeepsThatOrder() throws Exception {
        open();
        find();
        List<String> found = ids();
        key(SWT.HOME);
        key(SWT.ARROW_RIGHT);
        key('+');
        assertEquals(found, planIds());
        assertEquals(List.of(new Rest(found.get(1), 10)), rests());
    }

    @Test
    void cancelShowsTheBestSoFarAndSaysSo() throws Exception {
        open();
        pace(pacing -> pacing.withStepSeconds(60));
        stage.until(
                "rests are needed",
                () -> summary().contains("rests ") && !summary().contains("rests 0 s"));
        Button find = stage.find("forecast.find", Button.class);
        find.notifyListeners(SWT.Selection, new Event());
        assertTrue(offered("forecast.cancel"));
        stage.find("forecast.cancel", Button.class).notifyListeners(SWT.Selection, new Event());
        stage.until("the search has ended", find::isEnabled);
        assertTrue(message().endsWith("The search was cancelled; it is the best so far."), message());
        assertFalse(offered("forecast.cancel"));
        assertTrue(offered("forecast.use"));
    }

    @Test
    void saysWhenNoOrderIsBetter() throws Exception {
        open();
        find();
        stage.press("forecast.use");
        forecast();
        Button find = stage.find("forecast.find", Button.class);
        stage.select(find);
        stage.until("the search has ended", () -> find.isEnabled() && !message().startsWith("Searching"));
        assertTrue(message().startsWith("No better order was found"), message());
        assertFalse(offered("forecast.use"));
    }

    private void find() {
        Button find = stage.find("forecast.find", Button.class);
        stage.select(find);
        stage.until("the search has ended", () -> find.isEnabled() && offered("forecast.use"));
        drawn();
    }

    @Test
    void theWheelZoomsAroundThePointer() throws Exception {
        open();
        double width = area().x().upper() - area().x().lower();
        double seconds = slot(STEP).startSeconds();
        Event wheel = new Event();
        wheel.x = gripX(STEP);
        wheel.y = stepY();
        wheel.count = 3;
        strip().notifyListeners(SWT.MouseVerticalWheel, wheel);
        drawn();
        assertEquals(width / 1.25, area().x().upper() - area().x().lower(), 1e-6);
        assertEquals(wheel.x, strip().lanes().orElseThrow().toX(seconds), 1.5);
    }

    @Test
    void whatIsEditedElsewhereIsForecastAnew() throws Exception {
        open();
        double before = total();
        int steps = planIds().size();
        pace(pacing -> pacing.withStepSeconds(Pacing.USUAL.stepSeconds() - 5));
        stage.until("it is forecast", () -> Math.abs(before - total() - 5 * steps) < 1e-6);
    }
}

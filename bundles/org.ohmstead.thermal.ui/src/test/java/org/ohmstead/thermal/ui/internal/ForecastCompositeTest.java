// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.Pacing;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Unsaved;

class ForecastCompositeTest extends ForecastStage {
    private static final double MINUTE = 60;

    private String chartMessage() {
        return chart().message().orElse("");
    }

    @Test
    void saysWhatToDoWhenNoProjectIsOpenAndShowsOneThatIsOpenedLater() throws Exception {
        show();
        assertTrue(chartMessage().startsWith("No project is open."), chartMessage());
        assertFalse(stage.find("forecast.find", Button.class).isEnabled());
        assertEquals(0, table().getItemCount());
        stage.withProject().open();
        forecast();
        assertEquals("", chartMessage());
    }

    @Test
    void saysWhatToDoWithoutStepsAndWithoutLoads() throws Exception {
        open();
        stage.edit(project -> project.withLoads(List.of()));
        stage.until("it says so", () -> chartMessage().startsWith("The project has no loads yet"));
        assertEquals(0, table().getItemCount());
        undo();
        forecast();
        stage.edit(project -> project.withPlan(List.of()));
        stage.until("it says so", () -> chartMessage().startsWith("The plan has no steps yet."));
        assertTrue(strip().slots().isEmpty());
        assertEquals("", summary());
    }

    /** 32 steps of 20 s are 640 s; the demo's changes: 10 s between supplies of a load, 120 s for a load, 180 s and that for a mode. */
    @Test
    void showsTheWholePlanInItsOrder() throws Exception {
        open();
        int steps = stage.project().plan().size();
        assertEquals(steps, table().getItemCount());
        assertEquals(20 * steps, on(), 1e-9);
        assertEquals("stereo-8ohm-11V5", cell(0, "Step"));
        assertEquals("0.0", cell(0, "Start"));
        // 20 s on, then 10 s for other supply volts.
        assertEquals("0.5", cell(1, "Start"));
        // Four steps and three changes of supply, then a change of load: 80 + 30 + 120 s.
        assertEquals("3.8", cell(4, "Start"));
        assertEquals("20", cell(4, "On"));
        assertEquals("11.5", cell(0, "Terminals"));
        assertTrue(summary().startsWith("In all "), summary());
        assertTrue(summary().contains("signal on " + HeatWords.time(20 * steps)), summary());
        assertTrue(summary().contains("Wh. No order can take less than "), summary());
        String caution = stage.said("forecast.caution");
        assertTrue(caution.contains("local codes and licensed practice") && caution.contains("fuse"), caution);
    }

    private double on() {
        return strip().slots().stream()
                .mapToDouble(slot -> slot.endSeconds() - slot.startSeconds())
                .sum();
    }

    @Test
    void ratingsTellThePowerWhereNoReadingDoes() throws Exception {
        open();
        // "2 x 90 W into 4 ohm at 14.4 V" of the demo; at 13.5 V it has no rating, and its converter is not regulated:
        // 90 W (13.5 / 14.4)^2 = 79.1 W.
        int row = ids().indexOf("stereo-4ohm-14V4");
        assertEquals("90", cell(row, "Power"));
        assertEquals("rating", cell(row, "From"));
        assertEquals("79.1", cell(row - 1, "Power"));
        assertEquals("rating, scaled", cell(row - 1, "From"));
        // Both channels.
        assertEquals("180", cell(row, "Load ("));
    }

    @Test
    void aStepIsChosenInTableStripAndChartAlike() throws Exception {
        open();
        choose("stereo-2ohm-12V5");
        assertEquals("stereo-2ohm-12V5", strip().selected().orElseThrow().id());
        assertEquals(
                slot("stereo-2ohm-12V5").endSeconds() / MINUTE,
                chart().readOut().orElseThrow().x(),
                1e-9);
        press(stepX("stereo-1ohm-11V5"), stepY());
        release(stepX("stereo-1ohm-11V5"), stepY());
        assertEquals(ids().indexOf("stereo-1ohm-11V5"), table().getSelectionIndex());
        assertEquals(
                slot("stereo-1ohm-11V5").endSeconds() / MINUTE,
                chart().readOut().orElseThrow().x(),
                1e-9);
        assertTrue(strip().sentence().startsWith("stereo-1ohm-11V5 (stereo 1ohm): on from "), strip().sentence());
        assertEquals(Optional.empty(), undoName());
    }

    @Test
    void theStripLiesInLineWithTheChartAndZoomsWithIt() throws Exception {
        open();
        assertEquals(
                area().x().toPosition(slot("stereo-4ohm-11V5").startSeconds() / MINUTE),
                strip().lanes().orElseThrow().toX(slot("stereo-4ohm-11V5").startSeconds()),
                1e-9);
        assertEquals(chart().getBounds().x, strip().getBounds().x);
        choose("stereo-4ohm-11V5");
        key(SWT.CR);
        drawn();
        ViewWindow window = chart().window().orElseThrow();
        double start = slot("stereo-4ohm-11V5").startSeconds() / MINUTE;
        assertTrue(window.lowerX() < start && start < window.upperX());
        assertEquals(area().x().toPosition(start), gripX("stereo-4ohm-11V5"), 0.5);
        assertTrue(area().x().upper() < 20);
    }

    @Test
    void theChartHasLimitsBandsAndNames() throws Exception {
        open();
        double end = slot("bridged-2ohm-14V4").endSeconds() / MINUTE;
        chart().moveCursorTo(end - 0.01);
        drawn();
        var readOut = chart().readOut().orElseThrow();
        double likely = readOut.entry("Case").orElseThrow().y();
        var band = readOut.bands().stream()
                .filter(each -> each.band().equals("Case"))
                .findFirst()
                .orElseThrow();
        // The ranges of the demo's case: 0.4 to 0.5 K/W and 2600 to 3200 J/K.
        assertTrue(band.lower() <= likely && likely < band.upper(), band + " " + likely);
        assertTrue(
                readOut.entry("Devices").isPresent() && readOut.entry("Cable").isPresent());
        // The highest end of the band at the end of the hottest step is the peak in the table.
        String peak = cell(ids().indexOf("bridged-2ohm-14V4"), "Case");
        assertEquals(Double.parseDouble(peak.split(" ")[0]), band.upper(), 0.2);
        double room = Double.parseDouble(peak.replaceAll(".*\\((.*)\\)", "$1"));
        assertEquals(80 - band.upper(), room, 0.7);
    }

    @Test
    void whatIsImpossibleIsSaidWithARemedyAndItsStep() throws Exception {
        open();
        pace(pacing -> pacing.withStepSeconds(3600));
        stage.until("it says so", () -> summary().startsWith("No order and no rests keep this plan below its limits."));
        assertTrue(state().contains("Keep it on for at most "), state());
        assertFalse(stage.find("forecast.find", Button.class).isEnabled());
        assertTrue(offered("forecast.culprit"));
        stage.press("forecast.culprit");
        StepTableRow row = StepTableRow.of(Forecast.of(
                        stage.project(),
                        LIKE_PARTS,
                        ForecastReadings.of(stage.desk.log(), stage.project()),
                        () -> false))
                .get(table().getSelectionIndex());
        assertTrue(state().startsWith("\"" + row.id() + "\""), state());
        assertTrue(row.obstacle().isPresent());
        String peak = cell(table().getSelectionIndex(), "Case");
        // Less than the 5 K that are to be left, or less than nothing.
        assertTrue(Double.parseDouble(peak.replaceAll(".*\\((.*)\\)", "$1")) < 5, peak);
        undo();
        stage.until("it is possible again", () -> summary().startsWith("In all "));
        assertFalse(offered("forecast.culprit"));
    }

    @Test
    void theNotesOpenAndSayWhatWasAssumed() throws Exception {
        open();
        Button open = stage.find("forecast.notes", Button.class);
        assertTrue(open.getText().matches("&Notes \\(\\d+\\)"), open.getText());
        assertFalse(stage.find("forecast.notes.list", Text.class).getVisible());
        open.setSelection(true);
        stage.select(open);
        assertTrue(stage.find("forecast.notes.list", Text.class).getVisible());
        assertTrue(notes().contains("Of each kind of load resistor one piece is watched"), notes());
        assertFalse(notes().contains("battery"), notes());
        stage.edit(project -> project.withHeat(
                project.heat().withSupply(project.heat().supply().withBattery(true))));
        stage.until("it warns of the battery", () -> notes().contains("eye protection"));
        assertTrue(stage.said("forecast.caution").contains("battery"));
    }

    @Test
    void nothingKnownOfTheHeatIsSaidAndStillScheduled() throws Exception {
        open();
        stage.edit(project -> project.withHeat(HeatData.NONE)
                .withAmplifier(project.amplifier().withHeatSinkKelvinPerWatt(OptionalDouble.empty())));
        stage.until(
                "it says so", () -> notes().contains("Nothing tells the thermal resistance of the amplifier's case"));
        assertEquals(ForecastWords.NONE, cell(0, "Case"));
        assertEquals(planIds(), ids());
    }

    @Test
    void theWarmUpComesFirstAndStays() throws Exception {
        open();
        pace(pacing -> pacing.withWarmUp(true));
        stage.until("the warm-up is there", () -> ids().contains(PlanForecast.WARM_UP));
        assertEquals(PlanForecast.WARM_UP, ids().get(0));
        drawn();
        choose(PlanForecast.WARM_UP);
        key(SWT.ARROW_RIGHT, SWT.MOD3);
        key('+');
        assertTrue(stage.project().heat().pacing().rests().isEmpty());
        choose("stereo-8ohm-11V5");
        key(SWT.ARROW_LEFT, SWT.MOD3);
        assertTrue(state().contains("is the first already"), state());
    }

    @Test
    void numbersAreShownAsTheUserWants() throws Exception {
        open();
        stage.desk.setDisplay(new DisplaySettings(3, true));
        stage.settle();
        assertEquals("0,5", cell(1, "Start"));
        assertTrue(summary().contains(",") && !summary().matches(".*\\d\\.\\d.*"), summary());
    }

    @Test
    void aClosedProjectLeavesNothingBehind() throws Exception {
        open();
        choose("stereo-2ohm-12V5");
        stage.desk.close(Unsaved.DISCARD);
        stage.settle();
        assertEquals(0, table().getItemCount());
        assertTrue(strip().slots().isEmpty());
        assertEquals("", summary());
        assertFalse(stage.find("forecast.find", Button.class).isEnabled());
    }

    @Test
    void copiesTheTableForASpreadsheet() throws Exception {
        open();
        key(table(), 'c', SWT.MOD1);
        Clipboard clipboard = new Clipboard(stage.display);
        try {
            String[] lines = ((String) clipboard.getContents(TextTransfer.getInstance())).split("\n");
            assertEquals(planIds().size() + 1, lines.length);
            assertTrue(lines[0].contains("Draw (A)"), lines[0]);
            assertTrue(lines[2].contains("stereo-8ohm-12V5\t0.5"), lines[2]);
        } finally {
            clipboard.dispose();
        }
    }

    @Test
    void refusesPolitelyWhatIsOpenForReadingOnly() throws Exception {
        stage.withProject();
        ProjectSession other = ProjectSession.open(folder, Clock.systemUTC());
        assertFalse(other.readOnly());
        other.edit("Hold", project -> project.withTitle("held"));
        stage.open();
        show();
        forecast();
        List<String> before = planIds();
        choose("stereo-2ohm-12V5");
        key('+');
        assertTrue(state().contains("reading only"), state());
        assertEquals(Pacing.USUAL.rests(), stage.project().heat().pacing().rests());
        assertEquals(before, ids());
    }

    @Test
    void everythingIsThereAtOnceInASmallWindow() throws Exception {
        stage.shell.setSize(800, 520);
        open();
        Label caution = stage.find("forecast.caution", Label.class);
        assertTrue(caution.toDisplay(0, caution.getSize().y).y
                <= stage.shell.toDisplay(0, stage.shell.getClientArea().height).y);
        assertTrue(area().bounds().height > 40, () -> area().bounds().toString());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.Range;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectSession;

/** The records are the closed form of a single body, air + P R (1 - e^(-t/(R C))), with noise of a fixed seed. */
class IdentifyCompositeTest {
    private static final double AIR_CELSIUS = 22.4;
    private static final double WATTS = 80;
    private static final double KELVIN_PER_WATT = 0.45;
    private static final double JOULES_PER_KELVIN = 2900;
    private static final double NOISE_KELVIN = 0.15;

    @TempDir
    Path folder;

    private HeatStage stage;
    private IdentifyComposite view;

    @BeforeEach
    void setUp() {
        stage = new HeatStage(folder);
    }

    @AfterEach
    void tearDown() {
        stage.desk.setDisplay(DisplaySettings.USUAL);
        stage.close();
    }

    private void show() {
        view = stage.show(parent -> new IdentifyComposite(parent, stage.desk));
        stage.until("the view is made", () -> Ids.exists(stage.shell, "identify.use"));
    }

    private static String warmUp(double lastSeconds) {
        StringBuilder text = new StringBuilder("time_s;case_C\n");
        Random noise = new Random(7);
        for (double t = 0; t <= lastSeconds; t += 30) {
            double rise = WATTS * KELVIN_PER_WATT * -Math.expm1(-t / (KELVIN_PER_WATT * JOULES_PER_KELVIN));
            double celsius = AIR_CELSIUS + rise + NOISE_KELVIN * noise.nextGaussian();
            text.append(String.format(Locale.ROOT, "%.0f;%.3f%n", t, celsius));
        }
        return text.toString();
    }

    private void paste(String text) {
        stage.find("identify.record", Text.class).setText(text);
        boolean[] begun = new boolean[1];
        stage.until("the record was read", () -> {
            boolean fitting = message().equals(IdentifyComposite.fitting());
            begun[0] |= fitting;
            return begun[0] && !fitting;
        });
    }

    private String message() {
        return stage.said("identify.message");
    }

    private TableItem row(String name) {
        Table table = stage.find("identify.table", Table.class);
        return Arrays.stream(table.getItems())
                .filter(item -> item.getText(0).equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not in the table"));
    }

    private static void assertCovers(TableItem row, double truth) {
        String[] ends = row.getText(3).split(" \u2013 ");
        double low = Double.parseDouble(ends[0]);
        double high = Double.parseDouble(ends[1]);
        assertTrue(low <= truth && truth <= high, row.getText(0) + " " + row.getText(3));
        assertTrue(high - low < 0.1 * truth, "the interval is narrow: " + row.getText(3));
    }

    private boolean usable() {
        return stage.find("identify.use", Button.class).isEnabled();
    }

    @Test
    void saysWhatToDoWhileThereIsNothing() {
        show();
        String said = stage.find("identify.chart", ChartCanvas.class).message().orElse("");
        assertTrue(said.contains("Paste a logged warm-up"), said);
        assertFalse(usable());
        assertEquals("There is no fit yet.", stage.said("identify.reason"));
    }

    @Test
    void findsResistanceCapacityAndAirWithTheirIntervals() throws Exception {
        stage.withProject().open();
        show();
        stage.type("identify.heat", "80");
        paste(warmUp(3600));
        assertTrue(message().contains("121 readings; one time constant serves"), message());
        assertCovers(row("Case to air"), KELVIN_PER_WATT);
        assertCovers(row("Heat capacity"), JOULES_PER_KELVIN);
        assertCovers(row("Time constant"), KELVIN_PER_WATT * JOULES_PER_KELVIN);
        assertCovers(row("Air"), AIR_CELSIUS);
        assertEquals(
                NOISE_KELVIN, Double.parseDouble(row("Scatter of the readings").getText(1)), 0.03);
        assertEquals(
                Optional.empty(),
                stage.find("identify.chart", ChartCanvas.class).message());
        assertEquals(
                Optional.empty(),
                stage.find("identify.residuals", ChartCanvas.class).message());
    }

    @Test
    void useWritesTheIntervalsAsOneEditThatUndoTakesBack() throws Exception {
        stage.withProject().open();
        stage.edit(project -> project.withHeat(HeatData.NONE));
        show();
        stage.type("identify.heat", "80");
        paste(warmUp(3600));
        assertTrue(usable(), stage.said("identify.reason"));
        stage.press("identify.use");
        AmplifierHeat heat = stage.project().heat().amplifier();
        Range resistance = heat.caseKelvinPerWatt().orElseThrow();
        Range capacity = heat.caseJoulesPerKelvin().orElseThrow();
        assertTrue(resistance.low() <= KELVIN_PER_WATT && KELVIN_PER_WATT <= resistance.high(), resistance::toString);
        assertTrue(capacity.low() <= JOULES_PER_KELVIN && JOULES_PER_KELVIN <= capacity.high(), capacity::toString);
        assertEquals(
                Optional.of("Use thermal identification"),
                stage.desk.session().orElseThrow().undoName());
        stage.desk.session().orElseThrow().undo();
        assertEquals(HeatData.NONE, stage.project().heat());
    }

    @Test
    void aCoolDownTellsTheTimeConstantAndSaysWhyNoMore() throws Exception {
        stage.withProject().open();
        show();
        StringBuilder text = new StringBuilder();
        Random noise = new Random(3);
        for (double t = 0; t <= 4000; t += 40) {
            double celsius = 21 + 35 * Math.exp(-t / 1300) + 0.1 * noise.nextGaussian();
            text.append(String.format(Locale.ROOT, "%.0f, %.3f%n", t, celsius));
        }
        paste(text.toString());
        assertCovers(row("Time constant"), 1300);
        assertEquals("\u2013", row("Case to air").getText(1));
        assertFalse(usable());
        assertTrue(stage.said("identify.reason").contains("enter the heat"), stage.said("identify.reason"));
    }

    /** Two bodies in a row: 0.12 K/W at 40 s and 0.40 K/W at 1400 s. The project's case keeps the slow one with the whole resistance. */
    @Test
    void tellsTwoTimeConstantsFromOne() throws Exception {
        stage.withProject().open();
        show();
        StringBuilder text = new StringBuilder("s;C;W\n");
        Random noise = new Random(11);
        for (double t = 0; t <= 6000; t += t < 300 ? 5 : 40) {
            double rise = 80 * (0.12 * -Math.expm1(-t / 40) + 0.40 * -Math.expm1(-t / 1400));
            double celsius = AIR_CELSIUS + rise + 0.05 * noise.nextGaussian();
            text.append(String.format(Locale.ROOT, "%.0f;%.3f;80%n", t, celsius));
        }
        paste(text.toString());
        assertTrue(message().contains("heat from the record; two time constants"), message());
        assertCovers(row("Case to air"), 0.52);
        assertCovers(row("Time constant, fast"), 40);
        assertCovers(row("Time constant, slow"), 1400);
        stage.press("identify.use");
        Range capacity =
                stage.project().heat().amplifier().caseJoulesPerKelvin().orElseThrow();
        assertTrue(capacity.low() <= 1400 / 0.52 && 1400 / 0.52 <= capacity.high(), capacity::toString);
    }

    @Test
    void refusesAShortRecordWithARemedy() throws Exception {
        stage.withProject().open();
        show();
        stage.type("identify.heat", "80");
        paste(warmUp(600));
        assertTrue(message().contains("Log for at least"), message());
        assertEquals(0, stage.find("identify.table", Table.class).getItemCount());
        assertEquals(
                Optional.empty(),
                stage.find("identify.chart", ChartCanvas.class).message(),
                "the readings are drawn all the same");
        assertFalse(usable());
    }

    @Test
    void namesTheLineThatDoesNotRead() {
        show();
        paste("0;21\n60;warm");
        assertTrue(message().contains("Line 2: \"warm\" is no temperature"), message());
        paste(warmUp(3600).replace(";", ",") + "99999,1,2,3\n");
        assertTrue(message().contains("has 4 figures"), message());
    }

    @Test
    void opensAFile() throws Exception {
        Path file = folder.resolve("warm.csv");
        Files.writeString(file, "\ufeff" + warmUp(3600));
        show();
        stage.type("identify.heat", "80");
        IdentifyForm form =
                (IdentifyForm) stage.find("identify.record", Text.class).getParent();
        form.open(file);
        stage.until("the file is fitted", () -> message().contains("121 readings"));
        assertFalse(usable());
        assertEquals("No project is open.", stage.said("identify.reason"));
        form.open(folder.resolve("gone.csv"));
        stage.until("the failure is told", () -> message().contains("gone.csv could not be read"));
        assertTrue(stage.find("identify.message", Label.class).isVisible());
    }

    @Test
    void followsTheDecimalComma() throws Exception {
        stage.withProject().open();
        show();
        stage.type("identify.heat", "80");
        paste(warmUp(3600));
        stage.desk.setDisplay(new DisplaySettings(2, true));
        stage.settle();
        assertTrue(
                row("Case to air").getText(1).startsWith("0,4"),
                row("Case to air").getText(1));
    }

    @Test
    void aProjectThatIsOpenElsewhereIsNotWrittenTo() throws Exception {
        stage.withProject();
        ProjectSession.open(folder, Clock.systemUTC()).edit("Hold", project -> project.withTitle("held"));
        stage.open();
        show();
        stage.type("identify.heat", "80");
        paste(warmUp(3600));
        assertFalse(usable());
        assertEquals("The project is open for reading only.", stage.said("identify.reason"));
    }

    @Test
    void anEmptyRecordClearsWhatWasFound() {
        show();
        stage.type("identify.heat", "80");
        paste(warmUp(3600));
        stage.find("identify.record", Text.class).setText("");
        stage.until("it is cleared", () -> message().isEmpty());
        assertEquals(0, stage.find("identify.table", Table.class).getItemCount());
        assertFalse(view.isDisposed());
    }
}

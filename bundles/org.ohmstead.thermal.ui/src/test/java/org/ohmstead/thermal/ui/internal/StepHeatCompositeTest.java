// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;
import org.ohmstead.model.SinkSize;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.DisplaySettings;

class StepHeatCompositeTest {
    private static final double SHOWN = 0.006;

    @TempDir
    Path folder;

    private HeatStage stage;

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
        stage.show(parent -> new StepHeatComposite(parent, stage.desk));
        stage.until(
                "the first step is worked out",
                () -> Ids.exists(stage.shell, "calc.table") && table().getItemCount() > 0);
    }

    private Table table() {
        return stage.find("calc.table", Table.class);
    }

    private String all() {
        return Arrays.stream(table().getItems())
                .map(item -> item.getText(0) + "|" + item.getText(1) + "|" + item.getText(2) + "|" + item.getText(3)
                        + "|" + item.getText(4))
                .collect(Collectors.joining("\n"));
    }

    /** Does something and waits until the table shows what came of it. */
    private void then(Runnable action) {
        String before = all();
        action.run();
        stage.until("the table has changed", () -> !all().equals(before));
    }

    private void type(String id, String text) {
        then(() -> stage.type(id, text));
    }

    private TableItem row(String beginning) {
        return Arrays.stream(table().getItems())
                .filter(item -> item.getText(0).startsWith(beginning))
                .findFirst()
                .orElseThrow(() -> new AssertionError(beginning + " is not among\n" + all()));
    }

    private double value(String beginning) {
        return Double.parseDouble(row(beginning).getText(1));
    }

    private void known(AmplifierHeat amplifier) {
        stage.edit(project -> project.withHeat(new HeatData(
                amplifier, SupplyLimits.NONE, project.heat().pacing().withMarginKelvin(0))));
    }

    private static AmplifierHeat body() {
        return AmplifierHeat.NONE
                .withOutputClass(OutputClass.CLASS_D)
                .withIdleWatts(Optional.of(Range.of(0)))
                .withCaseKelvinPerWatt(Optional.of(Range.of(0.5)))
                .withCaseJoulesPerKelvin(Optional.of(Range.of(2000)))
                .withCaseLimitCelsius(OptionalDouble.of(75));
    }

    @Test
    void worksWithoutAProjectAndSaysWhatIsMissing() {
        show();
        assertEquals(100, value("Output, all loads"));
        assertTrue(row("Volts at the terminals").getText(4).contains("Open a project"));
        assertEquals("\u2013", row("Case").getText(1));
        String said = stage.find("calc.chart", ChartCanvas.class).message().orElse("");
        assertTrue(said.contains("Open a project"), said);
        assertTrue(stage.said("calc.caution").contains("licensed practice"), stage.said("calc.caution"));
        assertTrue(stage.said("calc.remarks").contains("class of the output stage is not known"));
    }

    @Test
    void takesTheStepsOfThePlan() throws Exception {
        stage.withProject().open();
        show();
        String first = stage.project().plan().get(0).id();
        assertEquals(first, stage.find("calc.step", Combo.class).getText());
        assertTrue(stage.said("calc.origin").contains("comes from the rating"), stage.said("calc.origin"));
        var burst = stage.project().plan().stream()
                .filter(step -> step.stimulus() instanceof org.ohmstead.model.Stimulus.ToneBurst)
                .findFirst()
                .orElseThrow();
        then(() -> stage.choose("calc.step", burst.id()));
        assertEquals("burst", stage.find("calc.signal", Combo.class).getText());
        assertTrue(stage.find("calc.burstOn", Text.class).isVisible());
        assertTrue(value("Supply current in the burst") > value("Supply current, average"));
        assertTrue(value("Supply current, RMS") > value("Supply current, average"));
    }

    /** With an efficiency entered everything is plain arithmetic: 100 W out at 80 % is 125 W in and 25 W of heat. */
    @Test
    void everyFigureFollowsByHandFromAnEfficiency() throws Exception {
        stage.withProject().open();
        known(body());
        show();
        then(() -> {
            stage.type("calc.air", "25");
            stage.type("calc.power", "50");
            stage.type("calc.supply", "12.5");
            stage.choose("calc.signal", "steady sine");
            stage.type("calc.efficiency", "80");
            stage.type("calc.seconds", "1000");
            stage.until(
                    "all is worked out",
                    () -> row("Case after").getText(0).contains("16.7 min")
                            && row("Input power").getText(1).equals("125"));
        });
        assertEquals(25, value("Heat of the amplifier"), SHOWN * 25);
        assertEquals(125, value("Input power"), SHOWN * 125);
        // 25 + 25 W 0.5 K/W (1 - e^(-1000 s / 1000 s)), tau = R C.
        assertEquals(25 + 12.5 * -Math.expm1(-1), value("Case after"), 0.051);
        assertEquals(37.5, value("Case in the end"), 0.051);
        assertEquals("unlimited", row("Maximum on-time").getText(1));
        // 50 K above the air at 0.5 K/W.
        assertEquals(100, value("Heat carried off for ever"), SHOWN * 100);
        // From a rise of 7.9 K to 5 K: tau ln(7.9 / 5).
        double rise = 12.5 * -Math.expm1(-1);
        assertEquals("min", row("Cool-down").getText(2));
        assertEquals(1000 * Math.log(rise / 5) / 60, value("Cool-down"), SHOWN * 8);
        assertEquals("100", row("Duty without end").getText(1));
        // Copper of the project's cable; I = P / V at the terminals is a little above 125 W / 12.5 V.
        assertEquals(10, value("Supply current, average"), 0.2);
        assertTrue(value("Volts at the terminals") < 12.5);
        assertTrue(value("Set the supply to") > 12.5);
    }

    /** On-time from t = -tau ln(1 - dT / (P R)); the duty bursts of bodies by the closed form of a train. */
    @Test
    void limitsAreThoseOfTheClosedForms() throws Exception {
        stage.withProject().open();
        known(body());
        show();
        then(() -> {
            stage.type("calc.air", "25");
            stage.type("calc.power", "400");
            stage.choose("calc.signal", "steady sine");
            stage.type("calc.efficiency", "80");
            stage.type("calc.seconds", "60");
            stage.until(
                    "all is worked out",
                    () -> row("Heat of the amplifier").getText(1).equals("200")
                            && row("Case after").getText(0).contains("60 s"));
        });
        // 800 W out, 200 W of heat, 100 K in the end, 50 K allowed, tau 1000 s: 1000 ln 2 = 693 s.
        assertEquals("min", row("Maximum on-time").getText(2));
        assertEquals(1000 * Math.log(2) / 60, value("Maximum on-time"), SHOWN * 11.55);
        // 100 K (1 - e^(-60/1000)) / (1 - e^(-T/1000)) = 50 K.
        double period = -1000 * Math.log(1 - 2 * -Math.expm1(-0.06));
        assertEquals(100 * 60 / period, value("Duty without end"), SHOWN * 48);
        // Half of this power.
        assertEquals(200, value("Power per output for ever"), SHOWN * 200);
        type("calc.seconds", "900");
        assertTrue(row("Maximum on-time").getText(4).contains("longer than it may be on"), all());
    }

    @Test
    void rangesBecomeBands() throws Exception {
        stage.withProject().open();
        known(body().withCaseKelvinPerWatt(Optional.of(new Range(0.4, 0.6))));
        show();
        then(() -> {
            stage.type("calc.air", "25");
            stage.type("calc.power", "50");
            stage.choose("calc.signal", "steady sine");
            stage.type("calc.efficiency", "80");
            stage.until(
                    "all is worked out",
                    () -> row("Heat of the amplifier").getText(1).equals("25.0"));
        });
        assertEquals("35.0 \u2013 40.0", row("Case in the end").getText(3));
    }

    @Test
    void saysWhatIsNotKnown() throws Exception {
        stage.withProject().open();
        known(AmplifierHeat.NONE.withCaseKelvinPerWatt(Optional.of(Range.of(0.5))));
        show();
        assertEquals("\u2013", row("Case after").getText(1));
        assertFalse(row("Case in the end").getText(1).isEmpty());
        assertTrue(row("Hottest junction").getText(4).contains("Heat and pacing"), all());
        assertTrue(row("Maximum on-time").getText(4).contains("No limit is known"), all());
        String said = stage.find("calc.chart", ChartCanvas.class).message().orElse("");
        assertTrue(said.contains("heat capacity"), said);
    }

    @Test
    void aSupplyThatCannotIsToldWithARemedy() throws Exception {
        stage.withProject().open();
        show();
        type("calc.power", "1500");
        assertTrue(stage.find("calc.alert", Label.class).isVisible());
        assertTrue(stage.said("calc.alert").contains("the supply limits at"), stage.said("calc.alert"));
        type("calc.power", "10");
        assertFalse(stage.find("calc.alert", Label.class).isVisible());
    }

    @Test
    void fusesCarryTheirProvenance() throws Exception {
        stage.withProject().open();
        stage.edit(project -> project.withAmplifier(
                project.amplifier().withFuses(List.of(new Fuse(10, "blade", ""), new Fuse(10, "blade", "")))));
        show();
        type("calc.power", "100");
        assertTrue(row("Fuses, 2 \u00d7 10 A").getText(4).contains("shared alike"), all());
        assertTrue(row("Fuses open").getText(4).contains("from memory"), all());
        then(() ->
                stage.edit(project -> project.withAmplifier(project.amplifier().withFuses(List.of()))));
        assertTrue(row("Fuses").getText(4).contains("lists none"), all());
    }

    @Test
    void aBatteryIsCautionedAgainst() throws Exception {
        stage.withProject().open();
        show();
        assertFalse(stage.said("calc.caution").contains("battery"));
        stage.edit(project -> project.withHeat(
                project.heat().withSupply(project.heat().supply().withBattery(true))));
        stage.until("the caution has come", () -> stage.said("calc.caution").contains("battery"));
    }

    @Test
    void keepsAndExplainsWhatDoesNotFit() throws Exception {
        stage.withProject().open();
        show();
        String before = all();
        stage.type("calc.efficiency", "90 to 120");
        assertTrue(stage.said("calc.efficiency.message").contains("at most 100 %"));
        stage.type("calc.power", "-3");
        assertTrue(stage.said("calc.power.message").contains("above 0"));
        stage.settle();
        assertEquals(before, all());
    }

    /** 330 W for 20 of 500 ms, 20 dB less, a hundredth, in between: 330 (0.04 + 0.96 / 100) = 16.4 W. */
    @Test
    void burstsAreAveraged() throws Exception {
        stage.withProject().open();
        show();
        then(() -> {
            stage.choose("calc.mode", "bridged");
            stage.choose("calc.signal", "burst");
            stage.type("calc.power", "330");
            stage.until(
                    "all is worked out",
                    () -> row("Output, all loads").getText(1).equals("16.4"));
        });
        double average = value("Supply current, average");
        double burst = value("Supply current in the burst");
        assertTrue(value("Supply current, RMS") > average && value("Supply current, RMS") < burst, all());
        assertTrue(stage.said("calc.remarks").contains("loud part of the burst"), stage.said("calc.remarks"));
        stage.type("calc.burstOn", "600");
        assertTrue(stage.said("calc.burstOn.message").contains("shorter than the period"));
    }

    @Test
    void aSinkOfKnownSizeStandsInForItsResistance() throws Exception {
        stage.withProject().open();
        known(AmplifierHeat.NONE.withSinkSize(Optional.of(new SinkSize(0.2, 0.06, 14, 0.03, 0.002, 0.85))));
        stage.edit(project ->
                project.withAmplifier(project.amplifier().withHeatSinkKelvinPerWatt(OptionalDouble.empty())));
        show();
        assertTrue(stage.said("calc.remarks").contains("estimated from the sink's size"), stage.said("calc.remarks"));
        assertTrue(row("Case in the end").getText(3).contains("\u2013"), all());
    }

    @Test
    void showsOnlyTheFieldsThatFitTheSignal() throws Exception {
        stage.withProject().open();
        show();
        assertFalse(stage.find("calc.crest", Text.class).isVisible());
        then(() -> stage.choose("calc.signal", "programme"));
        assertTrue(stage.find("calc.crest", Text.class).isVisible());
        double output = value("Output, all loads");
        then(() -> stage.choose("calc.signal", "steady sine"));
        // A crest factor of 12 dB is 2 / 10^1.2 of the sine's power.
        assertEquals(output / (2 / Math.pow(10, 1.2)), value("Output, all loads"), 0.01 * value("Output, all loads"));
    }

    @Test
    void copiesTheChosenLinesWithAPoint() throws Exception {
        stage.withProject().open();
        show();
        stage.desk.setDisplay(new DisplaySettings(2, true));
        stage.until(
                "the comma is there",
                () -> row("Input power").getText(3).contains(",")
                        || row("Supply current, average").getText(1).contains(","));
        Table table = table();
        table.setSelection(table.indexOf(row("Supply current, average")));
        Event key = new Event();
        key.stateMask = SWT.MOD1;
        key.keyCode = 'c';
        table.notifyListeners(SWT.KeyDown, key);
        Clipboard clipboard = new Clipboard(stage.display);
        String copied = String.valueOf(clipboard.getContents(TextTransfer.getInstance()));
        clipboard.dispose();
        assertTrue(copied.startsWith("Supply current, average\t"), copied);
        assertTrue(copied.contains("."), copied);
    }

    @Test
    void theSummaryNamesWhatMattersFirst() throws Exception {
        stage.withProject().open();
        show();
        String summary = stage.said("calc.summary");
        assertTrue(summary.startsWith("May be on: "), summary);
        assertTrue(summary.contains("from the supply") && summary.contains("fuses"), summary);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.workbench.look.Ids;

class QualityCompositeTest {
    @TempDir
    Path folder;

    private final ViewMemory memory = ViewMemory.passing();
    private Stage stage;
    private int asked;
    private Clock clock = Clock.fixed(Standards.FIRST.plus(Duration.ofDays(25)), ZoneOffset.UTC);

    @BeforeEach
    void setUp() throws Exception {
        stage = new Stage(folder);
        stage.open();
        memory.put(ViewMemory.OPERATOR, "C. Cedar");
    }

    @AfterEach
    void tearDown() {
        stage.close();
    }

    private void show(CheckStandard... standards) {
        stage.desk.session().orElseThrow().edit("Test", project -> project.withCheckStandards(List.of(standards)));
        new QualityComposite(stage.shell, stage.desk, clock, new LoggedQuality(clock, "1"), memory, () -> asked++);
        stage.shell.open();
        stage.settle();
    }

    private void showWith(List<Double> values, CheckStandard... standards) throws Exception {
        Standards.write(stage, stage.desk.session().orElseThrow().project(), standards[0], values);
        stage.desk.refreshLog();
        show(standards);
        stage.until("the values are shown", () -> exists("quality.values") && values().getItemCount() == values.size());
    }

    private boolean exists(String id) {
        return Ids.exists(stage.shell, id);
    }

    private Table values() {
        return stage.find("quality.values", Table.class);
    }

    private Table checks() {
        return stage.find("quality.checks", Table.class);
    }

    private String sentence() {
        return stage.find("quality.sentence", Label.class).getText();
    }

    private String message() {
        return stage.find("quality.entry.message", Label.class).getText();
    }

    private Text value() {
        return stage.find("quality.entry.value", Text.class);
    }

    private void add(String typed) {
        value().setText(typed);
        stage.select(stage.find("quality.entry.add", Button.class));
    }

    @Test
    void saysWhatToDoWhereThereIsNoCheckStandard() {
        show();
        assertEquals(
                "This project has no check standard",
                stage.find("quality.empty", Label.class).getText());
        stage.select(stage.find("quality.empty.action", Button.class));
        assertEquals(1, asked);
    }

    @Test
    void isInOrderWhileTheValuesStayWithinTheLimits() throws Exception {
        showWith(Standards.inTurn(24), Standards.TYPED);
        assertEquals("In order", checks().getItem(0).getText(1));
        assertEquals("50.1\u00a0W", checks().getItem(0).getText(2));
        assertTrue(sentence().startsWith("In order: nothing was found in its 24 values"), sentence());
        String findings = stage.find("quality.findings", StyledText.class).getText();
        // Limits in closed form, rounded to at least four digits: see Standards.
        Matcher limits = Pattern.compile("between ([0-9.]+) and ([0-9.]+) W").matcher(findings);
        assertTrue(limits.find(), findings);
        assertEquals(50.05 - 0.266, Double.parseDouble(limits.group(1)), 0.005);
        assertEquals(50.05 + 0.266, Double.parseDouble(limits.group(2)), 0.005);
    }

    @Test
    void stopsAtAValueOutsideTheLimitsAndNamesTheRule() throws Exception {
        showWith(Standards.inTurn(20, 50.05, 50.4), Standards.TYPED);
        assertEquals("Stop", checks().getItem(0).getText(1));
        assertTrue(sentence().contains("outside the control limits"), sentence());
        assertTrue(values().getItem(0).getText(6).startsWith("One point lies outside the control limits"));
        assertEquals("", values().getItem(1).getText(6));
        ChartCanvas chart = stage.find("quality.values.chart", ChartCanvas.class);
        boolean[] drawn = new boolean[1];
        chart.whenDrawn(() -> drawn[0] = true);
        stage.until("the chart is drawn", () -> drawn[0]);
        chart.moveCursorTo(22);
        stage.settle();
        String words = stage.find("quality.point", Label.class).getText();
        assertTrue(words.startsWith("Value 22, 2026-10-22 08:00, A. Adler"), words);
        assertTrue(words.contains("outside the control limits"), words);
        Path file = folder.resolve("chart.csv");
        chart.export(file);
        String data = Files.readString(file);
        assertTrue(data.contains(ControlPlot.drift()), data);
    }

    @Test
    void writesATypedValueIntoTheLogAndShowsIt() throws Exception {
        showWith(Standards.inTurn(22), Standards.TYPED);
        add("50,08");
        stage.until("the value is there", () -> values().getItemCount() == 23);
        assertEquals("50.08", values().getItem(0).getText(2));
        assertEquals("C. Cedar", values().getItem(0).getText(3));
        assertEquals("", value().getText());
        assertEquals("Written.", message());
        try (TestLog log = TestLog.openReadOnly(stage.logFile())) {
            List<LogEntry> entries = log.entries(LogQuery.everything());
            MeasuredFigures last = entries.get(entries.size() - 1).figures().orElseThrow();
            assertEquals(50.08, last.figures().get(0).value());
            assertEquals("C. Cedar", last.provenance().operator());
            assertTrue(log.verify().intact());
        }
    }

    @Test
    void refusesWhatIsNoNumberAndAValueOfNobody() throws Exception {
        showWith(Standards.inTurn(4), Standards.TYPED);
        add("fifty");
        assertTrue(message().startsWith("\"fifty\" is not a number"), message());
        add("");
        assertTrue(message().startsWith("Write the value"), message());
        stage.find("quality.entry.operator", Text.class).setText(" ");
        add("50");
        assertTrue(message().startsWith("Write who measured it"), message());
        assertEquals(4, values().getItemCount());
    }

    @Test
    void anEnterInTheFieldAddsTheValue() throws Exception {
        showWith(Standards.inTurn(4), Standards.TYPED);
        value().setText("50.02");
        value().notifyListeners(SWT.DefaultSelection, new Event());
        stage.until("the value is there", () -> values().getItemCount() == 5);
    }

    @Test
    void turnsTheOtherViewsToTheEntryOfAValue() throws Exception {
        showWith(Standards.inTurn(4, 50.25), Standards.TYPED);
        values().setSelection(0);
        stage.select(values());
        assertEquals("F0005", stage.desk.chosenEntry().orElseThrow().id());
        assertTrue(stage.find("quality.point", Label.class).getText().startsWith("Value 5, "));
        assertEquals("50.25", values().getItem(0).getText(2));
        assertEquals("50.10", values().getItem(1).getText(2)); // as many places as the one above
    }

    @Test
    void saysHowManyValuesAreMissing() throws Exception {
        showWith(Standards.inTurn(4), Standards.TYPED);
        assertEquals("Too few values", checks().getItem(0).getText(1));
        assertTrue(sentence().contains("4 of the 20 values that are to set the limits"), sentence());
    }

    @Test
    void remindsOfAValueThatIsDue() throws Exception {
        // The 22nd value is of the 22nd of October, three days before the clock's day begins to count a week.
        clock = Clock.fixed(Instant.parse("2026-11-02T12:00:00Z"), ZoneOffset.UTC);
        CheckStandard weekly = Standards.TYPED.withEveryDays(7);
        showWith(Standards.inTurn(22), weekly);
        assertEquals("Stop", checks().getItem(0).getText(1));
        assertEquals("Stop: A new value has been due since 2026-10-29.", sentence());
    }

    @Test
    void takesNoTypedValueOfWhatAStepMeasures() throws Exception {
        showWith(Standards.inTurn(4), Standards.TYPED, Standards.MEASURED);
        checks().setSelection(1);
        stage.select(checks());
        assertFalse(value().isEnabled());
        assertEquals("Its values come from the readings of the step s1.", message());
        checks().setSelection(0);
        stage.select(checks());
        assertTrue(value().isEnabled());
    }

    @Test
    void tellsOperatorsApart() throws Exception {
        showWith(Standards.inTurn(24), Standards.TYPED);
        Table study = stage.find("quality.study", Table.class);
        assertEquals(2, study.getItemCount());
        assertEquals("A. Adler", study.getItem(0).getText(1));
        assertEquals("12", study.getItem(0).getText(2));
        // 50.0 and 50.1 in turn.
        assertEquals("50.05", study.getItem(0).getText(3));
        String words = stage.find("quality.study.sentence", StyledText.class).getText();
        assertTrue(words.startsWith("Operators: "), words);
    }

    @Test
    void saysWhyALogCannotBeRead() throws Exception {
        Files.writeString(stage.logFile(), "not a log at all, and long enough not to be empty");
        stage.desk.refreshLog();
        show(Standards.TYPED);
        stage.until(
                "the failure is told",
                () -> exists("quality.sentence") && sentence().contains("not judged"));
    }

    @Test
    void followsTheProject() throws Exception {
        showWith(Standards.inTurn(22), Standards.TYPED);
        stage.desk
                .session()
                .orElseThrow()
                .edit(
                        "Test",
                        project -> project.withCheckStandards(
                                List.of(Standards.TYPED.withName("Renamed"), Standards.MEASURED)));
        stage.until("the list follows", () -> checks().getItemCount() == 2);
        assertEquals("Renamed", checks().getItem(0).getText(0));
    }
}

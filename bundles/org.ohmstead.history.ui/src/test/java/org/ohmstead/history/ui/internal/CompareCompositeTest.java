// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Price;
import org.ohmstead.model.SupplyType;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.workbench.look.Ids;

class CompareCompositeTest {
    private static final int POWER = 2;
    private static final int DIFFERENCE = 4;
    private static final int MEANING = 6;
    private static final int PRICE = 7;
    private static final int PER_WATT = 8;
    private static final int ADJUSTED = 9;

    @TempDir
    Path root;

    private final ViewMemory memory = ViewMemory.passing();
    private Path own;
    private Path other;
    private Stage stage;
    private Optional<Path> chosenFolder = Optional.empty();
    private Optional<Path> chosenIndex = Optional.empty();

    @BeforeEach
    void setUp() throws Exception {
        own = Files.createDirectories(root.resolve("lark.ohmstead"));
        stage = new Stage(own);
        other = Amplifiers.project(root.resolve("wren.ohmstead"));
        Amplifiers.write(other, "0107", "2026-05-05", 1.1);
        chosenFolder = Optional.of(other);
    }

    @AfterEach
    void tearDown() {
        stage.close();
    }

    /** The project's own amplifier is the one with the serial number 0042, bought in 2019 for 400 EUR. */
    private void open() {
        stage.open();
        Amplifier amplifier = new Amplifier(
                "",
                "Larkspur 2x100",
                "0042",
                2,
                SupplyType.UNKNOWN,
                List.of(),
                List.of(),
                OptionalDouble.empty(),
                List.of(),
                "");
        stage.desk
                .session()
                .orElseThrow()
                .edit(
                        "Test",
                        project -> project.withAmplifier(
                                amplifier.withPrice(Optional.of(new Price(400, "EUR", LocalDate.of(2019, 2, 1))))));
        show();
    }

    private void show() {
        new CompareComposite(
                stage.shell,
                stage.desk,
                memory,
                new CompareComposite.Questions(start -> chosenFolder, start -> chosenIndex));
        stage.shell.open();
        stage.settle();
        stage.until("the parts are there", () -> Ids.exists(stage.shell, "compare.trend.chart"));
    }

    private void openWith(String... days) throws Exception {
        for (String day : days) {
            Amplifiers.write(own, "0042", day, 1);
        }
        open();
        awaitRows(1);
    }

    private Table powers() {
        return stage.find("compare.powers", Table.class);
    }

    private Table items() {
        return stage.find("compare.items", Table.class);
    }

    private void awaitRows(int count) {
        stage.until(count + " powers are shown", () -> powers().getItemCount() == count);
    }

    private String cell(int row, int column) {
        return powers().getItem(row).getText(column);
    }

    private String notes() {
        return stage.find("compare.notes", Label.class).getText();
    }

    private void press(String id) {
        stage.select(stage.find(id, Button.class));
    }

    private void addPeriod(String text) {
        stage.find("compare.period", Text.class).setText(text);
        press("compare.addperiod");
    }

    @Test
    void saysWhatToDoWithoutAProject() {
        show();
        assertEquals(
                Optional.of("No project is open. Open one, then choose here what it is compared with."),
                stage.find("compare.chart", ChartCanvas.class).message());
    }

    @Test
    void showsThePowerOfTheWeakestChannelWithItsPrice() throws Exception {
        openWith("2026-03-02");
        // The closed form gives 110.11 W at 14.4 V.
        assertEquals(110.11, Amplifiers.watts(14.4, 4), 0.01);
        assertEquals("110.1", cell(0, POWER));
        assertEquals("400.00\u00a0EUR", cell(0, PRICE));
        // 400 EUR over two channels of 110.11 W.
        assertEquals("1.82\u00a0EUR/W", cell(0, PER_WATT));
        assertEquals("\u2013", cell(0, ADJUSTED));
        assertEquals("", notes());
    }

    @Test
    void holdsAnotherProjectAgainstTheFirstAndWritesNothingIntoIt() throws Exception {
        byte[] before = Files.readAllBytes(other.resolve(TestLog.FILE_NAME));
        openWith("2026-03-02");
        press("compare.add");
        awaitRows(2);
        assertEquals("121.1", cell(1, POWER));
        assertTrue(cell(1, DIFFERENCE).startsWith("+11.0"), cell(1, DIFFERENCE));
        assertEquals("+10.0", cell(1, DIFFERENCE + 1));
        assertEquals("gives more, not by chance", cell(1, MEANING));
        assertArrayEquals(before, Files.readAllBytes(other.resolve(TestLog.FILE_NAME)));
        try (var files = Files.list(other)) {
            assertTrue(files.noneMatch(file -> file.getFileName().toString().contains("index")));
        }
        items().setSelection(1);
        stage.select(items());
        press("compare.first");
        stage.until("the other comes first", () -> cell(0, POWER).equals("121.1"));
        assertEquals("gives less, not by chance", cell(1, MEANING));
        press("compare.remove");
        awaitRows(1);
    }

    @Test
    void comparesOneSpecimenOverTheYears() throws Exception {
        openWith("2019-03-02", "2026-03-02");
        addPeriod("2019");
        addPeriod("2026");
        awaitRows(3);
        assertTrue(
                powers().getItem(1).getText(1).endsWith(", 2019"),
                powers().getItem(1).getText(1));
        assertEquals("no difference can be shown", cell(2, MEANING));
        addPeriod("2019");
        assertEquals(
                "That is in the list already.",
                stage.find("compare.items.message", Label.class).getText());
        addPeriod("last year");
        assertTrue(stage.find("compare.items.message", Label.class).getText().contains("is not a period"));
    }

    @Test
    void bringsPricesToTheMoneyOfAnotherYear() throws Exception {
        Path table = root.resolve("index.csv");
        Files.writeString(table, "period,index\n2019,100\n2026,125\n");
        chosenIndex = Optional.of(table);
        openWith("2026-03-02");
        press("compare.index");
        Combo money = stage.find("compare.base", Combo.class);
        stage.until("the years are offered", () -> money.getItemCount() == 3);
        money.select(2);
        stage.select(money);
        // 125/100 of 1.816 EUR/W.
        stage.until("the price is adjusted", () -> cell(0, ADJUSTED).equals("2.27\u00a0EUR/W"));
        assertEquals("Per watt in 2026", powers().getColumn(ADJUSTED).getText());
    }

    @Test
    void saysWhatIsWrongWithAnIndex() throws Exception {
        Path table = root.resolve("index.csv");
        Files.writeString(table, "year;number\n");
        chosenIndex = Optional.of(table);
        openWith("2026-03-02");
        press("compare.index");
        stage.until("it is told", () -> notes().contains("Line 1 of the price index index.csv"));
        assertEquals("110.1", cell(0, POWER));
    }

    @Test
    void saysWhyAProjectCannotBeCompared() throws Exception {
        Files.writeString(other.resolve(TestLog.FILE_NAME), "no log");
        openWith("2026-03-02");
        press("compare.add");
        stage.until("it is told", () -> notes().startsWith("wren is not compared"));
        assertEquals(1, powers().getItemCount());
    }

    @Test
    void saysWhatIsMissingAtOtherConditions() throws Exception {
        openWith("2026-03-02");
        Text volts = stage.find("compare.volts", Text.class);
        volts.setText("10");
        volts.notifyListeners(SWT.DefaultSelection, new Event());
        awaitRows(0);
        assertFalse(notes().isEmpty());
        volts.setText("ten");
        volts.notifyListeners(SWT.DefaultSelection, new Event());
        assertTrue(
                stage.find("compare.conditions.message", Label.class).getText().contains("supply volts"));
    }

    @Test
    void remembersWhatWasChosen() throws Exception {
        openWith("2026-03-02");
        press("compare.add");
        awaitRows(2);
        Text volts = stage.find("compare.volts", Text.class);
        volts.setText("13.5");
        volts.notifyListeners(SWT.DefaultSelection, new Event());
        CompareChoice kept = CompareChoice.parse(memory.get("compare.choice"));
        assertEquals(13.5, kept.supplyVolts());
        assertEquals(Optional.of(other), kept.items().get(1).folder());
        stage.shell.getChildren()[0].dispose();
        show();
        awaitRows(2);
        assertEquals("13.5", stage.find("compare.volts", Text.class).getText());
    }

    @Test
    void followsAFigureOverTime() throws Exception {
        openWith("2019-03-02", "2022-03-02", "2026-03-02");
        Combo figure = stage.find("compare.trend.figure", Combo.class);
        assertEquals("Power", figure.getText());
        Combo line = stage.find("compare.trend.line", Combo.class);
        assertEquals(2, line.getItemCount());
        String sentence = stage.find("compare.trend.sentence", Label.class).getText();
        assertTrue(sentence.startsWith("No drift is to be seen"), sentence);
        figure.select(2);
        stage.select(figure);
        stage.until("the volts are shown", () -> stage.find("compare.trend.sentence", Label.class)
                .getText()
                .contains("V per year"));
    }

    @Test
    void copiesTheTableAsText() throws Exception {
        openWith("2026-03-02");
        press("compare.copy");
        Clipboard clipboard = new Clipboard(stage.display);
        try {
            String text = (String) clipboard.getContents(TextTransfer.getInstance());
            String[] lines = text.split("\n");
            assertEquals(2, lines.length);
            assertTrue(lines[0].startsWith("No.\tAmplifier\tPower (W)\t"), lines[0]);
            assertTrue(lines[1].startsWith("1\tLarkspur 2x100 no. 0042\t110.1\t"), lines[1]);
            assertTrue(lines[1].contains("\t400.00 EUR\t"), lines[1]);
        } finally {
            clipboard.dispose();
        }
    }

    @Test
    void anEleventhThingIsNotOffered() throws Exception {
        openWith("2026-03-02");
        for (int year = 2010; year < 2019; year++) {
            addPeriod(Integer.toString(year));
        }
        assertEquals(10, items().getItemCount());
        assertFalse(stage.find("compare.add", Button.class).isEnabled());
        assertFalse(stage.find("compare.addperiod", Button.class).isEnabled());
        stage.until("the empty years are told", () -> notes().contains("2010"));
    }

    @Test
    void aLogThatGrowsIsReadAnew() throws Exception {
        openWith("2026-03-02");
        Amplifiers.write(own, "0042", "2026-04-02", 0.8);
        stage.desk.refreshLog();
        stage.until("the power is another", () -> !cell(0, POWER).equals("110.1"));
    }
}

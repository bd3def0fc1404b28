// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rest;
import org.ohmstead.model.SinkSize;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProblemPlace;
import org.ohmstead.workbench.session.ProjectSession;

class HeatPageTest {
    @TempDir
    Path folder;

    private final HeatPage page = new HeatPage();
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

    private SectionControl show() {
        SectionControl control = stage.show(parent -> page.create(parent, stage.desk));
        stage.shell.layout(true);
        stage.settle();
        return control;
    }

    private void open() throws Exception {
        stage.withProject().open();
        show();
    }

    private HeatData heat() {
        return stage.project().heat();
    }

    private Optional<String> undoName() {
        return stage.desk.session().orElseThrow().undoName();
    }

    @Test
    void saysWhatToDoWhileNoProjectIsOpenAndShowsOneThatIsOpenedLater() throws Exception {
        show();
        assertTrue(stage.find("heat.closed", Label.class).isVisible());
        stage.withProject().open();
        assertFalse(stage.find("heat.closed", Label.class).isVisible());
        assertEquals("0.4 to 0.5", stage.text("heat.case"));
    }

    @Test
    void showsWhatTheProjectHolds() throws Exception {
        open();
        assertEquals("0.4 to 0.5", stage.text("heat.case"));
        assertEquals("2600 to 3200", stage.text("heat.capacity"));
        assertEquals("84 to 88", stage.text("heat.converter"));
        assertEquals("31.4", stage.text("heat.rails"));
        assertEquals("2", stage.text("heat.source"));
        assertEquals("12.5", stage.text("heat.cableOuter"));
        assertEquals("10", stage.text("heat.currentMargin"));
        assertEquals("class AB, case known", page.summary(stage.project()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "0.45; 0.45; 0.45",
                "0.42 to 0.48 K/W; 0.42; 0.48",
                "0.42 \u2013 0.48; 0.42; 0.48",
                "0.42-0.48; 0.42; 0.48",
                "0,42 .. 0,48; 0.42; 0.48",
                "0.45 \u00b1 0.03; 0.42; 0.48"
            })
    void takesRangesAsPeopleWriteThem(String typed, double low, double high) throws Exception {
        open();
        stage.type("heat.case", typed);
        Range range = heat().amplifier().caseKelvinPerWatt().orElseThrow();
        assertEquals(low, range.low(), 1e-12);
        assertEquals(high, range.high(), 1e-12);
        assertEquals("", stage.said("heat.case.message"));
        if (!range.equals(new Range(0.4, 0.5))) {
            assertEquals(Optional.of("Set resistance from case to air"), undoName());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "0.5 to 0.4; write the smaller number first: 0.4 to 0.5.",
                "0 to 0.4; It must lie above 0.",
                "warm; does not begin with a number",
                "0.4 to; is no range; write the least and the most",
                "0.4 W; K/W"
            })
    void keepsAndExplainsWhatDoesNotFit(String typed, String said) throws Exception {
        open();
        HeatData before = heat();
        stage.type("heat.case", typed);
        assertEquals(before, heat());
        assertEquals(typed, stage.text("heat.case"));
        String message = stage.said("heat.case.message");
        assertTrue(message.contains(said), message);
        assertTrue(stage.find("heat.case.message", Label.class).isVisible());
        stage.type("heat.case", "0.46");
        assertEquals("", stage.said("heat.case.message"));
    }

    @Test
    void emptyMeansNotKnown() throws Exception {
        open();
        stage.type("heat.case", "");
        assertEquals(Optional.empty(), heat().amplifier().caseKelvinPerWatt());
        assertTrue(stage.said("heat.origin").contains("0.45 K/W from the amplifier's page"), stage.said("heat.origin"));
        stage.type("heat.rails", "");
        assertEquals(OptionalDouble.empty(), heat().amplifier().railVolts());
    }

    @Test
    void everyKindOfFieldIsANamedEditThatUndoTakesBack() throws Exception {
        open();
        HeatData before = heat();
        stage.choose("heat.class", "class D");
        assertEquals(OutputClass.CLASS_D, heat().amplifier().outputClass());
        assertEquals(Optional.of("Set output class"), undoName());
        stage.type("heat.caseLimit", "75 \u00b0C");
        assertEquals(OptionalDouble.of(75), heat().amplifier().caseLimitCelsius());
        stage.type("heat.loadChange", "90");
        assertEquals(90, heat().pacing().loadChangeSeconds());
        assertEquals(Optional.of("Set time of a change of load"), undoName());
        stage.tick("heat.warmUp", true);
        assertTrue(heat().pacing().warmUp());
        stage.type("heat.currentMargin", "20");
        assertEquals(0.2, heat().pacing().currentMarginRatio(), 1e-12);
        for (int edit = 0; edit < 5; edit++) {
            stage.desk.session().orElseThrow().undo();
        }
        stage.settle();
        assertEquals(before, heat());
        assertEquals("120", stage.text("heat.loadChange"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "heat.caseLimit; 500; between -60 and 400",
                "heat.converter; 90 to 110; at most 100 %",
                "heat.idle; -1; must not be below 0",
                "heat.step; 0; above 0",
                "heat.currentMargin; 96; between 0 and 95 %",
                "heat.continuous; 0; above 0"
            })
    void namesTheAllowedValues(String id, String typed, String said) throws Exception {
        open();
        HeatData before = heat();
        stage.type(id, typed);
        assertEquals(before, heat());
        assertTrue(stage.said(id + ".message").contains(said), stage.said(id + ".message"));
    }

    @Test
    void aBatteryBringsItsCaution() throws Exception {
        open();
        assertFalse(stage.find("heat.batteryCaution", Label.class).isVisible());
        stage.tick("heat.battery", true);
        assertTrue(heat().supply().battery());
        assertTrue(stage.find("heat.batteryCaution", Label.class).isVisible());
        assertTrue(stage.said("heat.batteryCaution").contains("Fuse it at its terminal"));
    }

    @Test
    void theSinkGoesIntoTheProjectWhenItIsWhole() throws Exception {
        open();
        stage.type("heat.sink.length", "200");
        stage.type("heat.sink.height", "50");
        stage.type("heat.sink.fins", "12");
        stage.type("heat.sink.depth", "30");
        stage.type("heat.sink.thickness", "2");
        assertEquals(Optional.empty(), heat().amplifier().sinkSize());
        assertEquals("Not used yet; still to come: emissivity.", stage.said("heat.sink.result"));
        stage.type("heat.sink.emissivity", "0.85");
        assertEquals(
                Optional.of(new SinkSize(0.2, 0.05, 12, 0.03, 0.002, 0.85)),
                heat().amplifier().sinkSize());
        assertTrue(stage.said("heat.sink.result").contains("K/W"), stage.said("heat.sink.result"));
        stage.type("heat.sink.thickness", "20");
        assertTrue(stage.said("heat.sink.thickness.message").contains("leaves no air"));
        stage.desk.session().orElseThrow().undo();
        stage.settle();
        assertEquals(Optional.empty(), heat().amplifier().sinkSize());
        assertEquals("", stage.text("heat.sink.length"));
        stage.desk.session().orElseThrow().redo();
        stage.settle();
        assertEquals("200", stage.text("heat.sink.length"));
        stage.type("heat.sink.length", "");
        assertEquals(Optional.of("Remove the sink's size"), undoName());
        assertEquals("50", stage.text("heat.sink.height"), "the rest stays to be completed");
    }

    @Test
    void aSinkThatCannotBeGivesNoEstimate() throws Exception {
        stage.withProject().open();
        // 1 by 1 mm cannot carry off 50 W.
        stage.edit(project -> project.withHeat(heat().withAmplifier(
                        heat().amplifier().withSinkSize(Optional.of(new SinkSize(0.001, 0.001, 0, 0, 0.001, 0.9))))));
        show();
        assertEquals(SinkGroup.noEstimate(), stage.said("heat.sink.result"));
    }

    /** 16 mm2 of copper are 2 sqrt(16 / pi) = 4.51 mm thick at least. */
    @Test
    void aLeadIsNoThinnerThanItsCopper() throws Exception {
        open();
        stage.edit(project -> project.withBench(
                project.bench().withCable(project.bench().cable().withCrossSectionSquareMillimetres(16))));
        stage.type("heat.cableOuter", "4.4");
        assertTrue(stage.said("heat.cableOuter.message").contains("4.51 mm"), stage.said("heat.cableOuter.message"));
        stage.type("heat.cableOuter", "4.6");
        assertEquals("", stage.said("heat.cableOuter.message"));
        assertEquals(0.0046, heat().supply().cableOuterMetres().orElseThrow(), 1e-12);
    }

    @Test
    void restsOfStepsThatAreGoneCanBeTakenAway() throws Exception {
        stage.withProject().open();
        SectionControl control = show();
        assertFalse(stage.find("heat.restsRemove", Button.class).isVisible());
        Rest kept = new Rest(stage.project().plan().get(0).id(), 60);
        stage.edit(project ->
                project.withHeat(heat().withPacing(heat().pacing().withRests(List.of(kept, new Rest("gone", 30))))));
        assertTrue(stage.said("heat.rests").startsWith("2 rests of your own"), stage.said("heat.rests"));
        assertEquals("1 rest lies before steps that the plan does not have.", stage.said("heat.restsLost"));
        control.reveal(ProblemPlace.parse("$.heat.pacing.rests[1].stepId"));
        assertEquals(stage.find("heat.restsRemove", Button.class), stage.display.getFocusControl());
        stage.press("heat.restsRemove");
        assertEquals(List.of(kept), heat().pacing().rests());
        assertEquals(Optional.of("Remove rests of steps that are gone"), undoName());
        assertFalse(stage.find("heat.restsRemove", Button.class).isVisible());
    }

    @Test
    void followsTheDecimalComma() throws Exception {
        open();
        stage.desk.setDisplay(new DisplaySettings(2, true));
        stage.settle();
        assertEquals("0,4 to 0,5", stage.text("heat.case"));
        stage.type("heat.case", "0,41 to 0,5");
        assertEquals(Optional.of(new Range(0.41, 0.5)), heat().amplifier().caseKelvinPerWatt());
    }

    @Test
    void aProjectThatIsOpenElsewhereCanOnlyBeRead() throws Exception {
        stage.withProject();
        ProjectSession other = ProjectSession.open(folder, Clock.systemUTC());
        other.edit("Hold", project -> project.withTitle("held"));
        stage.open();
        show();
        assertTrue(stage.find("heat.readonly", Label.class).isVisible());
        assertFalse(stage.find("heat.case", Text.class).getEditable());
        assertFalse(stage.find("heat.step", Text.class).getEditable());
        HeatData before = heat();
        stage.type("heat.case", "1");
        assertEquals(before, heat());
    }

    @Test
    void aProblemLeadsToItsField() throws Exception {
        stage.withProject().open();
        SectionControl control = show();
        control.reveal(new ProblemPlace(
                ProblemPlace.Section.OTHER, OptionalInt.empty(), "$.heat.amplifier.caseJoulesPerKelvin.low"));
        stage.settle();
        assertEquals(stage.find("heat.capacity", Text.class), stage.display.getFocusControl());
        control.reveal(ProblemPlace.parse("$.heat.pacing.marginKelvin"));
        assertEquals(stage.find("heat.margin", Text.class), stage.display.getFocusControl());
    }

    @ParameterizedTest
    @ValueSource(ints = {440, 700, 1400})
    void fitsNarrowAndWideWindows(int width) throws Exception {
        stage.shell.setSize(width, 800);
        open();
        assertInside((Composite) stage.shell.getChildren()[0]);
    }

    private static void assertInside(Composite parent) {
        for (Control child : parent.getChildren()) {
            int right = child.getBounds().x + child.getBounds().width;
            if ((child instanceof Composite || child instanceof Text) && child.isVisible()) {
                assertTrue(right <= parent.getClientArea().width + 1, child + " ends at " + right);
            }
            if (child instanceof Composite composite) {
                assertInside(composite);
            }
        }
    }

    @Test
    void saysHowMuchIsKnown() throws Exception {
        stage.withProject().open();
        assertEquals("not known yet", page.summary(stage.project().withHeat(heat().withAmplifier(AmplifierHeat.NONE))));
        assertEquals(
                "class D",
                page.summary(stage.project()
                        .withHeat(heat().withAmplifier(AmplifierHeat.NONE.withOutputClass(OutputClass.CLASS_D)))));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.look.Ids;

class EntryFieldTest {
    private final Shell shell = new Shell(Display.getDefault());
    private final FormSection section = new FormSection(shell, "supply", "Supply");
    private final QuantityField volts = section.quantity("volts", "&Voltage", Measure.of(Unit.VOLT));
    private final List<Object> committed = new ArrayList<>();

    @BeforeEach
    void open() {
        shell.setLayout(new FillLayout());
        shell.setSize(700, 400);
        volts.setValue(13.8);
        volts.onCommit(committed::add);
        shell.open();
    }

    @AfterEach
    void close() {
        shell.dispose();
        while (Display.getDefault().readAndDispatch()) {
            continue;
        }
    }

    private static Text text(Field<?> field) {
        return (Text) field.control();
    }

    private static void send(Field<?> field, int type) {
        field.control().notifyListeners(type, new Event());
    }

    private static void enter(Field<?> field, String typed) {
        text(field).setText(typed);
        send(field, SWT.DefaultSelection);
    }

    private static void escape(Field<?> field) {
        Event event = new Event();
        event.keyCode = SWT.ESC;
        field.control().notifyListeners(SWT.KeyDown, event);
    }

    private String message(String field) {
        return Ids.find(section, "supply." + field + ".message", Label.class).getText();
    }

    @Test
    void enterCommitsWhatReadsAndShowsItPlainly() {
        enter(volts, "14,4 V");
        assertEquals(List.of(14.4), committed);
        assertEquals("14.4", text(volts).getText());
        assertEquals(Optional.of(14.4), volts.value());
    }

    @Test
    void leavingTheFieldCommitsOnce() {
        text(volts).setText("12");
        send(volts, SWT.FocusOut);
        send(volts, SWT.FocusOut);
        assertEquals(List.of(12.0), committed);
    }

    @Test
    void badTextIsKeptMarkedAndNotCommitted() {
        enter(volts, "four");
        assertEquals("four", text(volts).getText());
        assertEquals(Optional.of("\"four\" does not begin with a number; write for example 13.8 V."), volts.problem());
        assertEquals(volts.problem().get(), message("volts"));
        assertEquals(List.of(), committed);
        volts.setValue(13.8);
        assertEquals("four", text(volts).getText(), "other parts of the project may change meanwhile");
        assertEquals(Optional.of(volts), section.firstProblem());
        enter(volts, "13.9");
        assertEquals(Optional.empty(), volts.problem());
        assertEquals("", message("volts"));
        assertEquals(List.of(13.9), committed);
    }

    @Test
    void escapeRestoresWhatWasThere() {
        enter(volts, "four");
        escape(volts);
        assertEquals("13.8", text(volts).getText());
        assertEquals(Optional.empty(), volts.problem());
    }

    @Test
    void anotherValueOfTheProjectTakesThePlaceOfWhatWasTyped() {
        enter(volts, "four");
        volts.setValue(12.0);
        assertEquals("12", text(volts).getText());
        assertEquals(Optional.empty(), volts.problem());
    }

    @Test
    void whatTheOwnerRefusesStaysWithTheReason() {
        volts.onCommit(value -> {
            throw new IllegalArgumentException("volts is " + value + "; it must be a finite number above 0");
        });
        enter(volts, "-3");
        assertEquals("-3", text(volts).getText());
        assertEquals("It must be a number above 0.", message("volts"));
        assertEquals(Optional.of(13.8), volts.value());
    }

    @Test
    void aCheckIsAskedBeforeTheOwner() {
        volts.check(value -> {
            if (value > 16) {
                throw new IllegalArgumentException("The supply gives 16 V at most.");
            }
        });
        enter(volts, "17");
        assertEquals("The supply gives 16 V at most.", message("volts"));
        assertEquals(List.of(), committed);
    }

    @Test
    void theSameValueOtherwiseWrittenIsNoChange() {
        enter(volts, "13.80 V");
        assertEquals(List.of(), committed);
        assertEquals("13.8", text(volts).getText());
    }

    @Test
    void aRemarkOfTheProjectStandsBesideTheFieldUntilItGoes() {
        volts.setRemark(Optional.of(new Problem(Severity.WARNING, "$.bench", "It is low.", "Raise it.")));
        assertEquals("It is low. Raise it.", message("volts"));
        enter(volts, "four");
        assertTrue(message("volts").startsWith("\"four\""), "a refusal goes before it");
        escape(volts);
        assertEquals("It is low. Raise it.", message("volts"));
        volts.setRemark(Optional.empty());
        assertEquals("", message("volts"));
    }

    @Test
    void readOnlyFieldsCommitNothing() {
        section.setReadOnly(true);
        assertFalse(text(volts).getEditable());
        text(volts).setText("12");
        send(volts, SWT.FocusOut);
        assertEquals(List.of(), committed);
    }

    @Test
    void everyKindOfFieldReadsItsOwn() {
        PercentField distortion = section.percent("distortion", "&Distortion");
        distortion.setValue(0.01);
        assertEquals("1", text(distortion).getText());
        distortion.onCommit(committed::add);
        enter(distortion, "10 %");
        OptionalQuantityField ambient = section.optionalQuantity("ambient", "&Ambient", Measure.of(Unit.CELSIUS));
        ambient.setValue(OptionalDouble.of(23));
        ambient.onCommit(committed::add);
        enter(ambient, "");
        IntegerField channels = section.integer("channels", "&Channels", 1, 8);
        channels.setValue(2);
        channels.onCommit(committed::add);
        enter(channels, "9");
        assertEquals("\"9\" does not fit; write a whole number from 1 to 8.", message("channels"));
        enter(channels, "4");
        DateField day = section.date("day", "Calibrated &on");
        day.setValue(Optional.empty());
        day.onCommit(committed::add);
        enter(day, "2026-03-02");
        TextField name = section.requiredText("name", "&Name");
        name.setValue("Bench A");
        name.onCommit(committed::add);
        enter(name, "  ");
        assertEquals("It must not be empty.", message("name"));
        enter(name, " Bench B ");
        assertEquals(
                List.of(0.1, OptionalDouble.empty(), 4, Optional.of(LocalDate.of(2026, 3, 2)), "Bench B"), committed);
    }

    @Test
    void aChoiceCommitsAtOnceAndGoesBackWhenRefused() {
        ChoiceField<Mode> mode = section.choice("mode", "&Mode", List.of(Mode.values()), Mode::name);
        mode.setValue(Mode.STEREO);
        Combo combo = (Combo) mode.control();
        mode.onCommit(committed::add);
        combo.select(Mode.BRIDGED.ordinal());
        send(mode, SWT.Selection);
        assertEquals(List.of(Mode.BRIDGED), committed);
        mode.onCommit(value -> {
            throw new IllegalArgumentException("The amplifier cannot do that.");
        });
        combo.select(Mode.STEREO.ordinal());
        send(mode, SWT.Selection);
        assertEquals("The amplifier cannot do that.", message("mode"));
        assertEquals(Mode.BRIDGED.name(), combo.getText());
    }

    @Test
    void aChoiceThatIsNoLongerOfferedIsStillShown() {
        ChoiceField<String> load = section.choice("load", "&Load", List.of("A", "B"), each -> each);
        load.setValue("gone");
        assertEquals("gone", ((Combo) load.control()).getText());
        load.setChoices(List.of("C"));
        assertEquals("gone", ((Combo) load.control()).getText());
    }

    @Test
    void theWheelDoesNotChangeAChoiceInPassing() {
        ChoiceField<Mode> mode = section.choice("mode", "&Mode", List.of(Mode.values()), Mode::name);
        Event wheel = new Event();
        wheel.doit = true;
        mode.control().notifyListeners(SWT.MouseVerticalWheel, wheel);
        assertFalse(wheel.doit);
    }

    @Test
    void aCheckFieldCommitsAtOnce() {
        CheckField check = section.check("check", "Con&firmed");
        check.setValue(false);
        check.onCommit(committed::add);
        ((Button) check.control()).setSelection(true);
        send(check, SWT.Selection);
        assertEquals(List.of(true), committed);
    }

    @Test
    void fieldsAreAlignedAndMessagesWrapAtBothWidths() {
        QuantityField ohms = section.quantity("ohms", "Cable &resistance", Measure.milli(Unit.OHM));
        ohms.setValue(0.0047);
        enter(ohms, "4.7 kilometres of copper");
        Label message = Ids.find(section, "supply.ohms.message", Label.class);
        for (int width : new int[] {500, 900}) {
            shell.setSize(width, 500);
            shell.layout(true, true);
            while (Display.getDefault().readAndDispatch()) {
                continue;
            }
            assertEquals(volts.control().getBounds().x, ohms.control().getBounds().x);
            assertEquals(volts.control().getSize().x, ohms.control().getSize().x);
            int needed = message.computeSize(message.getSize().x, SWT.DEFAULT).y;
            assertTrue(message.getSize().y >= needed, "the whole message is seen at " + width);
            assertTrue(rightEdge(message) <= section.getSize().x, "nothing sticks out at " + width);
        }
    }

    private int rightEdge(Control control) {
        return section.toControl(control.toDisplay(control.getSize().x, 0)).x;
    }

    @Test
    void aHiddenRowTakesNoPlace() {
        int before = section.computeSize(700, SWT.DEFAULT).y;
        TextField name = section.text("name", "&Name");
        name.setValue("x");
        name.setVisible(false);
        assertFalse(name.control().getVisible());
        assertEquals(before, section.computeSize(700, SWT.DEFAULT, true).y);
    }
}

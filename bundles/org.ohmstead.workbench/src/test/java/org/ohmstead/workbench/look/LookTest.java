// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Severity;
import org.ohmstead.units.Unit;

class LookTest {
    private final Shell shell = new Shell(Display.getDefault());

    @AfterEach
    void close() {
        shell.dispose();
    }

    // WCAG 2.2, success criterion 1.4.3: text needs a contrast ratio of at least 4.5.
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void everyTextToneStandsOutFromItsBackground(boolean dark) {
        Tones tones = dark ? Tones.DARK : Tones.LIGHT;
        RGB worst = dark ? new RGB(0x38, 0x38, 0x38) : new RGB(0xF2, 0xF1, 0xF0);
        for (Color tone :
                List.of(tones.text(), tones.mutedText(), tones.error(), tones.warning(), tones.ok(), tones.accent())) {
            for (RGB background : List.of(tones.background().getRGB(), worst)) {
                double contrast = Tones.contrast(tone.getRGB(), background);
                assertTrue(contrast >= 4.5, tone + " on " + background + " has " + contrast);
            }
        }
    }

    // WCAG 2.2, definition of the contrast ratio: 21 for black on white; 4.48 for #777777 on white is its well-known
    // near miss.
    @Test
    void contrastIsThatOfTheStandard() {
        RGB white = new RGB(255, 255, 255);
        assertEquals(21, Tones.contrast(new RGB(0, 0, 0), white), 1e-12);
        assertEquals(4.48, Tones.contrast(white, new RGB(0x77, 0x77, 0x77)), 0.005);
    }

    @Test
    void tonesFollowTheBackgroundThatTheControlHas() {
        Composite composite = new Composite(shell, SWT.NONE);
        composite.setBackground(new Color(250, 250, 250));
        assertSame(Tones.LIGHT, Tones.of(composite));
        composite.setBackground(new Color(40, 40, 40));
        assertSame(Tones.DARK, Tones.of(composite));
    }

    @ParameterizedTest
    @EnumSource(Severity.class)
    void everySeverityHasAnIconOfItsOwnThatIsLoadedOnce(Severity severity) {
        assertSame(Icons.of(severity), Icons.of(severity));
        assertEquals(16, Icons.of(severity).getBounds().width);
        for (Severity other : Severity.values()) {
            if (other != severity) {
                // Compared without colour: shapes must differ for those who do not tell the colours apart.
                assertFalse(Arrays.equals(shape(severity), shape(other)), severity + " looks like " + other);
            }
        }
    }

    private static byte[] shape(Severity severity) {
        return Icons.of(severity).getImageData(100).alphaData;
    }

    @Test
    void iconsGrowWithTheZoomInsteadOfBlurring() {
        assertEquals(32, Icons.image("table-add").getImageData(200).width);
        assertThrows(IllegalArgumentException.class, () -> Icons.image("no-such-icon"));
    }

    @ParameterizedTest
    @CsvSource({"13.8, 13.8", "0.1, 0.1", "90, 90", "1e-9, 0.000000001", "0, 0", "-0.5, -0.5", "150000, 150000"})
    void exactNumbersReadBackAsTheSame(double value, String text) {
        assertEquals(text, Numbers.exact(value));
        assertEquals(value, Double.parseDouble(Numbers.exact(value)));
    }

    @Test
    void numbersHaveNoMoreDigitsThanHelp() {
        assertEquals("0.333333", Numbers.shown(1.0 / 3));
        assertEquals("4.7 m\u03a9", Numbers.shown(0.0047, Unit.OHM));
        assertEquals("90.0 W", Numbers.digits(90, Unit.WATT, 3));
        assertEquals("7 %", Numbers.percent(0.07));
    }

    @Test
    void widgetsAreFoundByTheirNames() {
        Composite inner = new Composite(shell, SWT.NONE);
        Label label = Ids.name(new Label(inner, SWT.NONE), "a.label");
        assertSame(label, Ids.find(shell, "a.label", Label.class));
        assertTrue(Ids.exists(shell, "a.label"));
        assertEquals("a.label", Ids.of(label).orElseThrow());
        assertThrows(IllegalArgumentException.class, () -> Ids.find(shell, "a.label", Text.class));
        assertThrows(IllegalArgumentException.class, () -> Ids.find(shell, "b", Label.class));
    }

    @Test
    void aMessageLineKeepsItsHeightAndCarriesAnIcon() {
        shell.setLayout(new FillLayout());
        MessageLine line = new MessageLine(shell, "m");
        int empty = line.computeSize(400, SWT.DEFAULT).y;
        line.show(Severity.ERROR, "It must not be empty.");
        assertEquals("It must not be empty.", line.text());
        assertEquals(empty, line.computeSize(400, SWT.DEFAULT).y);
        assertEquals(Tones.of(line).error(), Ids.find(line, "m", Label.class).getForeground());
        assertNotEquals(null, ((Label) line.getChildren()[0]).getImage());
        line.clear();
        assertEquals("", line.text());
    }
}

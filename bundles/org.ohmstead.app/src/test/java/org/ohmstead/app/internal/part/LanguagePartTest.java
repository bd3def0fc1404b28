// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.app.internal.LanguageChoice;
import org.ohmstead.units.text.Language;

class LanguagePartTest {
    private static final long DEADLINE_NANOSECONDS = 20_000_000_000L;

    @TempDir
    Path folder;

    private Shell shell;
    private String before;
    private int restarts;

    @BeforeEach
    void open() {
        before = System.getProperty(Language.PROPERTY);
        shell = new Shell(Display.getDefault());
        shell.setLayout(new FillLayout());
    }

    @AfterEach
    void close() {
        shell.dispose();
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    private LanguagePart part(Map<String, String> environment) {
        LanguagePart part = new LanguagePart(shell, folder, environment);
        shell.setSize(500, 400);
        shell.open();
        return part;
    }

    private static List<Button> buttons(Composite parent) {
        return Stream.of(parent.getChildren())
                .filter(Button.class::isInstance)
                .map(Button.class::cast)
                .toList();
    }

    private static void choose(LanguagePart part, int index) {
        List<Button> buttons = buttons(part);
        for (int i = 0; i < buttons.size(); i++) {
            buttons.get(i).setSelection(i == index);
        }
    }

    /** Presses a button of the dialog that comes, and returns what the dialog said. */
    private List<String> answer(String button) {
        Display display = shell.getDisplay();
        List<String> said = new ArrayList<>();
        Runnable[] look = {null};
        look[0] = () -> {
            for (Shell dialog : display.getShells()) {
                if (dialog != shell) {
                    found(dialog, Label.class::isInstance).forEach(label -> said.add(((Label) label).getText()));
                    found(
                                    dialog,
                                    each -> each instanceof Button found
                                            && found.getText().equals(button))
                            .forEach(found -> found.notifyListeners(SWT.Selection, null));
                    return;
                }
            }
            display.timerExec(50, look[0]);
        };
        display.timerExec(50, look[0]);
        long deadline = System.nanoTime() + DEADLINE_NANOSECONDS;
        while (said.isEmpty() || display.getShells().length > 1) {
            assertTrue(System.nanoTime() < deadline, "no dialog came and went");
            if (!display.readAndDispatch()) {
                display.timerExec(20, () -> {});
                display.sleep();
            }
        }
        return said;
    }

    private static List<Control> found(Composite parent, Predicate<Control> wanted) {
        List<Control> found = new ArrayList<>();
        for (Control child : parent.getChildren()) {
            if (wanted.test(child)) {
                found.add(child);
            }
            if (child instanceof Composite inner) {
                found.addAll(found(inner, wanted));
            }
        }
        return found;
    }

    @Test
    void offersTheMachineAndBothLanguages() throws IOException {
        System.setProperty(Language.PROPERTY, "en");
        LanguageChoice.GERMAN.write(folder);
        LanguagePart part = part(Map.of());
        List<String> names = buttons(part).stream().map(Button::getText).toList();
        assertEquals(3, names.size());
        assertTrue(names.get(0).startsWith("As the &machine ("), names.get(0));
        assertEquals(List.of("&English", "Deu&tsch"), names.subList(1, 3));
        assertEquals(LanguageChoice.GERMAN, part.chosen());
        assertTrue(part.keep(() -> restarts++));
        assertFalse(shell.getDisplay().readAndDispatch() && restarts > 0, "nothing changed, so nothing is asked");
    }

    @Test
    void keepsTheChoiceAndStartsAnewWhenAskedTo() {
        System.setProperty(Language.PROPERTY, "de");
        LanguagePart part = part(Map.of());
        choose(part, 2);
        assertTrue(part.keep(() -> restarts++));
        assertEquals(LanguageChoice.GERMAN, LanguageChoice.read(folder));
        List<String> said = answer("&Neu starten");
        assertTrue(
                said.contains("Die Sprache wechselt beim nächsten Start. Ohmstead jetzt neu starten?"), said::toString);
        assertEquals(1, restarts);
    }

    @Test
    void keepsTheChoiceAndLeavesTheStartForLater() {
        System.setProperty(Language.PROPERTY, "en");
        LanguagePart part = part(Map.of());
        choose(part, 1);
        assertTrue(part.keep(() -> restarts++));
        answer("&Later");
        assertEquals(0, restarts);
        assertEquals(LanguageChoice.ENGLISH, LanguageChoice.read(folder));
        choose(part, 0);
        assertTrue(part.keep(() -> restarts++));
        answer("&Later");
        assertEquals(LanguageChoice.MACHINE, LanguageChoice.read(folder));
    }

    @Test
    void saysWhenTheChoiceCannotBeKept() throws IOException {
        System.setProperty(Language.PROPERTY, "en");
        folder = Files.createFile(folder.resolve("no folder"));
        LanguagePart part = part(Map.of());
        choose(part, 2);
        boolean[] kept = {true};
        shell.getDisplay().asyncExec(() -> kept[0] = part.keep(() -> restarts++));
        List<String> said = answer("OK");
        assertTrue(
                said.stream().anyMatch(text -> text.startsWith("The choice could not be written to ")), said::toString);
        assertFalse(kept[0]);
    }

    @Test
    void saysThatTheEnvironmentGoesBeforeTheChoice() {
        System.setProperty(Language.PROPERTY, "en");
        LanguagePart part = part(Map.of("OHMSTEAD_JAVA_OPTIONS", "-Dohmstead.language=de"));
        assertEquals(
                1,
                found(
                                part,
                                each -> each instanceof Label label
                                        && label.getText().contains("OHMSTEAD_JAVA_OPTIONS"))
                        .size());
    }
}

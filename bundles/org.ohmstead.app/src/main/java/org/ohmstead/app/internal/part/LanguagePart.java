// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.app.internal.LanguageChoice;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The choice of the language, which is kept for the next start. */
final class LanguagePart extends Composite {
    private static final Messages TEXTS = Messages.of(LanguagePart.class);
    private static final int TEXT_WIDTH = 300;

    private final Path stateFolder;
    private final Map<LanguageChoice, Button> buttons = new EnumMap<>(LanguageChoice.class);
    private LanguageChoice kept;

    /**
     * Shows what was chosen.
     *
     * @param stateFolder where the choice is kept
     * @param environment which may ask for a language by itself
     */
    LanguagePart(Composite parent, Path stateFolder, Map<String, String> environment) {
        super(parent, SWT.NONE);
        this.stateFolder = stateFolder;
        kept = LanguageChoice.read(stateFolder);
        GridLayoutFactory.fillDefaults().spacing(0, Spacing.GAP).applyTo(this);
        text("language.label");
        for (LanguageChoice choice : LanguageChoice.values()) {
            Button button = new Button(this, SWT.RADIO);
            button.setText(name(choice));
            button.setSelection(choice == kept);
            Ids.name(button, "appearance.language." + choice.name().toLowerCase(Locale.ROOT));
            buttons.put(choice, button);
        }
        text("language.note");
        if (LanguageChoice.isOverruled(environment)) {
            Ids.name(text("language.asked"), "appearance.language.asked");
        }
    }

    private static String name(LanguageChoice choice) {
        Locale spoken = LanguageChoice.machine(System.getProperties());
        return TEXTS.text(
                "language." + choice.name(),
                Locale.forLanguageTag(spoken.getLanguage()).getDisplayLanguage(TEXTS.locale()));
    }

    private Label text(String key) {
        Label label = new Label(this, SWT.WRAP);
        label.setText(TEXTS.text(key));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    /** Returns what is chosen now. */
    LanguageChoice chosen() {
        return buttons.entrySet().stream()
                .filter(entry -> entry.getValue().getSelection())
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(kept);
    }

    /**
     * Keeps the choice for the next start; if it is another one than before, asks afterwards whether to start anew.
     *
     * @param restart starts Ohmstead anew
     * @return whether it is kept; if not, the user was told
     */
    boolean keep(Runnable restart) {
        LanguageChoice chosen = chosen();
        if (chosen == kept) {
            return true;
        }
        try {
            chosen.write(stateFolder);
        } catch (IOException e) {
            MessageDialog.openError(
                    getShell(),
                    TEXTS.text("language.failed"),
                    TEXTS.text(
                            "language.failed.what",
                            LanguageChoice.file(stateFolder).toString(),
                            e.toString()));
            return false;
        }
        kept = chosen;
        // Once the dialog of the preferences is closed, if it is about to be.
        getDisplay().asyncExec(() -> offer(restart));
        return true;
    }

    private static void offer(Runnable restart) {
        int answer = MessageDialog.open(
                MessageDialog.QUESTION,
                null,
                TEXTS.text("language.restart"),
                TEXTS.text("language.restart.question"),
                SWT.NONE,
                TEXTS.text("language.restart.now"),
                TEXTS.text("language.restart.later"));
        if (answer == 0) {
            restart.run();
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.module;

import java.util.Objects;
import java.util.function.Predicate;
import org.eclipse.jface.dialogs.MessageDialog;
import org.ohmstead.jobs.ModuleFile;
import org.ohmstead.units.text.Messages;

/**
 * Asks the user about a module before it runs for the first time: its name and version, its file, the file's hash and who signed it. The
 * answer that a hasty Enter gives is no.
 */
public final class ModuleQuestion implements Predicate<ModuleFile> {
    private static final Messages TEXTS = Messages.of(ModuleQuestion.class);
    private static final int USE = 1;

    private final Runnable before;

    /**
     * Makes it.
     *
     * @param before what is done before the question is shown, such as taking away the picture of the start
     */
    public ModuleQuestion(Runnable before) {
        this.before = Objects.requireNonNull(before, "before");
    }

    @Override
    public boolean test(ModuleFile module) {
        before.run();
        String[] answers = {TEXTS.text("question.no"), TEXTS.text("question.yes")};
        MessageDialog dialog = new MessageDialog(
                null, TEXTS.text("question.title"), null, text(module), MessageDialog.WARNING, 0, answers);
        return dialog.open() == USE;
    }

    /** Returns what is asked. */
    static String text(ModuleFile module) {
        return TEXTS.text("question.ask", module.description());
    }
}

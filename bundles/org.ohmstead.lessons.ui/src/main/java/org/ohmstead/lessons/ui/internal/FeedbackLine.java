// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What is said to a prediction: a sign, and sentences that say it in words too. */
final class FeedbackLine {
    private static final int ICON_SIZE = 16;

    private final Composite area;
    private final Label sign;
    private final Label words;

    FeedbackLine(Composite parent, PaneStyle style) {
        area = style.dress(new Composite(parent, SWT.NONE));
        Spacing.tight(2).applyTo(area);
        sign = style.dress(new Label(area, SWT.NONE));
        GridDataFactory.swtDefaults()
                .align(SWT.BEGINNING, SWT.BEGINNING)
                .hint(ICON_SIZE, ICON_SIZE)
                .applyTo(sign);
        words = style.named(new Label(area, SWT.WRAP), "feedback");
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(words);
    }

    Composite control() {
        return area;
    }

    /** Shows how a lesson stands: what is said to the prediction, or the answer where the controls were moved since. */
    void show(LessonRun run) {
        String sentence = AnswerWords.of(run);
        boolean right = run.feedback().map(feedback -> feedback.right()).orElse(false);
        Tones tones = Tones.of(area);
        if (run.moved()) {
            sign.setImage(null);
            words.setForeground(tones.text());
        } else {
            sign.setImage(run.open() ? Icons.image(right ? "ok" : "problem-info") : null);
            words.setForeground(right ? tones.ok() : tones.warning());
        }
        Parts.say(words, sentence);
        Parts.show(area, !sentence.isEmpty());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.metrology.quality.CheckStandardReview.Finding;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What was found at a check standard, what to do about it, and what its chart expects. */
final class FindingsText {
    private static final Messages TEXTS = Messages.of(FindingsText.class);
    private final StyledText text;

    FindingsText(Composite parent, String id) {
        text = Ids.name(new StyledText(parent, SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.MULTI), id);
        text.setMargins(Spacing.GAP, Spacing.GAP, Spacing.GAP, Spacing.GAP);
        text.setAlwaysShowScrollBars(false);
        text.addListener(SWT.Traverse, event -> {
            // Tab leads on instead of being written.
            if (event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS) {
                event.doit = true;
            }
        });
    }

    StyledText control() {
        return text;
    }

    void show(Optional<CheckView> check) {
        Builder built = new Builder(Tones.of(text));
        check.ifPresent(each -> write(each, built));
        String wanted = built.words.toString().stripTrailing();
        text.setText(wanted);
        int length = wanted.length();
        text.setStyleRanges(built.ranges.stream()
                .filter(range -> range.start + range.length <= length)
                .toArray(StyleRange[]::new));
    }

    private static void write(CheckView check, Builder built) {
        for (Finding found : check.quality().findings()) {
            built.head(
                    TEXTS.text(found.serious() ? "findings.stop" : "findings.look"),
                    found.serious() ? built.tones.error() : built.tones.warning());
            built.line("  " + Shown.sentence(found.sentence()));
            built.line(TEXTS.text("findings.remedy", Shown.sentence(found.remedy())));
            built.gap();
        }
        if (check.quality().findings().isEmpty()) {
            built.head(check.standing().words(), built.tone(check.standing()));
            built.line("  " + capital(Shown.sentence(check.sentence())));
            built.gap();
        }
        check.quality().notes().forEach(note -> built.line(Shown.sentence(note)));
    }

    private static String capital(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    /** The words with how they look. */
    private static final class Builder {
        private final StringBuilder words = new StringBuilder();
        private final List<StyleRange> ranges = new ArrayList<>();
        private final Tones tones;

        Builder(Tones tones) {
            this.tones = tones;
        }

        Color tone(Standing standing) {
            return switch (standing) {
                case IN_ORDER -> tones.ok();
                case LOOK -> tones.warning();
                case STOP -> tones.error();
                case TOO_FEW -> tones.mutedText();
            };
        }

        void head(String word, Color tone) {
            ranges.add(new StyleRange(words.length(), word.length(), tone, null, SWT.BOLD));
            words.append(word);
        }

        void line(String sentence) {
            words.append(sentence).append('\n');
        }

        void gap() {
            words.append('\n');
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.ohmstead.workbench.look.Tones;

/** Makes lists readable: headings bold, cautions in the tone of a warning beside their sign. */
final class Emphasis {
    private static final String CAUTION = "! ";

    private Emphasis() {}

    static void apply(StyledText text) {
        Tones tones = Tones.of(text);
        for (int line = 0; line < text.getLineCount(); line++) {
            String words = text.getLine(line);
            boolean heading = !words.isEmpty() && words.chars().allMatch(Character::isUpperCase);
            if (heading || words.startsWith(CAUTION)) {
                StyleRange range = new StyleRange();
                range.start = text.getOffsetAtLine(line);
                range.length = words.length();
                range.fontStyle = heading ? SWT.BOLD : SWT.NORMAL;
                range.foreground = heading ? null : tones.warning();
                text.setStyleRange(range);
            }
        }
    }
}

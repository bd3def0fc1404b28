// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.eclipse.swt.graphics.Color;
import org.ohmstead.workbench.look.Tones;

/**
 * A paragraph on a page of the presenter.
 *
 * @param words what it says; not blank
 * @param weight how it is set
 */
record Block(String words, Weight weight) {
    /** How a paragraph is set: its size beside that of the page, and its tone. */
    enum Weight {
        /** The one thing of the page. */
        MAIN(1.25, true),
        /** Plain text. */
        PLAIN(1, false),
        /** A formula. */
        FORMULA(1, true),
        /** What stands beside. */
        SMALL(0.8, false),
        /** What to beware of. */
        CAUTION(0.8, false),
        /** A right prediction. */
        RIGHT(1.15, true),
        /** A wrong one. */
        WRONG(1.15, true);

        private final double size;
        private final boolean bold;

        Weight(double size, boolean bold) {
            this.size = size;
            this.bold = bold;
        }

        double size() {
            return size;
        }

        boolean bold() {
            return bold;
        }

        Color of(Tones tones) {
            return switch (this) {
                case MAIN, PLAIN, FORMULA -> tones.text();
                case SMALL -> tones.mutedText();
                case CAUTION, WRONG -> tones.warning();
                case RIGHT -> tones.ok();
            };
        }
    }
}

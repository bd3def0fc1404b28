// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.List;
import org.ohmstead.units.text.Messages;

/**
 * A line of the table in which two readings stand beside each other.
 *
 * @param label what it is about
 * @param left what the one says
 * @param right what the other says
 * @param difference in what way they differ; empty when they do not, or not in a way that can be told in a few words
 * @param marked whether the difference is one to look at
 * @param heading whether the line is the heading of those that follow
 * @param hover what more there is to say; empty for nothing
 */
record PairRow(
        String label, String left, String right, String difference, boolean marked, boolean heading, String hover) {
    private static final Messages TEXTS = Messages.of(PairRow.class);

    static PairRow heading(String label) {
        return new PairRow(label, "", "", "", false, true, "");
    }

    /** Returns a line of words, marked when they are not the same. */
    static PairRow words(String label, String left, String right) {
        boolean differ = !left.equals(right);
        return new PairRow(label, left, right, differ ? TEXTS.text("pair.row.differs") : "", differ, false, "");
    }

    /** Returns a line of figures whose difference is told but not judged. */
    static PairRow figures(String label, String left, String right, String difference) {
        return new PairRow(label, left, right, difference, false, false, "");
    }

    /** Returns this line with more to say of it. */
    PairRow withHover(String words) {
        return new PairRow(label, left, right, difference, marked, heading, words);
    }

    /** Returns the four cells as they are shown. */
    List<String> cells() {
        String told = marked ? "\u2260 " + difference : difference;
        return List.of(label, left, right, told);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import org.ohmstead.units.text.Messages;

/**
 * Something written down, a network, a stock or a resistor's marking, cannot be read. Says at which character, why, and what to write
 * instead.
 */
public final class NotationException extends Exception {
    private static final Messages TEXTS = Messages.of(NotationException.class);

    private static final long serialVersionUID = 1L;
    private static final int SHOWN_BEFORE = 50;
    private static final int SHOWN_AFTER = 25;

    private final String notation;
    private final int position;
    private final String problem;
    private final String remedy;

    /**
     * Says what is wrong.
     *
     * @param notation the whole text
     * @param position index of the character at fault, 0 to the text's length; the length means its end
     * @param problem what is wrong, a whole sentence
     * @param remedy what to write instead, a whole sentence
     */
    public NotationException(String notation, int position, String problem, String remedy) {
        super(TEXTS.text("fault.at", Integer.toString(number(notation, position)), problem, remedy));
        this.notation = notation;
        this.position = position;
        this.problem = Checks.named(problem, "problem");
        this.remedy = Checks.named(remedy, "remedy");
    }

    /** Returns the whole text. */
    public String notation() {
        return notation;
    }

    /** Returns the index in the text of the character at fault, from 0; the text's length when something is missing at its end. */
    public int position() {
        return position;
    }

    /** Returns what is wrong, without the place and the remedy. */
    public String problem() {
        return problem;
    }

    /** Returns what to write instead. */
    public String remedy() {
        return remedy;
    }

    /**
     * Returns the text, or of a long one the part around the fault, with a second line that has a caret below the character at fault; for
     * a fixed-width font.
     */
    public String pointer() {
        int from = Math.max(0, position - SHOWN_BEFORE);
        int to = Math.min(notation.length(), position + SHOWN_AFTER);
        String before = (from > 0 ? "..." : "") + notation.substring(from, position);
        String after = notation.substring(position, to) + (to < notation.length() ? "..." : "");
        return oneLine(before + after) + "\n" + " ".repeat(before.codePointCount(0, before.length())) + "^";
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\p{Cntrl}", " ");
    }

    private static int number(String notation, int position) {
        Checks.present(notation, "notation");
        Checks.within(position, 0, notation.length(), "position");
        return notation.codePointCount(0, position) + 1;
    }
}

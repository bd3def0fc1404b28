// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.util.OptionalInt;
import org.ohmstead.units.text.Messages;

/**
 * A project or recordings file could not be read or written. The message is a whole sentence for the person at the bench: the file,
 * the place in it, what is wrong and what would be right.
 */
public final class ProjectFileException extends Exception {
    private static final long serialVersionUID = 1L;
    private static final Messages TEXTS = Messages.of(ProjectFileException.class);

    private final String fileName;
    private final String jsonPath;
    private final int line;
    private final int column;

    /**
     * Makes a failure about a file as a whole.
     *
     * @param fileName the file it is about
     * @param sentence what happened, to what, and what to do
     * @param cause what the system reported; null when there is nothing
     */
    public ProjectFileException(String fileName, String sentence, Throwable cause) {
        super(sentence, cause);
        this.fileName = fileName;
        this.jsonPath = "";
        this.line = 0;
        this.column = 0;
    }

    /**
     * Makes a failure about a place in a file.
     *
     * @param fileName the file it is about
     * @param line line of the place, counted from 1
     * @param column column of the place in characters, counted from 1
     * @param jsonPath path of the value, such as {@code $.loads[0].branches[1].ohms}
     * @param sentence what is wrong and what would be right, beginning in lower case
     * @param cause what the parser reported; null when there is nothing
     */
    public ProjectFileException(
            String fileName, int line, int column, String jsonPath, String sentence, Throwable cause) {
        super(
                TEXTS.text("failure.place", fileName, String.valueOf(line), String.valueOf(column), jsonPath, sentence),
                cause);
        this.fileName = fileName;
        this.jsonPath = jsonPath;
        this.line = line;
        this.column = column;
    }

    /** Returns the name of the file that this is about. */
    public String fileName() {
        return fileName;
    }

    /** Returns the JSON path of the faulty value, or an empty text when the file as a whole is at fault. */
    public String jsonPath() {
        return jsonPath;
    }

    /** Returns the line of the faulty place, counted from 1, when there is one. */
    public OptionalInt line() {
        return line > 0 ? OptionalInt.of(line) : OptionalInt.empty();
    }

    /** Returns the column of the faulty place in characters, counted from 1, when there is one. */
    public OptionalInt column() {
        return column > 0 ? OptionalInt.of(column) : OptionalInt.empty();
    }
}

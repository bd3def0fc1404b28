// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What an entry of the log is. */
public enum EntryKind {
    /** A reading. */
    READING("reading", 'R'),
    /** Takes another entry back, with a reason. */
    VOID("void", 'V'),
    /** A remark. */
    NOTE("note", 'N'),
    /** What a run of a measurement found. */
    FIGURES("figures", 'F'),
    /** Says that another log's entries were joined to this one. */
    JOIN("join", 'J'),
    /** Says that the project was put away in an archive. */
    ARCHIVE("archive", 'A');

    private static final Map<String, EntryKind> BY_WORD =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(EntryKind::word, kind -> kind));

    private final String word;
    private final char idPrefix;

    EntryKind(String word, char idPrefix) {
        this.word = word;
        this.idPrefix = idPrefix;
    }

    /** Returns how the kind is spelled in the file. */
    public String word() {
        return word;
    }

    /** Returns the letter that the ids of this kind begin with. */
    public char idPrefix() {
        return idPrefix;
    }

    /** Returns the kind that a word of the file stands for, or empty when there is none. */
    public static Optional<EntryKind> ofWord(String word) {
        return Optional.ofNullable(BY_WORD.get(word));
    }
}

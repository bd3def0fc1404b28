// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.Arrays;
import java.util.Optional;

/** What a user of the shared log may do, as the database itself enforces it. */
public enum LabRole {
    /** Sees everything, changes nothing. */
    READER("reader"),
    /** Also hands over entries. */
    OPERATOR("operator"),
    /** Also closes chains and gives others the roles of reader and operator. */
    LEAD("lead");

    private static final String PREFIX = "ohmstead_";

    private final String word;

    LabRole(String word) {
        this.word = word;
    }

    /** Returns its word. */
    public String word() {
        return word;
    }

    /** Returns the name of the group in the database. */
    public String databaseRole() {
        return PREFIX + word;
    }

    /** Returns the role of a word, or empty when there is none. */
    public static Optional<LabRole> ofWord(String word) {
        return Arrays.stream(values()).filter(role -> role.word.equals(word)).findFirst();
    }
}

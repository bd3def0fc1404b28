// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * Something about the user's data that wants attention.
 *
 * @param severity how much it matters
 * @param where what it is about, as a JSON path into the project such as {@code $.plan[2].loadId}, or a file name
 * @param what what is wrong, a whole sentence
 * @param remedy what to do about it, a whole sentence
 */
public record Problem(Severity severity, String where, String what, String remedy) {
    public Problem {
        Checks.present(severity, "severity");
        Checks.named(where, "where");
        Checks.named(what, "what");
        Checks.named(remedy, "remedy");
    }
}

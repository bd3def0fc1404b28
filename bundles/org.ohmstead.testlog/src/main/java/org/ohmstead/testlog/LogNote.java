// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.Objects;

/**
 * A remark in the log.
 *
 * @param text what it says, not blank
 * @param who wrote it; may be empty
 */
public record LogNote(String text, String who) {
    public LogNote {
        if (text.isBlank()) {
            throw new IllegalArgumentException("text is blank; a note needs one");
        }
        Objects.requireNonNull(who, "who");
    }
}

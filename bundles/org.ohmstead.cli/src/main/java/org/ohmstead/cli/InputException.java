// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.jobs.JobException;

/** Input that a word cannot work with. The message says what is wrong, with what, and what to do. */
final class InputException extends JobException {
    private static final long serialVersionUID = 1L;

    InputException(String message) {
        super(message);
    }
}

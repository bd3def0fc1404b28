// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

/**
 * An entry of an instrument's error queue (SCPI 1999, SYSTem:ERRor).
 *
 * @param code negative for those of the standard, positive for the instrument's own; never 0, which stands for none
 * @param text what the instrument says about it
 */
public record ScpiError(int code, String text) {
    public ScpiError {
        if (code == 0) {
            throw new IllegalArgumentException("code is 0; that stands for no error");
        }
        Checks.present(text, "text");
    }

    @Override
    public String toString() {
        return code + " \"" + Answer.shown(text) + "\"";
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

/**
 * A stretch of text with one look.
 *
 * @param text the characters
 * @param look how it is set
 * @param href where it leads, resolved; empty when it is no link
 */
record HelpSpan(String text, Look look, String href) {
    /** How text is set. */
    enum Look {
        PLAIN,
        STRONG,
        EMPHASIS,
        CODE,
        KEY
    }

    static HelpSpan plain(String text) {
        return new HelpSpan(text, Look.PLAIN, "");
    }

    static HelpSpan link(String text, String href) {
        return new HelpSpan(text, Look.PLAIN, href);
    }
}

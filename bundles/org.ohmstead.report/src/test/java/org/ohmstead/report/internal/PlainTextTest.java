// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class PlainTextTest {
    @Test
    void keepsEverythingThatXmlAllows() {
        // XML 1.0 (fifth edition), production 2: #x9 | #xA | #xD | [#x20-#xD7FF] | [#xE000-#xFFFD] |
        // [#x10000-#x10FFFF].
        String allowed = "\t\n\r \ud7ff\ue000\ufffd\ud800\udc00\udbff\udfff";
        assertEquals(allowed, PlainText.clean(allowed));
    }

    @Test
    void replacesWhatXmlForbids() {
        assertEquals("\ufffd\ufffd\ufffd\ufffd", PlainText.clean("\u0000\u001f\ufffe\udc00"));
    }

    @Test
    void cutsBetweenCharactersOnly() {
        assertEquals("abc", PlainText.shortened("abc", 3));
        assertEquals("ab\u2026", PlainText.shortened("abcd", 3));
        assertEquals("\ud83d\ude00\u2026", PlainText.shortened("\ud83d\ude00\ud83d\ude00\ud83d\ude00", 2));
    }
}

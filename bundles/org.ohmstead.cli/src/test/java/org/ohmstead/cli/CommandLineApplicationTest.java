// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class CommandLineApplicationTest {
    @Test
    void takesTheMarkOffEachWord() {
        assertArrayEquals(
                new String[] {"log", "void", "--reason", "-debug", "", "=x"},
                CommandLineApplication.words(new String[] {"=log", "=void", "=--reason", "=-debug", "=", "==x"}, true));
    }

    @Test
    void leavesWordsWithoutMarksAsTheyAre() {
        assertArrayEquals(
                new String[] {"=log", "list"}, CommandLineApplication.words(new String[] {"=log", "list"}, false));
    }

    @Test
    void speaksEnglishUnlessAnotherLanguageIsAskedFor() {
        String[] words = {"lesson", "show", "four-wires"};
        assertEquals("en", CommandLineApplication.language(words, null));
        assertEquals("en", CommandLineApplication.language(words, " "));
        assertEquals("de-AT", CommandLineApplication.language(words, "de-AT"));
    }

    @Test
    void speaksEnglishToPrograms() {
        assertEquals("en", CommandLineApplication.language(new String[] {"lesson", "list", "--json"}, "de"));
        assertEquals("en", CommandLineApplication.language(new String[] {"lesson", "list", "--json=true"}, "de"));
    }
}

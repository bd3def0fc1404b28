// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class SaidTest {
    private static Said language() {
        return Said.of(() -> Language.current().getLanguage());
    }

    @Test
    void isKeptInEnglishWhateverIsSpoken() {
        assertEquals(new Said("en", "de"), Language.speaking(Locale.GERMAN, SaidTest::language));
        assertEquals(new Said("en", "en"), Language.speaking(Locale.UK, SaidTest::language));
    }

    @Test
    void isAPartOfWhatIsSaidInEitherLanguage() {
        Said whole = Language.speaking(Locale.GERMAN, () -> {
            Said part = language();
            return Said.of(() -> Language.current().getLanguage() + "<" + part.text());
        });
        assertEquals(new Said("en<en", "de<de"), whole);
    }

    @Test
    void hasTheDecimalMarkOfEitherLanguage() {
        assertEquals(new Said("14.40", "14,40"), Language.speaking(Locale.GERMAN, () -> Said.number("%.2f", 14.4)));
    }

    @Test
    void takesTheWordsOfAFailure() {
        assertEquals(Said.asIs("no disk"), Said.by(new IOException("no disk")));
        assertEquals(Said.asIs("null"), Said.by(new IOException()));
        assertEquals(new Said("a", "b"), Said.by(new Ours()));
        assertEquals(new Said("English", "localized"), Said.by(new Localized()));
    }

    private static final class Ours extends Exception implements Said.Failure {
        private static final long serialVersionUID = 1L;

        @Override
        public Said said() {
            return new Said("a", "b");
        }
    }

    private static final class Localized extends Exception {
        private static final long serialVersionUID = 1L;

        Localized() {
            super("English");
        }

        @Override
        public String getLocalizedMessage() {
            return "localized";
        }
    }
}

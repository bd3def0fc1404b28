// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.jobs.SharingState.Kind;
import org.ohmstead.units.text.Language;

class SharingTextTest {
    private static final Instant SINCE = Instant.parse("2026-03-02T14:32:05Z");
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    private static SharingState state(Kind kind, long waiting) {
        return new SharingState(
                kind,
                "lab.example.org:5432/tests",
                waiting,
                0,
                waiting > 0 ? Optional.of(SINCE) : Optional.empty(),
                kind == Kind.WAITING || kind == Kind.STOPPED ? "Nothing answers." : "",
                kind == Kind.WAITING ? Optional.of(SINCE.plusSeconds(480)) : Optional.empty());
    }

    @ParameterizedTest
    @CsvSource({
        "OFF, 0, ''",
        "IN_STEP, 0, Shared log in step",
        "HANDING_OVER, 0, Handing over",
        "HANDING_OVER, 3, Handing over 3",
        "WAITING, 0, Shared log waits",
        "WAITING, 1, 1 waits since 14:32",
        "WAITING, 12, 12 wait since 14:32",
        "STOPPED, 0, Shared log stopped",
        "STOPPED, 1, 'Stopped, 1 waits'",
        "STOPPED, 12, 'Stopped, 12 wait'"
    })
    void saysItInAFewWords(Kind kind, long waiting, String words) {
        assertEquals(words, SharingText.brief(state(kind, waiting), TODAY, ZoneOffset.UTC));
    }

    @Test
    void ofAnEarlierDayItNamesTheDay() {
        assertEquals(
                "12 wait since 2 Mar", SharingText.brief(state(Kind.WAITING, 12), TODAY.plusDays(1), ZoneOffset.UTC));
    }

    @Test
    void theHoverSaysWhySinceWhenAndWhatToDo() {
        assertEquals(
                "12 entries wait here for the shared log lab.example.org:5432/tests. Nothing answers.\nThe first"
                        + " of them was logged at 14:32.\nThe next try is at 14:40:05.\nClick to hand over now.",
                SharingText.whole(state(Kind.WAITING, 12), TODAY, ZoneOffset.UTC));
        assertEquals("", SharingText.whole(SharingState.OFF, TODAY, ZoneOffset.UTC));
        assertEquals(
                "The shared log lab.example.org:5432/tests has all entries of this log.",
                SharingText.whole(state(Kind.IN_STEP, 0), TODAY, ZoneOffset.UTC));
    }

    @Test
    void speaksGerman() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de-AT");
            SharingState waiting = state(Kind.WAITING, 3);
            String brief = SharingText.brief(waiting, TODAY, ZoneOffset.UTC);
            assertTrue(brief.startsWith("3 warten seit "), brief);
            String whole = SharingText.whole(waiting, TODAY.plusDays(40), ZoneOffset.UTC);
            assertTrue(whole.contains("Der erste davon wurde am "), whole);
            assertTrue(whole.endsWith("Anklicken, um jetzt zu übergeben."), whole);
            assertEquals("Angehalten, 1 wartet", SharingText.brief(state(Kind.STOPPED, 1), TODAY, ZoneOffset.UTC));
        } finally {
            restore(before);
        }
    }

    private static void restore(String language) {
        if (language == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, language);
        }
    }
}

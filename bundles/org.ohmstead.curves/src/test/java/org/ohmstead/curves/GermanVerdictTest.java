// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.curves.study.ModelKind;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.StudyOutcome;
import org.ohmstead.curves.study.StudyRequest;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.units.text.Language;

class GermanVerdictTest {
    private String before;

    @BeforeEach
    void speakGerman() {
        before = System.getProperty(Language.PROPERTY);
        System.setProperty(Language.PROPERTY, "de");
    }

    @AfterEach
    void speakAsBefore() {
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    @Test
    void verdictsAndStudiesSpeakGerman() {
        assertEquals(
                "abgesicherte Annahme, Risiko höchstens 5 %",
                VerdictWords.name(new VerdictRule(VerdictKind.GUARDED_ACCEPTANCE, 0.05)));
        assertEquals(
                "Konsumentenrisiko 2.3 %: So wahrscheinlich wird die Angabe trotzdem verfehlt.",
                VerdictWords.risk(Verdict.MEETS, 0.97725));
        assertEquals("ungeregelt", ModelKind.UNREGULATED.words());
        StudyOutcome nothing = PowerStudy.of(StudyRequest.of(List.of()));
        assertEquals(
                "Es gibt keine Ablesungen. Mindestens eine nehmen; für Verstärkung, Sättigungsspannung und"
                        + " Quellwiderstand sind drei nötig, an zwei Lasten und bei zwei Versorgungsspannungen.",
                ((StudyOutcome.Refused) nothing).reason());
    }
}

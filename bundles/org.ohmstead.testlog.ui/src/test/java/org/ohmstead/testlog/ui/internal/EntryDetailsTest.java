// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;

class EntryDetailsTest {
    private static Project project;

    @BeforeAll
    static void readProject() throws ProjectFileException {
        project = ProjectFile.read(Path.of("../../demo-data/larkspur.ohmstead")).project();
    }

    private static List<String> lines(Details details) {
        return details.plainText().lines().toList();
    }

    @Test
    void figuresOfBothChannelsStandSideBySide() {
        Details details =
                EntryDetails.of(Samples.entry(1, Samples.reading("s", Mode.STEREO, 4, 13.5, 97.26)), project, "");
        List<String> lines = lines(details);
        assertEquals("R0001  \u00b7  stereo, 4 \u03a9, 13.50 V", lines.get(0));
        assertTrue(
                lines.contains("Power (W), k = 2\t97.3\u00a0\u00b1\u00a01.0\t95.3\u00a0\u00b1\u00a01.0"),
                lines::toString);
        // V = sqrt(P R) (Joule's law): sqrt(97.26 * 4) = 19.7241, sqrt(95.26 * 4) = 19.5202.
        assertTrue(lines.contains("Output (V RMS)\t19.724\t19.520"), lines::toString);
        assertTrue(lines.contains("Air\t22.6 \u00b0C"), lines::toString);
        assertTrue(lines.contains("Case\tnot read"), lines::toString);
    }

    @Test
    void theBudgetAddsUpInSquares() {
        Details details = EntryDetails.of(Samples.entry(1, Samples.six().get(0)), project, "");
        List<String> lines = lines(details);
        // 0.4 W and 0.3 W in squares give 0.5 W.
        assertTrue(lines.contains("output volts (meter)\t0.400\t0.400"), lines::toString);
        assertTrue(lines.contains("Together\t0.500\t0.500"), lines::toString);
        assertTrue(lines.contains("Expanded, k = 2\t1.000\t1.000"), lines::toString);
        // 0.16 of 0.25: 64 % of the variance.
        assertTrue(hovers(details).stream().anyMatch(hover -> hover.startsWith("64 % of the variance. Shared")));
    }

    private static List<String> hovers(Details details) {
        return details.blocks().stream()
                .filter(Details.Grid.class::isInstance)
                .map(Details.Grid.class::cast)
                .flatMap(grid -> grid.rows().stream().flatMap(List::stream))
                .map(Details.Cell::hover)
                .toList();
    }

    @Test
    void hashesAreShortenedButWholeOnHoverAndWhenCopied() {
        Details details = EntryDetails.of(Samples.entry(1, Samples.six().get(0)), project, Samples.REVISION);
        Details.Cell capture = details.blocks().stream()
                .filter(Details.Grid.class::isInstance)
                .map(Details.Grid.class::cast)
                .flatMap(grid -> grid.rows().stream().flatMap(List::stream))
                .filter(cell -> cell.copy().equals(Samples.CAPTURE))
                .findFirst()
                .orElseThrow();
        assertEquals("ab12ab12ab\u2026", capture.text());
        assertEquals(Samples.CAPTURE, capture.hover());
        assertTrue(details.plainText().contains(Samples.CAPTURE + "\ta.wav\t50 / 50 V"));
        assertTrue(
                hovers(details).stream().anyMatch(hover -> hover.startsWith("The project is still as it was then.")));
    }

    @Test
    void theInstrumentsCalibrationDueComesFromTheBench() {
        String text = EntryDetails.of(Samples.entry(1, Samples.six().get(0)), project, "")
                .plainText();
        assertTrue(text.contains("Output volts\tRecorder, calibrated 2026-01-20, due 2028-01-20"), text);
    }

    @Test
    void otherEntriesSayWhatTheyAre() {
        assertTrue(EntryDetails.of(Samples.note(3, "Fan on"), project, "")
                .plainText()
                .contains("Fan on\n"));
        assertTrue(EntryDetails.of(Samples.voiding(4, "R0001"), project, "")
                .plainText()
                .contains("Takes back\tR0001"));
        assertTrue(
                EntryDetails.of(Samples.unreadable(5), project, "").plainText().contains("cannot be understood"));
        Details voided = EntryDetails.of(Samples.voidedEntry(1, Samples.six().get(0)), project, "");
        assertTrue(voided.plainText().contains("Voided by V0099"));
        assertFalse(EntryDetails.of(Samples.entry(1, Samples.six().get(0)), project, "")
                .plainText()
                .contains("Voided"));
    }
}

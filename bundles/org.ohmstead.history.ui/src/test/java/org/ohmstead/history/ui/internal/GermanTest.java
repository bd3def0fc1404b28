// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;

/** The quality of the bench and comparisons in German. */
class GermanTest {
    @TempDir
    Path folder;

    private final Clock clock = Clock.fixed(Standards.FIRST.plus(Duration.ofDays(25)), ZoneOffset.UTC);
    private Stage stage;

    @BeforeEach
    void speakGerman() throws Exception {
        System.setProperty(Language.PROPERTY, "de");
        stage = new Stage(folder);
    }

    @AfterEach
    void speakAsBefore() {
        try {
            stage.close();
        } finally {
            System.clearProperty(Language.PROPERTY);
        }
    }

    @Test
    void theQualityOfTheBenchSpeaksGerman() throws Exception {
        stage.open();
        stage.desk
                .session()
                .orElseThrow()
                .edit("Test", project -> project.withCheckStandards(List.of(Standards.TYPED)));
        Standards.write(
                stage, stage.desk.session().orElseThrow().project(), Standards.TYPED, Standards.inTurn(20, 50.5));
        stage.desk.refreshLog();
        new QualityComposite(
                stage.shell, stage.desk, clock, new LoggedQuality(clock, "1"), ViewMemory.passing(), () -> {});
        stage.shell.open();
        stage.until(
                "the values are shown",
                () -> Ids.exists(stage.shell, "quality.values")
                        && stage.find("quality.values", Table.class).getItemCount() == 21);
        assertEquals(
                "Pr\u00fcfnormal",
                stage.find("quality.checks", Table.class).getColumn(0).getText());
        String sentence = stage.find("quality.sentence", Label.class).getText();
        assertTrue(
                sentence.startsWith("Halt: Ablesung 21: ein Punkt liegt au\u00dferhalb der Eingriffsgrenzen; "),
                sentence);
        String findings = stage.find("quality.findings", StyledText.class).getText();
        assertTrue(findings.contains("Abhilfe: Anschl\u00fcsse und Einstellungen pr\u00fcfen"), findings);
        assertTrue(findings.contains("Zu erwarten sind Werte zwischen"), findings);
    }

    @Test
    void theComparisonSpeaksGerman() {
        new CompareComposite(
                stage.shell,
                stage.desk,
                ViewMemory.passing(),
                new CompareComposite.Questions(start -> Optional.empty(), start -> Optional.empty()));
        stage.shell.open();
        stage.until("the parts are there", () -> Ids.exists(stage.shell, "compare.trend.chart"));
        assertEquals(
                "Verst\u00e4rker",
                stage.find("compare.powers", Table.class).getColumn(1).getText());
        assertEquals("Inde&x \u2026", stage.find("compare.index", Button.class).getText());
        assertEquals("gebr\u00fcckt", stage.find("compare.mode", Combo.class).getItem(1));
    }
}

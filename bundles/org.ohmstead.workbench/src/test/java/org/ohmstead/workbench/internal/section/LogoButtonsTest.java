// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.workbench.form.FormSection;

class LogoButtonsTest {
    @TempDir
    Path temp;

    private LogoButtons buttons(SectionStage stage) {
        FormPage page = new FormPage(stage.shell, stage.desk, "sheet");
        FormSection form = new FormSection(page.body(), "sheet.look", "Look");
        LogoButtons buttons = new LogoButtons(page, form, stage.desk, new LayoutFields(page));
        buttons.add();
        page.start();
        stage.shell.open();
        stage.pump();
        return buttons;
    }

    private static String logo(SectionStage stage) {
        return stage.project().sheet().layout().logoFile();
    }

    @Test
    void takesAFileOfTheProjectWhereItLies() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            Path file =
                    Files.createDirectories(stage.folder.resolve("pictures")).resolve("ours.png");
            Files.writeString(file, "picture");
            LogoButtons buttons = buttons(stage);
            assertFalse(stage.find("sheet.look.logo.clear", Button.class).isEnabled());
            buttons.use(file);
            assertEquals("pictures/ours.png", logo(stage));
            assertEquals(Optional.of("Set sheet logo"), stage.undoName());
            assertTrue(stage.find("sheet.look.logo.clear", Button.class).isEnabled());
        }
    }

    @Test
    void copiesAFileFromOutsideAndReplacesNoOther() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            Path outside = Files.writeString(temp.resolve("logo.svg"), "<svg/>");
            Path sheets = Files.createDirectories(stage.folder.resolve("sheets"));
            Files.writeString(sheets.resolve("logo.svg"), "another");
            LogoButtons buttons = buttons(stage);
            buttons.use(outside);
            assertEquals("sheets/logo-2.svg", logo(stage));
            assertEquals("<svg/>", Files.readString(sheets.resolve("logo-2.svg")));
            assertEquals("another", Files.readString(sheets.resolve("logo.svg")));
            assertTrue(stage.find("sheet.logo.note", Label.class).getText().contains("logo-2.svg was copied"));
            buttons.use(outside);
            assertEquals("sheets/logo-2.svg", logo(stage), "what lies there already is not copied again");
        }
    }

    @Test
    void refusesALargeFileAndKeepsTheProjectAsItIs() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            Path large = Files.write(temp.resolve("large.png"), new byte[600 * 1024]);
            buttons(stage).use(large);
            assertEquals("", logo(stage));
            String note = stage.find("sheet.logo.note", Label.class).getText();
            assertTrue(note.contains("large.png has 600 KB"), note);
        }
    }

    @Test
    void clearsTheLogo() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            LogoButtons buttons = buttons(stage);
            buttons.use(Files.writeString(stage.folder.resolve("logo.svg"), "<svg/>"));
            assertEquals("logo.svg", logo(stage));
            stage.press("sheet.look.logo.clear");
            assertEquals("", logo(stage));
        }
    }
}

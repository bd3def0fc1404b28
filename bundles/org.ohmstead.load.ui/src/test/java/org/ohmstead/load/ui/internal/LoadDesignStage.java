// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.nio.file.Path;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.workbench.session.DisplaySettings;

/** Opens the view in a bare shell and drives it as a user does. */
abstract class LoadDesignStage {
    static final double SAME_RATIO = 1e-12;
    static final int FOUR_OHM = 1;

    @TempDir
    Path folder;

    Bench bench;

    @BeforeEach
    void setUp() {
        bench = new Bench(folder);
    }

    @AfterEach
    void tearDown() {
        bench.desk.setDisplay(DisplaySettings.USUAL);
        bench.close();
    }

    void open() throws Exception {
        bench.withProject().open().showDesign();
    }

    Table candidates() {
        return bench.find("design.candidates.table", Table.class);
    }

    String summary() {
        return bench.find("design.summary", Label.class).getText();
    }

    StyledText network() {
        return bench.find("design.network", StyledText.class);
    }

    void find() {
        bench.press("design.find");
        Button find = bench.find("design.find", Button.class);
        bench.until("the search has ended", find::isEnabled);
    }

    void found() throws Exception {
        open();
        bench.choose("design.loads.table", FOUR_OHM);
        find();
    }

    String wiring() {
        CTabFolder tabs = bench.find("design.tabs", CTabFolder.class);
        tabs.setSelection(2);
        tabs.notifyListeners(SWT.Selection, new Event());
        return bench.find("design.wiring", StyledText.class).getText();
    }
}

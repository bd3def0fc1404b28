// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.ui.IPageLayout;
import org.ohmstead.app.internal.help.StepsView;

/** The ids of the perspectives and of the parts that they lay out. */
final class Perspectives {
    static final String DESIGN = "org.ohmstead.app.design";
    static final String BENCH = "org.ohmstead.app.bench";
    static final String RESULTS = "org.ohmstead.app.results";
    static final String LESSONS = "org.ohmstead.app.lessons";

    static final String NAVIGATOR = "org.ohmstead.workbench.navigator";
    static final String PROBLEMS = "org.ohmstead.workbench.problems";
    static final String PROGRESS = IPageLayout.ID_PROGRESS_VIEW;
    static final String ERROR_LOG = "org.eclipse.pde.runtime.LogView";
    static final String LOAD_DESIGN = "org.ohmstead.load.ui.design";
    static final String LOAD_BANK = "org.ohmstead.load.ui.bank";
    static final String FORECAST = "org.ohmstead.thermal.ui.forecast";
    static final String STEP_HEAT = "org.ohmstead.thermal.ui.calculator";
    static final String IDENTIFY = "org.ohmstead.thermal.ui.identify";
    static final String CONSOLE = "org.ohmstead.measure.ui.console";
    static final String LOG = "org.ohmstead.testlog.ui.log";
    static final String PAIR = "org.ohmstead.testlog.ui.pair";
    static final String AUDIT = "org.ohmstead.testlog.ui.audit";
    static final String POWER = "org.ohmstead.curves.ui.power";
    static final String CAPTURE = "org.ohmstead.signal.ui.capture";
    static final String GAIN = "org.ohmstead.signal.ui.gain";
    static final String STIMULUS = "org.ohmstead.signal.ui.stimulus";
    static final String SOUND = "org.ohmstead.sound.ui.vehicle";
    static final String QUALITY = "org.ohmstead.history.ui.quality";
    static final String COMPARE = "org.ohmstead.history.ui.compare";
    static final String SHEET = "org.ohmstead.report.ui.sheet";
    static final String LESSONS_VIEW = "org.ohmstead.lessons.ui.lessons";
    static final String FIRST_TEST = StepsView.ID;
    static final String HELP = "org.ohmstead.app.help";

    private Perspectives() {}

    /** Adds what every perspective offers in its menus. */
    static void offer(IPageLayout layout) {
        for (String perspective : new String[] {DESIGN, BENCH, RESULTS, LESSONS}) {
            layout.addPerspectiveShortcut(perspective);
        }
        for (String view : new String[] {
            NAVIGATOR,
            PROBLEMS,
            LOAD_DESIGN,
            LOAD_BANK,
            FORECAST,
            STEP_HEAT,
            IDENTIFY,
            CONSOLE,
            LOG,
            PAIR,
            AUDIT,
            POWER,
            CAPTURE,
            GAIN,
            STIMULUS,
            SOUND,
            QUALITY,
            COMPARE,
            SHEET,
            LESSONS_VIEW,
            PROGRESS,
            HELP
        }) {
            layout.addShowViewShortcut(view);
        }
    }
}

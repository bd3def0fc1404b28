// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.eclipse.jface.preference.PreferenceDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IViewReference;
import org.eclipse.ui.dialogs.PreferencesUtil;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Reading;
import org.ohmstead.workbench.look.Ids;

/**
 * Hours of work at the workbench in little time: a project is opened, steps of its plan are measured on the simulated bench with the views
 * open, every view and page is gone through in the light and in the dark theme, and the project is closed; then again. Of nothing may there
 * be more and more. Some rounds here; {@code -Dohmstead.soak.hours=8} makes it a working day by the bench's clock.
 */
class WorkbenchSoakTest {
    private static final System.Logger LOGGER = System.getLogger(WorkbenchSoakTest.class.getName());
    private static final double HOURS = Double.parseDouble(System.getProperty("ohmstead.soak.hours", "0"));
    private static final boolean LONG = HOURS > 0;
    private static final int STEPS = LONG ? 16 : 1;
    private static final String[] SOME_VIEWS = {
        "org.ohmstead.signal.ui.capture", "org.ohmstead.report.ui.sheet", "org.ohmstead.thermal.ui.forecast"
    };
    private static final String[] SOME_PAGES = {"$.plan"};

    /** After the first round, which loads classes. Of five, a third lies two rounds after the one before. */
    private static final int LEAST_LOOKS = LONG ? 5 : 3;

    /** What a person takes between two steps, and the amplifier rests; as for the soak without a workbench. */
    private static final Duration CHANGE_OVER = Duration.ofSeconds(50);

    private final Bench bench = Bench.running();
    private final Looks looks = new Looks();
    private Duration benchTime = Duration.ZERO;
    private int results;

    @TempDir
    Path folder;

    @AfterEach
    void leaveAllAsItWas() throws Exception {
        bench.close();
        bench.perspective("org.ohmstead.app.bench");
        bench.page().resetPerspective();
        bench.pump().settle();
    }

    @Test
    void nothingGrows() throws Exception {
        long started = System.nanoTime();
        int rounds = 0;
        try (SwtLeaks toolkit = new SwtLeaks(bench.display())) {
            while (rounds <= LEAST_LOOKS || benchTime.toMillis() < HOURS * 3.6e6) {
                round(rounds);
                if (rounds > 0) {
                    looks.look(toolkit);
                }
                rounds++;
            }
            String figures = String.format(
                    Locale.ROOT,
                    "workbench soak: %.2f simulated hours in %.0f s, %d rounds, %d results; %s",
                    benchTime.toMillis() / 3.6e6,
                    (System.nanoTime() - started) / 1e9,
                    rounds,
                    results,
                    looks.summary());
            LOGGER.log(System.Logger.Level.INFO, figures);
            assertEquals(List.of(), looks.growth(), () -> looks.summary() + "\n" + toolkit.places());
            assertEquals(List.of(), toolkit.lost(), "nobody disposed of what was made here");
            assertTrue(toolkit.alive().containsKey("Image"), "the toolkit's resources were not counted");
        }
    }

    private void round(int number) throws Exception {
        bench.perspective("org.ohmstead.app.bench");
        Path project = bench.openCopy(folder.resolve("day-" + number));
        bench.view("org.ohmstead.measure.ui.console");
        chooseTheSimulatedBench();
        bench.view("org.ohmstead.curves.ui.power");
        bench.view("org.ohmstead.testlog.ui.log");
        measure();
        bench.desk().choose(bench.desk().log().entries().stream().findFirst());
        goThrough(LONG ? ResponseTest.VIEWS : SOME_VIEWS, LONG ? ResponseTest.PAGES : SOME_PAGES);
        bench.command("org.ohmstead.app.theme");
        preferences();
        bench.close();
        for (IViewReference view : bench.page().getViewReferences()) {
            bench.page().hideView(view);
        }
        bench.command("org.ohmstead.app.theme");
        bench.pump().until(() -> !running("ohmstead run"), "The bench was not let go.");
        bench.pump().settle();
        bench.pump().stalls().clear();
        delete(project);
    }

    private static boolean running(String names) {
        return Thread.getAllStackTraces().keySet().stream()
                .anyMatch(thread -> thread.getName().startsWith(names));
    }

    private void goThrough(String[] views, String[] pages) throws Exception {
        for (String view : views) {
            bench.view(view);
        }
        for (String page : pages) {
            bench.go(page);
        }
    }

    private void preferences() {
        PreferenceDialog dialog =
                PreferencesUtil.createPreferenceDialogOn(bench.shell(), "org.ohmstead.app.appearance", null, null);
        dialog.setBlockOnOpen(false);
        dialog.open();
        bench.pump().settle();
        dialog.close();
    }

    private String state() {
        return bench.find("console.state", Label.class).getText();
    }

    private void ready() {
        bench.pump()
                .until(
                        () -> state().equals("Ready"),
                        () -> "The console says \"" + state() + "\" and \""
                                + bench.find("console.message", Label.class).getText() + "\".");
        bench.pump().settle();
    }

    private void chooseTheSimulatedBench() {
        bench.pump()
                .until(() -> bench.find("console.first", Button.class).getVisible(), "Nothing says what to do first.");
        bench.press(bench.find("console.first", Button.class));
        Combo driver = bench.find("console.bench.driver", Combo.class);
        bench.pump().until(() -> driver.indexOf("Simulated bench") >= 0, "The simulated bench is not offered.");
        driver.select(driver.indexOf("Simulated bench"));
        bench.press(driver);
        Text operator = bench.find("console.bench.operator", Text.class);
        operator.setText("Test");
        bench.send(operator, SWT.DefaultSelection);
        ready();
    }

    /** Says yes to whatever the precautions warn of before the step at hand. */
    private void sayYes() {
        for (int most = 0; most < 10 && Ids.exists(bench.shell(), "console.confirm.0"); most++) {
            bench.press(bench.find("console.confirm.0", Button.class));
            bench.find("console.reason.why", Text.class).setText("The load bank is watched.");
            bench.find("console.reason.who", Text.class).setText("Test");
            bench.press(bench.find("console.reason.commit", Button.class));
        }
    }

    /** Measures the next steps of the plan, with the views open. The bench's clock begins with the computer's, and runs ahead. */
    private void measure() {
        Instant begun = Instant.now();
        for (int step = 1; step <= STEPS; step++) {
            sayYes();
            int wanted = step;
            Button next = bench.find("console.run.next", Button.class);
            bench.display().asyncExec(() -> next.notifyListeners(SWT.Selection, new Event()));
            bench.pump()
                    .until(
                            () -> readings().size() == wanted,
                            () -> "No reading came: "
                                    + bench.find("console.message", Label.class).getText());
            ready();
            results++;
        }
        Instant ended = readings().stream()
                .map(Reading::takenAt)
                .max(Instant::compareTo)
                .orElseThrow();
        benchTime = benchTime.plus(Duration.between(begun, ended)).plus(CHANGE_OVER.multipliedBy(STEPS));
    }

    private List<Reading> readings() {
        return bench.desk().log().validReadings();
    }

    private static void delete(Path all) throws IOException {
        try (Stream<Path> files = Files.walk(all)) {
            for (Path file : files.sorted((one, other) -> other.compareTo(one)).toList()) {
                Files.delete(file);
            }
        }
    }
}

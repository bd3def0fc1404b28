// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of every perspective, light and dark, on a screen of 1280 by 800, to be looked at. */
class ScreensTest {
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 800;
    private static final String[] PERSPECTIVES = {"design", "bench", "results", "lessons"};

    private final Bench bench = Bench.running();

    @TempDir
    Path folder;

    @Test
    void everyPerspectiveInBothThemes() throws Exception {
        Path project = DemoLog.copyInto(folder);
        Rectangle before = bench.shell().getBounds();
        bench.shell().setBounds(0, 0, WIDTH, HEIGHT);
        bench.open(project);
        bench.awaitEntries(Bench.DEMO_READINGS);
        bench.desk().choose(bench.desk().log().entries().stream().findFirst());
        String scale = bench.display().getPrimaryMonitor().getZoom() == 200 ? "-200" : "";
        try {
            for (boolean dark : new boolean[] {false, true}) {
                dark(dark);
                for (String perspective : PERSPECTIVES) {
                    bench.perspective("org.ohmstead.app." + perspective);
                    bench.go(perspective.equals("bench") ? "$.plan" : "$.amplifier");
                    if (!perspective.equals("design")) {
                        bench.page().setEditorAreaVisible(false);
                    }
                    bench.pump().settle();
                    // The first window comes to its own size only after it was asked for this one.
                    bench.shell().setSize(WIDTH, HEIGHT);
                    bench.pump()
                            .until(
                                    () -> bench.shell().getSize().equals(new Point(WIDTH, HEIGHT)),
                                    "The window does not take the size of a small screen.");
                    bench.pump().settle();
                    Path picture = bench.picture(perspective + (dark ? "-dark" : "-light") + scale);
                    assertTrue(Files.size(picture) > 20_000, picture + " shows next to nothing");
                    assertEquals(dark, isDark(bench.shell()), picture.toString());
                }
            }
        } finally {
            dark(false);
            bench.shell().setBounds(before);
            bench.close();
        }
    }

    private void dark(boolean wanted) throws CommandException {
        if (isDark(bench.shell()) != wanted) {
            bench.command("org.ohmstead.app.theme");
            bench.pump().until(() -> isDark(bench.shell()) == wanted, "The theme did not change.");
        }
    }

    private static boolean isDark(Control control) {
        return control.getBackground().getRGB().getHSB()[2] < 0.5;
    }
}

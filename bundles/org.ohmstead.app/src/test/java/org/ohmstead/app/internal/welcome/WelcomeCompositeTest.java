// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.units.text.Language;
import org.ohmstead.workbench.look.Ids;

class WelcomeCompositeTest {
    private static final int PATIENCE_SECONDS = 10;
    /** What a window manager may take for the frame, in points. */
    private static final int WINDOW_FRAME = 40;

    private static final int TICK_MILLISECONDS = 10;

    private final Display display = Display.getDefault();
    private final List<String> called = new ArrayList<>();
    private final List<Path> recent = new ArrayList<>();
    private Shell shell;

    @TempDir
    private Path folder;

    @BeforeEach
    void makeShell() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
    }

    @AfterEach
    void close() {
        shell.dispose();
    }

    @Test
    void opensTheDemoWithOneClick() {
        Control demo = Ids.find(open(1280), "welcome.demo", Control.class);
        Event click = new Event();
        click.button = 1;
        click.x = 10;
        click.y = 10;
        demo.notifyListeners(SWT.MouseUp, click);

        assertEquals(List.of("demo"), called);
    }

    @Test
    void opensByEnterAndBySpace() {
        WelcomeComposite welcome = open(1280);
        Ids.find(welcome, "welcome.open", Control.class).notifyListeners(SWT.KeyDown, key(SWT.CR));
        Ids.find(welcome, "welcome.new", Control.class).notifyListeners(SWT.KeyDown, key(SWT.SPACE));
        Ids.find(welcome, "welcome.new", Control.class).notifyListeners(SWT.KeyDown, key('x'));

        assertEquals(List.of("open", "new"), called);
    }

    @Test
    void forgetsAClickThatEndsElsewhere() {
        Control demo = Ids.find(open(1280), "welcome.demo", Control.class);
        Event click = new Event();
        click.button = 1;
        click.x = -5;
        demo.notifyListeners(SWT.MouseUp, click);

        assertEquals(List.of(), called);
    }

    @Test
    void showsTheHelp() {
        Ids.find(open(1280), "welcome.help", Link.class).notifyListeners(SWT.Selection, new Event());

        assertEquals(List.of("help"), called);
    }

    @Test
    void opensARecentProjectAndGreysOneThatIsGone() throws IOException {
        Path there = Files.createDirectory(folder.resolve("heron & co.ohmstead"));
        Path gone = folder.resolve("old.ohmstead");
        recent.addAll(List.of(there, gone));
        WelcomeComposite welcome = open(1280);
        Link second = Ids.find(welcome, "welcome.recent.1", Link.class);
        waitUntil(() -> !second.isEnabled());

        Link first = Ids.find(welcome, "welcome.recent.0", Link.class);
        assertTrue(first.isEnabled());
        assertEquals("<a>heron && co</a>", first.getText());
        first.notifyListeners(SWT.Selection, new Event());
        assertEquals(List.of("recent " + there), called);
        Label where = Ids.find(welcome, "welcome.recent.1.folder", Label.class);
        assertTrue(where.getText().endsWith("(not found)"), where.getText());
        assertEquals(gone.toString(), where.getToolTipText());
    }

    @Test
    void saysSoWhileThereIsNoRecentProjectAndListsItLater() {
        WelcomeComposite welcome = open(1280);
        assertTrue(
                Ids.find(welcome, "welcome.recent.none", Label.class).getText().startsWith("None yet."));

        recent.add(folder);
        welcome.refresh();

        assertTrue(Ids.find(welcome, "welcome.recent.0", Link.class).isEnabled());
    }

    @ParameterizedTest
    @ValueSource(ints = {700, 1280, 1800})
    void keepsAllWithinItsWidth(int width) {
        recent.add(folder.resolve("a".repeat(60))
                .resolve("b".repeat(60))
                .resolve("c".repeat(60))
                .resolve("long.ohmstead"));
        WelcomeComposite welcome = open(width);
        for (String id :
                List.of("welcome.demo", "welcome.open", "welcome.new", "welcome.caution", "welcome.recent.0.folder")) {
            Control control = Ids.find(welcome, id, Control.class);
            Rectangle place = display.map(control.getParent(), welcome, control.getBounds());
            assertTrue(place.x >= 0 && place.x + place.width <= welcome.getSize().x, id + " at " + place);
            assertTrue(place.width > 200 && place.height > 0, id + " at " + place);
        }
    }

    @Test
    void putsTheActionsBesideEachOtherWhenThereIsRoom() {
        WelcomeComposite wide = open(1280);
        assertEquals(top(wide, "welcome.demo"), top(wide, "welcome.new"));

        shell.setSize(700, 600);
        waitUntil(() -> top(wide, "welcome.demo") < top(wide, "welcome.new"));
    }

    @Test
    void scrollsWhenLow() {
        WelcomeComposite welcome = open(900);
        ScrolledComposite scroll = Ids.find(welcome, "welcome.scroll", ScrolledComposite.class);
        shell.setSize(900, 300);
        waitUntil(() ->
                scroll.getClientArea().height < 300 && scroll.getVerticalBar().isVisible());
        assertTrue(scroll.getMinHeight() > scroll.getClientArea().height);

        shell.setSize(900, 1100);
        waitUntil(() -> scroll.getMinHeight() <= scroll.getClientArea().height);
        assertFalse(scroll.getVerticalBar().isVisible());
    }

    private int top(WelcomeComposite welcome, String id) {
        return Ids.find(welcome, id, Control.class).toDisplay(0, 0).y;
    }

    private WelcomeComposite open(int width) {
        WelcomeComposite welcome = new WelcomeComposite(shell, new Recorded());
        shell.setSize(width, 760);
        shell.open();
        waitUntil(() -> shell.isVisible() && Math.abs(welcome.getSize().x - width) < WINDOW_FRAME);
        pump();
        return welcome;
    }

    private static Event key(int code) {
        Event event = new Event();
        event.keyCode = code;
        event.character = (char) code;
        return event;
    }

    private void pump() {
        int most = 10_000;
        while (display.readAndDispatch() && most > 0) {
            most--;
        }
    }

    private void waitUntil(BooleanSupplier condition) {
        long deadline = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < deadline, "it took too long");
            if (!display.readAndDispatch()) {
                display.timerExec(TICK_MILLISECONDS, () -> {});
                display.sleep();
            }
        }
    }

    private final class Recorded implements WelcomeActions {
        @Override
        public void openDemo() {
            called.add("demo");
        }

        @Override
        public void openProject() {
            called.add("open");
        }

        @Override
        public void newProject() {
            called.add("new");
        }

        @Override
        public void openRecent(Path project) {
            called.add("recent " + project);
        }

        @Override
        public void showHelp() {
            called.add("help");
        }

        @Override
        public List<Path> recent() {
            return List.copyOf(recent);
        }
    }

    @Test
    void speaksGerman() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            WelcomeComposite welcome = open(1280);
            assertEquals(
                    "<a>Erste Schritte im Handbuch</a>",
                    Ids.find(welcome, "welcome.help", Link.class).getText());
            assertTrue(Ids.find(welcome, "welcome.caution", Label.class)
                    .getText()
                    .startsWith("Vor dem Anschließen: Lasten werden heiß genug für Verbrennungen"));
            assertEquals(
                    "Noch keine. Geöffnete Projekte werden hier aufgeführt.",
                    Ids.find(welcome, "welcome.recent.none", Label.class).getText());
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

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageLoader;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Widget;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.WorkbenchException;
import org.eclipse.ui.handlers.IHandlerService;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.workbench.Sections;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.UnsavedEdits;

/** The running workbench as a test drives it: by commands, keys and named widgets. */
final class Bench {
    /** Steps of the demo's plan that have recordings. */
    static final int DEMO_READINGS = 32;

    private static final int PICTURE_ROUNDS = 6;

    private static final Bench RUNNING = new Bench();

    private final IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
    private final Display display = window.getShell().getDisplay();
    private final Pump pump = new Pump(display);

    /** Returns the bench of this workbench. */
    static Bench running() {
        return RUNNING;
    }

    Pump pump() {
        return pump;
    }

    Display display() {
        return display;
    }

    Shell shell() {
        return window.getShell();
    }

    IWorkbenchPage page() {
        return window.getActivePage();
    }

    ProjectDesk desk() {
        return window.getService(ProjectDesk.class);
    }

    ProjectSession session() {
        return desk().session().orElseThrow(() -> new AssertionError("No project is open."));
    }

    static Path root() {
        return Path.of(System.getProperty("ohmstead.root"));
    }

    /** Copies the demo's project into a folder, without readings, opens it and waits until it is there. */
    Path openCopy(Path folder) throws IOException {
        Path project = Files.createDirectories(folder.resolve("larkspur" + ProjectFile.FOLDER_SUFFIX));
        Files.copy(
                root().resolve("demo-data").resolve("larkspur.ohmstead").resolve(ProjectFile.FILE_NAME),
                project.resolve(ProjectFile.FILE_NAME));
        open(project);
        return project;
    }

    void open(Path project) {
        close();
        desk().open(project, Unsaved.DISCARD, opened -> {}, failure -> {
            throw new AssertionError(failure);
        });
        pump.until(() -> desk().session().isPresent(), "The project was not opened.");
        pump.settle();
    }

    void close() {
        try {
            desk().close(Unsaved.DISCARD);
        } catch (UnsavedEdits e) {
            throw new AssertionError(e);
        }
        page().closeAllEditors(false);
        pump.settle();
    }

    /** Waits until the log holds so many entries and its chain was checked. */
    void awaitEntries(int count) {
        pump.until(
                () -> desk().log().entries().size() >= count && desk().log().state() == LogSnapshot.LogState.WHOLE,
                () -> "The log has " + desk().log().entries().size() + " entries, "
                        + desk().log().state());
        pump.settle();
    }

    void perspective(String id) throws WorkbenchException {
        PlatformUI.getWorkbench().showPerspective(id, window);
        pump.settle();
    }

    /** Shows a view and returns the control with all it holds. */
    Control view(String id) throws PartInitException {
        page().showView(id);
        pump.settle();
        return shell();
    }

    void go(String where) {
        Sections.open(page(), where);
        pump.settle();
    }

    void command(String id) throws CommandException {
        window.getService(IHandlerService.class).executeCommand(id, null);
        pump.settle();
    }

    /** Returns a named widget anywhere in the window; of several the first that is visible. */
    <W extends Widget> W find(String id, Class<W> type) {
        return Ids.find(shell(), id, type);
    }

    Optional<String> focusName() {
        Control focus = display.getFocusControl();
        return focus == null ? Optional.empty() : Ids.of(focus);
    }

    /** Sends an event of a kind to a widget, as the toolkit does when a user acts. */
    void send(Widget widget, int kind) {
        Event event = new Event();
        event.widget = widget;
        event.display = display;
        widget.notifyListeners(kind, event);
        pump.settle();
    }

    /** Presses a button or tool item. */
    void press(Widget button) {
        send(button, SWT.Selection);
    }

    /** Types a key with modifiers into a widget. */
    void key(Widget widget, int modifiers, int keyCode, char character) {
        Event event = new Event();
        event.widget = widget;
        event.display = display;
        event.stateMask = modifiers;
        event.keyCode = keyCode;
        event.character = character;
        event.doit = true;
        widget.notifyListeners(SWT.KeyDown, event);
        pump.settle();
    }

    /** Writes what the window shows into a file below the bundle's target folder. */
    Path picture(String name) throws IOException {
        for (int round = 0; round < PICTURE_ROUNDS; round++) { // charts are drawn by threads of their own
            pump.settle();
        }
        Path folder = Files.createDirectories(root().resolve("bundles")
                .resolve("org.ohmstead.ui.tests")
                .resolve("target")
                .resolve("screens"));
        Path file = folder.resolve(name + ".png");
        Rectangle bounds = shell().getBounds();
        Image image = new Image(display, bounds.width, bounds.height);
        GC gc = new GC(display);
        try {
            gc.copyArea(image, bounds.x, bounds.y);
            ImageLoader loader = new ImageLoader();
            loader.data = new ImageData[] {
                image.getImageData(display.getPrimaryMonitor().getZoom())
            };
            loader.save(file.toString(), SWT.IMAGE_PNG);
        } finally {
            gc.dispose();
            image.dispose();
        }
        return file;
    }

    /** Writes what kept the user interface's thread for too long since the last report, beside the pictures. */
    void reportStalls(String name) throws IOException {
        Path folder = Files.createDirectories(root().resolve("bundles")
                .resolve("org.ohmstead.ui.tests")
                .resolve("target")
                .resolve("stalls"));
        Files.writeString(folder.resolve(name + ".txt"), pump.stalls().report());
        pump.stalls().clear();
    }
}

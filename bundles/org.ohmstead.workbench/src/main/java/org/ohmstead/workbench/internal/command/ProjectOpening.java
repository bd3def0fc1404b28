// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchWindow;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.Sections;
import org.ohmstead.workbench.WorkbenchPreferences;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.RecentProjects;
import org.ohmstead.workbench.session.SessionException;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.UnsavedEdits;

/** Opening and closing projects, with the questions that unsaved edits raise. */
public final class ProjectOpening {
    private static final Messages TEXTS = Messages.of(ProjectOpening.class);
    private static final String RECENT = "recentProjects";
    private static final RecentProjects PROJECTS = new RecentProjects(new PreferenceList());

    private ProjectOpening() {}

    /** Returns the projects that were open last. */
    public static RecentProjects recent() {
        return PROJECTS;
    }

    /** Opens a project, after asking what becomes of unsaved edits of the one that is open. */
    public static void open(IWorkbench workbench, Path folder) {
        open(workbench, folder, session -> {});
    }

    static void open(IWorkbench workbench, Path folder, java.util.function.Consumer<ProjectSession> then) {
        ProjectDesk desk = workbench.getService(ProjectDesk.class);
        Optional<Unsaved> unsaved = settleEdits(workbench, desk);
        if (unsaved.isEmpty()) {
            return;
        }
        desk.open(
                folder,
                unsaved.get(),
                session -> {
                    showFirstPage(workbench);
                    then.accept(session);
                },
                failure -> MessageDialog.openError(shell(workbench), TEXTS.text("open.failed"), failure.getMessage()));
    }

    private static void showFirstPage(IWorkbench workbench) {
        IWorkbenchWindow window = workbench.getActiveWorkbenchWindow();
        if (window != null
                && window.getActivePage() != null
                && window.getActivePage().isEditorAreaVisible()) {
            Sections.open(window.getActivePage(), Sections.FIRST);
        }
    }

    /** Closes the open project after asking about unsaved edits; returns whether none is open now. */
    public static boolean close(IWorkbench workbench) {
        ProjectDesk desk = workbench.getService(ProjectDesk.class);
        Optional<Unsaved> unsaved = settleEdits(workbench, desk);
        if (unsaved.isEmpty()) {
            return false;
        }
        try {
            desk.close(unsaved.get());
            return true;
        } catch (UnsavedEdits e) {
            MessageDialog.openError(shell(workbench), TEXTS.text("close.failed"), e.getMessage());
            return false;
        }
    }

    /** Asks what becomes of unsaved edits; empty when the user would rather not go on. */
    private static Optional<Unsaved> settleEdits(IWorkbench workbench, ProjectDesk desk) {
        Optional<ProjectSession> open = desk.session().filter(ProjectSession::dirty);
        if (open.isEmpty()) {
            return Optional.of(Unsaved.REFUSE);
        }
        int answer = MessageDialog.open(
                MessageDialog.QUESTION,
                shell(workbench),
                TEXTS.text("unsaved.title"),
                TEXTS.text("unsaved.question", open.get().project().title()),
                0,
                TEXTS.text("unsaved.save"),
                TEXTS.text("unsaved.drop"),
                TEXTS.text("unsaved.cancel"));
        if (answer == 1) {
            return Optional.of(Unsaved.DISCARD);
        }
        if (answer != 0) {
            return Optional.empty();
        }
        try {
            open.get().save();
            return Optional.of(Unsaved.REFUSE);
        } catch (SessionException e) {
            MessageDialog.openError(shell(workbench), TEXTS.text("save.failed"), e.getMessage());
            return Optional.empty();
        }
    }

    static Shell shell(IWorkbench workbench) {
        IWorkbenchWindow window = workbench.getActiveWorkbenchWindow();
        return window == null ? null : window.getShell();
    }

    /** Keeps the list as one preference, a path a line. */
    private static final class PreferenceList implements RecentProjects.Store {
        @Override
        public List<String> load() {
            return Stream.of(WorkbenchPreferences.store().getString(RECENT).split("\n"))
                    .filter(line -> !line.isBlank())
                    .toList();
        }

        @Override
        public void save(List<String> paths) {
            WorkbenchPreferences.store().setValue(RECENT, String.join("\n", paths));
        }
    }
}

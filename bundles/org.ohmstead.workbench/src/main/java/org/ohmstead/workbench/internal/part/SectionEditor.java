// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.part;

import java.util.Optional;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IEditorSite;
import org.eclipse.ui.ISaveablesLifecycleListener;
import org.eclipse.ui.ISaveablesSource;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.Saveable;
import org.eclipse.ui.SaveablesLifecycleEvent;
import org.eclipse.ui.part.EditorPart;
import org.ohmstead.model.Project;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProblemPlace;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;
import org.ohmstead.workbench.session.SessionException;

/** Shows one page of the open project in the editor area; all such editors share the session and what there is to save. */
public final class SectionEditor extends EditorPart implements ISaveablesSource {
    private static final Messages TEXTS = Messages.of(SectionEditor.class);

    /** The id of the editor. */
    public static final String ID = "org.ohmstead.workbench.section";

    private ProjectDesk desk;
    private Registration registration;
    private SectionControl control;
    private boolean shownDirty;

    @Override
    public void init(IEditorSite site, IEditorInput input) throws PartInitException {
        if (!(input instanceof SectionInput section)) {
            throw new PartInitException(TEXTS.text("page.foreign", input.getName()));
        }
        setSite(site);
        setInput(input);
        setPartName(section.page().name());
        desk = site.getService(ProjectDesk.class);
    }

    @Override
    public void createPartControl(Composite parent) {
        SectionInput section = (SectionInput) getEditorInput();
        setTitleImage(Icons.image(section.page().iconName()));
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 0).applyTo(body);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(new NoticeStrip(body, desk));
        control = section.page().create(body, desk);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(control.control());
        ProjectCommands.help(control.control(), section.page().id() + "_editor");
        shownDirty = isDirty();
        registration = desk.listen(new DeskListener() {
            @Override
            public void sessionChanged(Optional<ProjectSession> session) {
                closeSoon();
            }

            @Override
            public void projectChanged(Project before, Project after) {
                dirtyChanged();
            }

            @Override
            public void stateChanged() {
                dirtyChanged();
            }
        });
    }

    private void closeSoon() {
        desk.work().later(() -> {
            IWorkbenchPage page = getSite().getPage();
            if (page != null) { // null when the user was faster
                page.closeEditor(this, false);
            }
        });
    }

    private void dirtyChanged() {
        if (shownDirty != isDirty()) {
            shownDirty = isDirty();
            firePropertyChange(PROP_DIRTY);
            ISaveablesLifecycleListener saveables = getSite().getService(ISaveablesLifecycleListener.class);
            saveables.handleLifecycleEvent(
                    new SaveablesLifecycleEvent(this, SaveablesLifecycleEvent.DIRTY_CHANGED, getSaveables(), false));
        }
    }

    /** Shows a place on the page and puts the keyboard there. */
    public void reveal(ProblemPlace place) {
        control.reveal(place);
    }

    @Override
    public Saveable[] getSaveables() {
        return desk.session()
                .map(session -> new Saveable[] {new SessionSaveable(session)})
                .orElse(new Saveable[0]);
    }

    @Override
    public Saveable[] getActiveSaveables() {
        return getSaveables();
    }

    @Override
    public boolean isDirty() {
        return desk.session().map(ProjectSession::dirty).orElse(false);
    }

    @Override
    public void doSave(IProgressMonitor monitor) {
        if (desk.session().isEmpty()) {
            return;
        }
        try {
            desk.session().get().save();
        } catch (SessionException e) {
            monitor.setCanceled(true);
            MessageDialog.openError(getSite().getShell(), TEXTS.text("save.failed"), e.getMessage());
        }
    }

    @Override
    public void doSaveAs() {
        doSave(new NullProgressMonitor());
    }

    @Override
    public boolean isSaveAsAllowed() {
        return false;
    }

    @Override
    public void setFocus() {
        control.setFocus();
    }

    @Override
    public void dispose() {
        if (registration != null) {
            registration.close();
        }
        super.dispose();
    }
}

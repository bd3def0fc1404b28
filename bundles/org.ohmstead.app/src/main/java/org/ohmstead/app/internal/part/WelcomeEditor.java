// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IEditorSite;
import org.eclipse.ui.IPersistableElement;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.EditorPart;
import org.ohmstead.app.internal.welcome.WelcomeActions;
import org.ohmstead.app.internal.welcome.WelcomeComposite;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** The page to begin from; it closes itself once a project is open. */
public final class WelcomeEditor extends EditorPart {
    /** The id of the editor. */
    public static final String ID = "org.ohmstead.app.welcome";
    /** What it shows. */
    public static final IEditorInput INPUT = new WelcomeInput();

    private static final Messages TEXTS = Messages.of(WelcomeEditor.class);

    private WelcomeComposite welcome;
    private Registration registration;

    @Override
    public void init(IEditorSite site, IEditorInput input) {
        setSite(site);
        setInput(input);
    }

    @Override
    public void createPartControl(Composite parent) {
        ProjectDesk desk = getSite().getService(ProjectDesk.class);
        welcome = new WelcomeComposite(parent, new Actions());
        ProjectCommands.help(welcome, "welcome");
        registration = desk.listen(new DeskListener() {
            @Override
            public void sessionChanged(Optional<ProjectSession> session) {
                if (session.isPresent()) {
                    desk.work().later(WelcomeEditor.this::closeWhenOpen);
                }
            }
        });
    }

    private void closeWhenOpen() {
        if (getSite().getPage() != null) { // null when the user was faster
            getSite().getPage().closeEditor(this, false);
        }
    }

    @Override
    public void setFocus() {
        welcome.setFocus();
    }

    @Override
    public void dispose() {
        if (registration != null) {
            registration.close();
        }
        super.dispose();
    }

    @Override
    public void doSave(IProgressMonitor monitor) {
        // There is nothing to save on this page.
    }

    @Override
    public void doSaveAs() {
        // There is nothing to save on this page.
    }

    @Override
    public boolean isDirty() {
        return false;
    }

    @Override
    public boolean isSaveAsAllowed() {
        return false;
    }

    private final class Actions implements WelcomeActions {
        @Override
        public void openDemo() {
            ProjectCommands.execute(getSite(), ProjectCommands.DEMO);
        }

        @Override
        public void openProject() {
            ProjectCommands.execute(getSite(), ProjectCommands.OPEN);
        }

        @Override
        public void newProject() {
            ProjectCommands.execute(getSite(), ProjectCommands.NEW);
        }

        @Override
        public void openRecent(Path folder) {
            ProjectCommands.open(PlatformUI.getWorkbench(), folder);
        }

        @Override
        public void showHelp() {
            PlatformUI.getWorkbench().getHelpSystem().displayHelp();
        }

        @Override
        public List<Path> recent() {
            return ProjectCommands.recent();
        }
    }

    private static final class WelcomeInput implements IEditorInput {
        @Override
        public boolean exists() {
            return true;
        }

        @Override
        public ImageDescriptor getImageDescriptor() {
            return null;
        }

        @Override
        public String getName() {
            return TEXTS.text("welcome.name");
        }

        @Override
        public IPersistableElement getPersistable() {
            return null;
        }

        @Override
        public String getToolTipText() {
            return TEXTS.text("welcome.hint");
        }

        @Override
        public <T> T getAdapter(Class<T> adapter) {
            return null;
        }
    }
}

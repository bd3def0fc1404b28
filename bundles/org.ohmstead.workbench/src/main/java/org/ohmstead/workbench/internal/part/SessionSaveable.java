// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.part;

import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.Status;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.ui.Saveable;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.SessionException;

/** The open project as the one thing that all its editors save, so that closing one of several asks nothing. */
final class SessionSaveable extends Saveable {
    private final ProjectSession session;

    SessionSaveable(ProjectSession session) {
        this.session = session;
    }

    @Override
    public String getName() {
        return session.project().title();
    }

    @Override
    public String getToolTipText() {
        return session.folder().toString();
    }

    @Override
    public ImageDescriptor getImageDescriptor() {
        return null;
    }

    @Override
    public void doSave(IProgressMonitor monitor) throws CoreException {
        try {
            session.save();
        } catch (SessionException e) {
            throw new CoreException(Status.error(e.getMessage(), e));
        }
    }

    @Override
    public boolean isDirty() {
        return session.dirty();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SessionSaveable saveable && saveable.session == session;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(session);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IMemento;
import org.eclipse.ui.IViewSite;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.signal.ui.internal.gain.GainComposite;
import org.ohmstead.signal.ui.internal.gain.Kept;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** The view named Gain set-up: source and amplifier set to each other, channels compared; scrolled where it has too little room. */
public final class GainView extends ViewPart {
    /** The view's id in the workbench. */
    public static final String ID = "org.ohmstead.signal.ui.gain";

    private static final int LEAST_WIDTH = 860;
    private static final int LEAST_HEIGHT = 380;
    private static final String KEPT = "gainSetup";

    private Optional<Kept> earlier = Optional.empty();
    private GainComposite content;

    @Override
    public void init(IViewSite site, IMemento memento) throws PartInitException {
        super.init(site, memento);
        earlier = memento == null ? Optional.empty() : Kept.of(memento.getString(KEPT));
    }

    @Override
    public void createPartControl(Composite parent) {
        ScrolledComposite scrolled = new ScrolledComposite(parent, SWT.H_SCROLL | SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setMinSize(LEAST_WIDTH, LEAST_HEIGHT);
        content = new GainComposite(scrolled, getSite().getService(ProjectDesk.class));
        earlier.ifPresent(content::restore);
        scrolled.setContent(content);
        ProjectCommands.help(content, "gain_view");
    }

    @Override
    public void saveState(IMemento memento) {
        Optional<Kept> kept = content == null ? earlier : content.kept();
        kept.ifPresent(values -> memento.putString(KEPT, values.text()));
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}

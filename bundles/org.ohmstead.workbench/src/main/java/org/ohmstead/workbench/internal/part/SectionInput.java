// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.part;

import java.util.Optional;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.ui.IEditorInput;
import org.eclipse.ui.IPersistableElement;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Icons;
import org.ohmstead.workbench.section.SectionPage;

/** Names the page of the open project that an editor shows. */
public final class SectionInput implements IEditorInput {
    private static final Messages TEXTS = Messages.of(SectionInput.class);

    private final SectionPage page;

    /** Makes the input for a page. */
    public SectionInput(SectionPage page) {
        this.page = page;
    }

    SectionPage page() {
        return page;
    }

    @Override
    public boolean exists() {
        return true;
    }

    @Override
    public ImageDescriptor getImageDescriptor() {
        return Icons.descriptor(page.iconName());
    }

    @Override
    public String getName() {
        return page.name();
    }

    @Override
    public IPersistableElement getPersistable() {
        return null; // the project that is open next time decides
    }

    @Override
    public String getToolTipText() {
        return TEXTS.text("page.hint", page.name());
    }

    @Override
    public <T> T getAdapter(Class<T> adapter) {
        return Optional.of(this).filter(adapter::isInstance).map(adapter::cast).orElse(null);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SectionInput input && input.page.id().equals(page.id());
    }

    @Override
    public int hashCode() {
        return page.id().hashCode();
    }
}

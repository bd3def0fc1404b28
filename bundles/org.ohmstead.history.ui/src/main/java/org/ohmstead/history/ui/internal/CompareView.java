// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows in the workbench amplifiers beside each other. */
public final class CompareView extends ViewPart {
    private static final Messages TEXTS = Messages.of(CompareView.class);
    private CompareComposite content;

    @Override
    public void createPartControl(Composite parent) {
        content = new CompareComposite(
                parent,
                getSite().getService(ProjectDesk.class),
                new PlatformMemory(),
                new CompareComposite.Questions(this::askFolder, this::askIndex));
        ProjectCommands.help(content, "compare_view");
    }

    private Optional<Path> askFolder(Optional<Path> start) {
        DirectoryDialog dialog = new DirectoryDialog(getSite().getShell(), SWT.OPEN);
        dialog.setText(TEXTS.text("compare.folder"));
        dialog.setMessage(TEXTS.text("compare.folder.hint"));
        start.ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        return Optional.ofNullable(dialog.open()).map(Path::of);
    }

    private Optional<Path> askIndex(Optional<Path> start) {
        FileDialog dialog = new FileDialog(getSite().getShell(), SWT.OPEN);
        dialog.setText(TEXTS.text("compare.index"));
        dialog.setFilterExtensions(new String[] {"*.csv;*.txt", "*"});
        dialog.setFilterNames(new String[] {TEXTS.text("compare.index.tables"), TEXTS.text("compare.index.all")});
        start.ifPresent(folder -> dialog.setFilterPath(folder.toString()));
        return Optional.ofNullable(dialog.open()).map(Path::of);
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}

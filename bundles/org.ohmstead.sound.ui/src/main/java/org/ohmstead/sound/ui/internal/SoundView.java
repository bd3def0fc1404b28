// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** The view named Sound in the vehicle. */
public final class SoundView extends ViewPart {
    private SoundComposite sound;

    @Override
    public void createPartControl(Composite parent) {
        sound = new SoundComposite(parent, getSite().getService(ProjectDesk.class), this::askFile);
        ProjectCommands.help(sound, "sound_view");
    }

    private Optional<Path> askFile(String title) {
        FileDialog dialog = new FileDialog(getSite().getShell(), SWT.OPEN);
        dialog.setText(title);
        dialog.setFilterExtensions(new String[] {"*.wav;*.WAV", "*.csv", "*"});
        return Optional.ofNullable(dialog.open()).map(Path::of);
    }

    @Override
    public void setFocus() {
        sound.setFocus();
    }
}

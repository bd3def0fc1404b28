// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;

/** The tabs below the chart; each is made, and filled, in a turn of the event loop of its own. */
final class StudyTabs {
    private final CTabFolder folder;
    private final Slices slices;
    private final List<StudyPart> parts = new ArrayList<>();
    private StudyPart.InView view = StudyPart.InView.NOTHING;

    StudyTabs(Composite parent) {
        folder = Ids.name(new CTabFolder(parent, SWT.TOP | SWT.FLAT), "power.tabs");
        slices = new Slices(folder);
    }

    CTabFolder control() {
        return folder;
    }

    /** Adds a tab for what is there already. */
    void tab(String title, Control control) {
        CTabItem item = new CTabItem(folder, SWT.NONE);
        item.setText(title);
        item.setControl(control);
        if (folder.getSelectionIndex() < 0) {
            folder.setSelection(0);
        }
    }

    /** Makes a part now or later; it is shown what is in view then. */
    <P extends StudyPart> void add(Function<Composite, P> maker, Consumer<P> made) {
        slices.add(() -> {
            P part = maker.apply(folder);
            tab(part.title(), part.control());
            parts.add(part);
            made.accept(part);
            part.show(view);
        });
    }

    /** Shows something else in all parts, one after the other. */
    void show(StudyPart.InView newView) {
        view = newView;
        for (StudyPart part : List.copyOf(parts)) {
            slices.add(() -> {
                if (view == newView) {
                    part.show(newView);
                }
            });
        }
    }
}

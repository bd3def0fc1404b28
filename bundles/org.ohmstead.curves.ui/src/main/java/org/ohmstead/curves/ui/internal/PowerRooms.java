// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.workbench.look.Spacing;

/** The rooms below the choices that the view's parts come into later, each of which then fills its room. */
final class PowerRooms {
    private static final int[] CHART_AND_TABS = {60, 40};
    private static final int[] CHART_AND_READ_OUT = {73, 27};

    private final Composite compare;
    private final Composite chart;
    private final Composite readOut;
    private final Composite tabs;

    /**
     * Makes the rooms.
     *
     * @param view in which they lie one below the other
     * @param barHeight height of the room for the bar as long as it is empty, in points
     */
    PowerRooms(Composite view, int barHeight) {
        compare = room(view);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SWT.DEFAULT, barHeight)
                .applyTo(compare);
        SashForm sash = sash(view, SWT.VERTICAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        SashForm upper = sash(sash, SWT.HORIZONTAL);
        chart = room(upper);
        readOut = room(upper);
        upper.setWeights(CHART_AND_READ_OUT);
        tabs = room(sash);
        sash.setWeights(CHART_AND_TABS);
    }

    private static SashForm sash(Composite parent, int direction) {
        SashForm sash = new SashForm(parent, direction | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        return sash;
    }

    private static Composite room(Composite parent) {
        Composite room = new Composite(parent, SWT.NONE);
        room.setLayout(new FillLayout());
        return room;
    }

    Composite compare() {
        return compare;
    }

    /** From now on the room of the bar is as high as what is in it. */
    void fitBar() {
        GridDataFactory.fillDefaults().grab(true, false).applyTo(compare);
        compare.requestLayout();
    }

    Composite chart() {
        return chart;
    }

    Composite readOut() {
        return readOut;
    }

    Composite tabs() {
        return tabs;
    }
}

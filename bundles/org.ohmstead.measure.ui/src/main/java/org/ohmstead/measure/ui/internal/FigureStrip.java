// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.EnumMap;
import java.util.Map;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.workbench.look.Spacing;

/** The live figures beside each other. */
final class FigureStrip extends Composite {
    private final Map<LiveFigure.Kind, FigureTile> tiles = new EnumMap<>(LiveFigure.Kind.class);

    FigureStrip(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.group(LiveFigure.Kind.values().length).equalWidth(true).applyTo(this);
        for (LiveFigure.Kind kind : LiveFigure.Kind.values()) {
            FigureTile tile = new FigureTile(this, kind);
            GridDataFactory.fillDefaults().grab(true, false).applyTo(tile);
            tiles.put(kind, tile);
        }
    }

    /** Shows the figures; as long as nothing is known of any, the room is left to others. */
    void refresh(RunDesk runs) {
        RunProgress progress = runs.course().progress();
        tiles.forEach((kind, tile) -> tile.show(progress.figure(kind)));
        boolean known = runs.running()
                || tiles.keySet().stream()
                        .anyMatch(kind -> progress.figure(kind).value().isPresent());
        if (known != getVisible() || ((GridData) getLayoutData()).exclude == known) {
            setVisible(known);
            ((GridData) getLayoutData()).exclude = !known;
            getParent().layout(true, true);
        }
    }
}

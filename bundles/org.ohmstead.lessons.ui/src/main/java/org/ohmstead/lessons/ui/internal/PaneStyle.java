// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Ids;

/**
 * How the parts of a lesson look in the place where they stand: in the view by the theme's own rules, before a room in large type.
 *
 * @param prefix what the names of widgets begin with
 * @param font of plain texts; empty for the system's
 * @param strong of headings and values
 * @param ground what all stand on; empty where the theme paints it
 * @param ink of plain texts; empty where the theme colours them
 * @param column whether there is only a column's room, so that a slider and its value stand below their name
 */
record PaneStyle(
        String prefix, Optional<Font> font, Font strong, Optional<Color> ground, Optional<Color> ink, boolean column) {
    private static final int CHARACTERS_BESIDE = 22;

    /** The style within the workbench. */
    static PaneStyle view(Font strong) {
        return new PaneStyle("lesson.", Optional.empty(), strong, Optional.empty(), Optional.empty(), false);
    }

    /** Gives a control the font, the ground and the ink. */
    <C extends Control> C dress(C control) {
        font.ifPresent(control::setFont);
        ground.ifPresent(control::setBackground);
        ink.ifPresent(control::setForeground);
        return control;
    }

    /** Gives a label the strong font, the ground and the ink. */
    Label dressStrong(Label label) {
        dress(label).setFont(strong);
        return label;
    }

    /** Dresses a control and gives it its name. */
    <C extends Control> C named(C control, String id) {
        return Ids.name(dress(control), prefix + id);
    }

    /** Makes the name of a control, which wraps where it is long: above the control in a column, else beside it. */
    void name(Composite grid, String text) {
        Label name = dress(new Label(grid, SWT.WRAP));
        name.setText(Texts.plain(text));
        int beside = Math.min(
                name.computeSize(SWT.DEFAULT, SWT.DEFAULT).x,
                new PixelConverter(name).convertWidthInCharsToPixels(CHARACTERS_BESIDE));
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .span(column ? 2 : 1, 1)
                .hint(column ? 1 : beside, SWT.DEFAULT)
                .applyTo(name);
    }
}

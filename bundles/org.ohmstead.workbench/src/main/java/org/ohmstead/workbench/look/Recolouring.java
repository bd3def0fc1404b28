// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;

/**
 * Takes the texts of widgets that are there already from the tones of one theme to those of the other. It is planned before the
 * theme changes, since the platform then forgets which colours a widget was given, and applied afterwards.
 */
public final class Recolouring {
    private final Map<RGB, Color> counterparts = new HashMap<>();
    private final Map<Control, Color> planned = new LinkedHashMap<>();
    private final Shell[] shells;

    private Recolouring(Shell[] shells, Tones from, Tones to) {
        this.shells = shells.clone();
        pair(from.mutedText(), to.mutedText());
        pair(from.text(), to.text());
        pair(from.error(), to.error());
        pair(from.warning(), to.warning());
        pair(from.ok(), to.ok());
        pair(from.accent(), to.accent());
    }

    private void pair(Color from, Color to) {
        counterparts.put(from.getRGB(), to);
    }

    /**
     * Finds the controls whose foreground is one of the present theme's tones.
     *
     * @param shells where to look, with all below them
     * @param dark whether the new theme is the dark one
     */
    public static Recolouring plan(Shell[] shells, boolean dark) {
        Recolouring plan = dark
                ? new Recolouring(shells, Tones.LIGHT, Tones.DARK)
                : new Recolouring(shells, Tones.DARK, Tones.LIGHT);
        for (Shell shell : shells) {
            plan.look(shell);
        }
        return plan;
    }

    private void look(Control control) {
        Color counterpart = counterparts.get(control.getForeground().getRGB());
        if (counterpart != null) {
            planned.put(control, counterpart);
        }
        if (control instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                look(child);
            }
        }
    }

    /** Gives the controls found, the rows of tables and the ranges of texts their tone of the new theme; again does no harm. */
    public void apply() {
        planned.forEach((control, tone) -> {
            if (!control.isDisposed()) {
                control.setForeground(tone);
            }
        });
        for (Shell shell : shells) {
            if (!shell.isDisposed()) {
                change(shell);
            }
        }
    }

    private void change(Control control) {
        if (control instanceof StyledText text) {
            change(text);
        } else if (control instanceof Table table) {
            change(table);
        }
        if (control instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                change(child);
            }
        }
        control.redraw();
    }

    private void change(StyledText text) {
        StyleRange[] ranges = text.getStyleRanges();
        for (StyleRange range : ranges) {
            Color counterpart = range.foreground == null ? null : counterparts.get(range.foreground.getRGB());
            if (counterpart != null) {
                range.foreground = counterpart;
            }
        }
        text.setStyleRanges(ranges);
    }

    private void change(Table table) {
        if ((table.getStyle() & SWT.VIRTUAL) != 0) {
            table.clearAll(); // its rows are asked for again, and come in the new tones
            return;
        }
        for (TableItem item : table.getItems()) {
            for (int column = 0; column < Math.max(1, table.getColumnCount()); column++) {
                Color counterpart = counterparts.get(item.getForeground(column).getRGB());
                if (counterpart != null) {
                    item.setForeground(column, counterpart);
                }
            }
        }
    }
}

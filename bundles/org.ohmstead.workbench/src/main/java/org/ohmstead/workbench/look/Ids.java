// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import java.util.Optional;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.Widget;

/** The dotted lower-case names, such as "log.filter", under which widgets are found. */
public final class Ids {
    /** The key of the name among a widget's data. */
    public static final String KEY = "ohmstead.id";

    private Ids() {}

    /** Gives a widget its name and returns the widget. */
    public static <W extends Widget> W name(W widget, String id) {
        widget.setData(KEY, id);
        return widget;
    }

    /** Returns the name of a widget, or empty. */
    public static Optional<String> of(Widget widget) {
        return widget.getData(KEY) instanceof String name ? Optional.of(name) : Optional.empty();
    }

    /**
     * Returns the control or tool item of that name at or below a control.
     *
     * @throws IllegalArgumentException when there is none, or it is of another type
     */
    public static <W extends Widget> W find(Control from, String id, Class<W> type) {
        return search(from, id)
                .filter(type::isInstance)
                .map(type::cast)
                .orElseThrow(() -> new IllegalArgumentException(
                        "id is " + id + "; it must be the name of a " + type.getSimpleName() + " below " + from));
    }

    /** Returns whether there is a control or tool item of that name at or below a control. */
    public static boolean exists(Control from, String id) {
        return search(from, id).isPresent();
    }

    private static Optional<Widget> search(Control from, String id) {
        if (id.equals(from.getData(KEY))) {
            return Optional.of(from);
        }
        if (from instanceof ToolBar bar) {
            for (Widget item : bar.getItems()) {
                if (id.equals(item.getData(KEY))) {
                    return Optional.of(item);
                }
            }
        }
        if (from instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                Optional<Widget> found = search(child, id);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import java.net.URL;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.graphics.Image;
import org.ohmstead.model.Severity;

/** The icons of the workbench: drawings that stay sharp at any zoom, loaded once per display and disposed with it. */
public final class Icons {
    private Icons() {}

    /**
     * Returns an icon; nobody disposes it but the display.
     *
     * @param name its file below {@code icons/} without the ending, such as "table-add"
     * @throws IllegalArgumentException when there is no such icon
     */
    public static Image image(String name) {
        return JFaceResources.getResources().get(descriptor(name));
    }

    /**
     * Returns what an action or a command needs to load an icon.
     *
     * @param name its file below {@code icons/} without the ending, such as "table-add"
     * @throws IllegalArgumentException when there is no such icon
     */
    public static ImageDescriptor descriptor(String name) {
        URL address = Icons.class.getResource("/icons/" + name + ".svg");
        if (address == null) {
            throw new IllegalArgumentException("name is " + name + "; it must be the name of an icon of the workbench");
        }
        return ImageDescriptor.createFromURL(address);
    }

    /** Returns the icon of a severity; each has a shape of its own. */
    public static Image of(Severity severity) {
        return image(
                switch (severity) {
                    case ERROR -> "problem-error";
                    case WARNING -> "problem-warning";
                    case NOTE -> "problem-info";
                });
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import java.net.URL;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.graphics.Image;

/** The application's own drawings; sharp at any zoom, loaded once per display and disposed with it. */
public final class Pictures {
    private Pictures() {}

    /**
     * Returns an icon of 16 by 16 points.
     *
     * @param name its file below {@code icons/} without the ending, such as "save"
     * @throws IllegalArgumentException when there is no such icon
     */
    public static Image icon(String name) {
        return load("/icons/" + name + ".svg");
    }

    /** Returns Ohmstead's mark, 64 by 64 points. */
    public static Image mark() {
        return load("/branding/mark-welcome.svg");
    }

    private static Image load(String place) {
        URL address = Pictures.class.getResource(place);
        if (address == null) {
            throw new IllegalArgumentException("name leads to " + place + "; it must be a drawing of the application");
        }
        return JFaceResources.getResources().get(ImageDescriptor.createFromURL(address));
    }
}

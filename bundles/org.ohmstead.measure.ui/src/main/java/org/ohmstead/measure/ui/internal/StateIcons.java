// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Locale;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Image;
import org.ohmstead.workbench.look.Tones;

/** The picture and the tone of each state of an item; the word stands beside them. */
final class StateIcons {
    private StateIcons() {}

    /** Returns the picture; nobody disposes it but the display. */
    static Image of(ItemRow.Status status) {
        return image("state-" + status.name().toLowerCase(Locale.ROOT));
    }

    /** Returns the picture of what stops a run. */
    static Image stop() {
        return image("stop");
    }

    private static Image image(String name) {
        return JFaceResources.getResources()
                .get(ImageDescriptor.createFromURL(StateIcons.class.getResource("/icons/" + name + ".svg")));
    }

    static Color tone(ItemRow.Status status, Tones tones) {
        return switch (status) {
            case OPEN, SKIPPED -> tones.mutedText();
            case NEXT -> tones.text();
            case RESTING, VOIDED -> tones.warning();
            case RUNNING -> tones.accent();
            case DONE -> tones.ok();
            case FAILED -> tones.error();
        };
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.awt.Graphics2D;

/** A logo that has been found harmless. */
public interface LogoPicture {
    /** Returns the kind of content, such as "image/png". */
    String mediaType();

    /** Returns the content of a file of this kind. */
    byte[] content();

    /** Returns the width, above 0; only its ratio to the height counts. */
    double width();

    /** Returns the height, above 0. */
    double height();

    /** Draws it into a box at the origin that has its own ratio of width to height. */
    void draw(Graphics2D graphics, double boxWidth, double boxHeight);
}

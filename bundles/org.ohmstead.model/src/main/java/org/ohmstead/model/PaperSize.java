// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** The paper that a results sheet is printed on, upright. */
public enum PaperSize {
    /** ISO 216 A4. */
    A4(210, 297),
    /** The letter format of ANSI/ASME Y14.1, size A: 8.5 by 11 inches. */
    LETTER(215.9, 279.4);

    private final double widthMillimetres;
    private final double heightMillimetres;

    PaperSize(double widthMillimetres, double heightMillimetres) {
        this.widthMillimetres = widthMillimetres;
        this.heightMillimetres = heightMillimetres;
    }

    /** Returns the width in millimetres. */
    public double widthMillimetres() {
        return widthMillimetres;
    }

    /** Returns the height in millimetres. */
    public double heightMillimetres() {
        return heightMillimetres;
    }
}

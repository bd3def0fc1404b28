// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * The outside of a heat sink, or of a case that serves as one: a base plate with plane fins that stand upright, air free to rise between
 * them. Without fins it is a plate that gives off heat on both faces.
 *
 * @param lengthMetres length of the base along which the fins are lined up, above 0
 * @param heightMetres height of base and fins, in which the air rises, above 0
 * @param finCount number of fins, at least 0
 * @param finDepthMetres how far the fins stand out, at least 0
 * @param finThicknessMetres thickness of a fin, above 0
 * @param emissivityRatio emissivity of the surface, 0 to 1: about 0.05 for bare aluminium, 0.85 to 0.9 when anodised or painted
 */
public record SinkSize(
        double lengthMetres,
        double heightMetres,
        int finCount,
        double finDepthMetres,
        double finThicknessMetres,
        double emissivityRatio) {
    private static final int MOST_FINS = 1000;

    public SinkSize {
        Checks.positive(lengthMetres, "lengthMetres");
        Checks.positive(heightMetres, "heightMetres");
        Checks.within(finCount, 0, MOST_FINS, "finCount");
        Checks.notNegative(finDepthMetres, "finDepthMetres");
        Checks.positive(finThicknessMetres, "finThicknessMetres");
        Checks.within(emissivityRatio, 0, 1, "emissivityRatio");
        if (finCount * finThicknessMetres > lengthMetres) {
            throw new IllegalArgumentException("finThicknessMetres is " + finThicknessMetres + "; " + finCount
                    + " fins of it do not fit on lengthMetres, which is " + lengthMetres);
        }
    }
}

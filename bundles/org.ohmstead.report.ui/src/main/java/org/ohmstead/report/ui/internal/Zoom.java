// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

/** How large pages are shown. */
sealed interface Zoom {
    double SMALLEST = 0.25;
    double LARGEST = 3;

    /** As wide as the view. */
    record FitWidth() implements Zoom {}

    /** As large as one page fits whole. */
    record FitPage() implements Zoom {}

    /**
     * At a part of the size on paper.
     *
     * @param factor 1 shows an inch of paper as 96 points of the screen; from {@link #SMALLEST} to {@link #LARGEST}
     */
    record Fixed(double factor) implements Zoom {
        private static final double STEP = 1.25;

        public Fixed {
            if (!(factor >= SMALLEST) || factor > LARGEST) {
                throw new IllegalArgumentException(
                        "factor is " + factor + "; it must be from " + SMALLEST + " to " + LARGEST);
            }
        }

        static Fixed near(double factor) {
            return new Fixed(Math.max(SMALLEST, Math.min(LARGEST, factor)));
        }

        /** Returns the next larger step of the ladder that 100 % is a rung of. */
        static Fixed above(double factor) {
            return near(Math.pow(STEP, Math.floor(rung(factor) + 1.001)));
        }

        /** Returns the next smaller step. */
        static Fixed below(double factor) {
            return near(Math.pow(STEP, Math.ceil(rung(factor) - 1.001)));
        }

        private static double rung(double factor) {
            return Math.log(factor) / Math.log(STEP);
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

/** Puts labels that lie too near to each other apart. */
final class LabelPlaces {
    private LabelPlaces() {}

    /**
     * Returns places in the same order that lie at least so far apart and within the ends, each as near as can be to its wish.
     *
     * @param wishes rising
     * @param apart the least distance of two
     * @param first the least place
     * @param last the greatest place; what does not fit goes beyond {@code first}
     */
    static int[] spread(int[] wishes, int apart, int first, int last) {
        int[] places = wishes.clone();
        for (int i = 0; i < places.length; i++) {
            places[i] = Math.max(places[i], i == 0 ? first : places[i - 1] + apart);
        }
        for (int i = places.length - 1; i >= 0; i--) {
            places[i] = Math.min(places[i], i == places.length - 1 ? last : places[i + 1] - apart);
        }
        return places;
    }
}

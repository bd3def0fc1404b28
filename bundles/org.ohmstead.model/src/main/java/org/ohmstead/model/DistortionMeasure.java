// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** Which distortion figure an end point's limit is about. */
public enum DistortionMeasure {
    /** Harmonics over the fundamental. */
    THD_F,
    /** Harmonics over the whole alternating signal. */
    THD_R,
    /** Everything but the fundamental, noise included, in the stated band, over the whole alternating signal. */
    THD_PLUS_NOISE_R
}

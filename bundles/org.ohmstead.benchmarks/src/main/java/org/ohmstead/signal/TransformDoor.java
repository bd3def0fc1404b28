// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/** Lets benchmarks at the transform that analyses use, whatever does it inside: it is no API. */
public final class TransformDoor {
    private final TransformPlans plans = new TransformPlans();

    /** Makes a door with plans of its own. */
    public TransformDoor() {}

    /** Replaces real samples by their transform, in the order in which the plan stores it. */
    public void forward(double[] samples) {
        plans.realForward(samples);
    }

    /** Returns |X_k|^2 for k = 0 to n/2, as analyses take it; the samples are overwritten. */
    public static double[] squaredMagnitudes(double[] samples) {
        return RealTransform.squaredMagnitudes(samples);
    }
}

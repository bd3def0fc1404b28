// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** How a rating is judged in view of the measurement's uncertainty (JCGM 106, clause 8). */
public enum VerdictKind {
    /** The measured value alone decides; the risk is shared between both sides. */
    SIMPLE_ACCEPTANCE,
    /** A rating is met only where the measured value clears it by a guard band: the risk of a wrong acceptance is bounded. */
    GUARDED_ACCEPTANCE,
    /** A rating is missed only where the measured value falls short by a guard band: the risk of a wrong rejection is bounded. */
    GUARDED_REJECTION
}

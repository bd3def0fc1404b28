// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** Which input of the power a part of a budget is about. */
public enum BudgetInput {
    /** The output volts; the power goes with their square. */
    OUTPUT_VOLTS,
    /** The resistance worked into; the power goes with its reciprocal. */
    LOAD_OHMS,
    /** The supply volts to which the power is held. */
    SUPPLY_VOLTS,
    /** The power itself, to which the part adds. */
    POWER_WATTS
}

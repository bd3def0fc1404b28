// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * The bench's direct-current supply.
 *
 * @param name what it is, not blank
 * @param lowestVolts lowest output volts it can be set to, at least 0
 * @param highestVolts highest output volts it can be set to, above {@code lowestVolts}
 * @param currentLimitAmps current in amperes at which it limits, above 0
 */
public record Supply(String name, double lowestVolts, double highestVolts, double currentLimitAmps) {
    public Supply {
        Checks.named(name, "supply name");
        Checks.notNegative(lowestVolts, "lowestVolts");
        Checks.positive(highestVolts, "highestVolts");
        if (highestVolts <= lowestVolts) {
            throw new IllegalArgumentException(
                    "highestVolts is " + highestVolts + "; it must be above lowestVolts, which is " + lowestVolts);
        }
        Checks.positive(currentLimitAmps, "currentLimitAmps");
    }

    /** Returns this supply with another name. */
    public Supply withName(String newName) {
        return new Supply(newName, lowestVolts, highestVolts, currentLimitAmps);
    }

    /** Returns this supply with another lowest output in volts. */
    public Supply withLowestVolts(double newLowestVolts) {
        return new Supply(name, newLowestVolts, highestVolts, currentLimitAmps);
    }

    /** Returns this supply with another highest output in volts. */
    public Supply withHighestVolts(double newHighestVolts) {
        return new Supply(name, lowestVolts, newHighestVolts, currentLimitAmps);
    }

    /** Returns this supply with another current limit in amperes. */
    public Supply withCurrentLimitAmps(double newCurrentLimitAmps) {
        return new Supply(name, lowestVolts, highestVolts, newCurrentLimitAmps);
    }
}

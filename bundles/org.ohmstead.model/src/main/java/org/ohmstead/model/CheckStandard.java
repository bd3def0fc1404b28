// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.OptionalDouble;

/**
 * Something steady that is measured again and again to see whether the bench still is what it was.
 *
 * @param id short name, unique among the check standards
 * @param name what it is, not blank
 * @param stepId step of the plan whose readings are its values; empty when its values are typed in
 * @param figureId which figure of such a reading: "power", or the id of a measured figure
 * @param channel which channel of such a reading; empty for the weakest
 * @param unit unit of its values; may be empty
 * @param baselineCount how many of the first values set the limits, 4 to 10000
 * @param significanceRatio chance of a false alarm that the tests of drift and outliers accept, above 0 and at most 0.5
 * @param referenceValue its true value as known from elsewhere, in its unit, when known
 * @param referenceStandardUncertainty standard uncertainty of that value in its unit, at least 0, when known
 * @param everyDays after how many days a new value is due, 0 to 3660; 0 for no reminder
 */
public record CheckStandard(
        String id,
        String name,
        String stepId,
        String figureId,
        String channel,
        String unit,
        int baselineCount,
        double significanceRatio,
        OptionalDouble referenceValue,
        OptionalDouble referenceStandardUncertainty,
        int everyDays) {
    /** The figureId that stands for a reading's power. */
    public static final String POWER = "power";

    public CheckStandard {
        Checks.named(id, "check standard id");
        Checks.named(name, "check standard name");
        Checks.present(stepId, "stepId");
        Checks.named(figureId, "figureId");
        Checks.present(channel, "channel");
        Checks.present(unit, "unit");
        Checks.within(baselineCount, 4, 10_000, "baselineCount");
        if (!(significanceRatio > 0 && significanceRatio <= 0.5)) {
            throw new IllegalArgumentException(
                    "significanceRatio is " + significanceRatio + "; it must be above 0 and at most 0.5");
        }
        Checks.present(referenceValue, "referenceValue");
        referenceValue.ifPresent(value -> Checks.finite(value, "referenceValue"));
        Checks.present(referenceStandardUncertainty, "referenceStandardUncertainty");
        referenceStandardUncertainty.ifPresent(value -> Checks.notNegative(value, "referenceStandardUncertainty"));
        Checks.within(everyDays, 0, 3660, "everyDays");
    }

    /** Returns whether its values are typed in, because no step of the plan measures it. */
    public boolean isTypedIn() {
        return stepId.isEmpty();
    }

    /** Returns this check standard with another id. */
    public CheckStandard withId(String newId) {
        return new CheckStandard(
                newId,
                name,
                stepId,
                figureId,
                channel,
                unit,
                baselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another name. */
    public CheckStandard withName(String newName) {
        return new CheckStandard(
                id,
                newName,
                stepId,
                figureId,
                channel,
                unit,
                baselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another step, or none when empty. */
    public CheckStandard withStepId(String newStepId) {
        return new CheckStandard(
                id,
                name,
                newStepId,
                figureId,
                channel,
                unit,
                baselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another figure. */
    public CheckStandard withFigureId(String newFigureId) {
        return new CheckStandard(
                id,
                name,
                stepId,
                newFigureId,
                channel,
                unit,
                baselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another channel. */
    public CheckStandard withChannel(String newChannel) {
        return new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                newChannel,
                unit,
                baselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another unit. */
    public CheckStandard withUnit(String newUnit) {
        return new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                channel,
                newUnit,
                baselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another count of first values. */
    public CheckStandard withBaselineCount(int newBaselineCount) {
        return new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                channel,
                unit,
                newBaselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another significance. */
    public CheckStandard withSignificanceRatio(double newSignificanceRatio) {
        return new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                channel,
                unit,
                baselineCount,
                newSignificanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another reference value, or none. */
    public CheckStandard withReferenceValue(OptionalDouble newReferenceValue) {
        return new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                channel,
                unit,
                baselineCount,
                significanceRatio,
                newReferenceValue,
                referenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another standard uncertainty of the reference value, or none. */
    public CheckStandard withReferenceStandardUncertainty(OptionalDouble newReferenceStandardUncertainty) {
        return new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                channel,
                unit,
                baselineCount,
                significanceRatio,
                referenceValue,
                newReferenceStandardUncertainty,
                everyDays);
    }

    /** Returns this check standard with another interval in days. */
    public CheckStandard withEveryDays(int newEveryDays) {
        return new CheckStandard(
                id,
                name,
                stepId,
                figureId,
                channel,
                unit,
                baselineCount,
                significanceRatio,
                referenceValue,
                referenceStandardUncertainty,
                newEveryDays);
    }
}

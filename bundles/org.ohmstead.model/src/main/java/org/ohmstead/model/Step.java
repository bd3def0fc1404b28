// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * One cell of the plan.
 *
 * @param id short name, unique in the plan
 * @param mode how the channels meet the load
 * @param loadId which of the bench's loads
 * @param supplyVolts direct volts at the amplifier's terminals to aim for, above 0
 * @param stimulus what is fed in
 * @param endPoint what ends the search for power
 * @param belowLowestLoadConfirmed whether somebody said yes to a load below the lowest that the maker allows
 */
public record Step(
        String id,
        Mode mode,
        String loadId,
        double supplyVolts,
        Stimulus stimulus,
        EndPoint endPoint,
        boolean belowLowestLoadConfirmed) {
    public Step {
        Checks.named(id, "step id");
        Checks.present(mode, "mode");
        Checks.named(loadId, "loadId");
        Checks.positive(supplyVolts, "supplyVolts");
        Checks.present(stimulus, "stimulus");
        Checks.present(endPoint, "endPoint");
    }

    /** Returns this step with another id. */
    public Step withId(String newId) {
        return new Step(newId, mode, loadId, supplyVolts, stimulus, endPoint, belowLowestLoadConfirmed);
    }

    /** Returns this step with another mode. */
    public Step withMode(Mode newMode) {
        return new Step(id, newMode, loadId, supplyVolts, stimulus, endPoint, belowLowestLoadConfirmed);
    }

    /** Returns this step with another load, by its id. */
    public Step withLoadId(String newLoadId) {
        return new Step(id, mode, newLoadId, supplyVolts, stimulus, endPoint, belowLowestLoadConfirmed);
    }

    /** Returns this step with other supply volts. */
    public Step withSupplyVolts(double newSupplyVolts) {
        return new Step(id, mode, loadId, newSupplyVolts, stimulus, endPoint, belowLowestLoadConfirmed);
    }

    /** Returns this step with another stimulus. */
    public Step withStimulus(Stimulus newStimulus) {
        return new Step(id, mode, loadId, supplyVolts, newStimulus, endPoint, belowLowestLoadConfirmed);
    }

    /** Returns this step with another end point. */
    public Step withEndPoint(EndPoint newEndPoint) {
        return new Step(id, mode, loadId, supplyVolts, stimulus, newEndPoint, belowLowestLoadConfirmed);
    }

    /** Returns this step with another answer: whether its low load was confirmed. */
    public Step withBelowLowestLoadConfirmed(boolean newBelowLowestLoadConfirmed) {
        return new Step(id, mode, loadId, supplyVolts, stimulus, endPoint, newBelowLowestLoadConfirmed);
    }
}

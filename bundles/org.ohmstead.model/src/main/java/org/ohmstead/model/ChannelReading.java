// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What one channel gave at the end point of a step.
 *
 * @param channel "A", "B" and so on, or "A+B" for the bridged load
 * @param outcome whether the end point was reached
 * @param loadOhms resistance worked into, in ohms, above 0
 * @param powerWatts output power in watts, at least 0
 * @param standardUncertaintyWatts standard uncertainty of it in watts, at least 0
 * @param outputVoltsRms output volts, RMS, at least 0
 * @param frequencyHz frequency found in the capture, in hertz, above 0
 * @param thdFRatio harmonics over the fundamental there, at least 0
 * @param supplyVolts direct volts at the amplifier's terminals there, above 0
 * @param supplyAmps supply current in amperes there, when it was read
 * @param uncertaintyParts budget of the power
 * @param sweep the levels, rising
 * @param harmonics of the capture nearest to the end point
 * @param correlations which parts of the budget move together; each names parts by their source
 */
public record ChannelReading(
        String channel,
        EndPointOutcome outcome,
        double loadOhms,
        double powerWatts,
        double standardUncertaintyWatts,
        double outputVoltsRms,
        double frequencyHz,
        double thdFRatio,
        double supplyVolts,
        OptionalDouble supplyAmps,
        List<UncertaintyPart> uncertaintyParts,
        List<SweepPoint> sweep,
        List<HarmonicFigure> harmonics,
        List<PartCorrelation> correlations) {
    public ChannelReading {
        Checks.named(channel, "channel");
        Checks.present(outcome, "outcome");
        Checks.positive(loadOhms, "loadOhms");
        Checks.notNegative(powerWatts, "powerWatts");
        Checks.notNegative(standardUncertaintyWatts, "standardUncertaintyWatts");
        Checks.notNegative(outputVoltsRms, "outputVoltsRms");
        Checks.positive(frequencyHz, "frequencyHz");
        Checks.notNegative(thdFRatio, "thdFRatio");
        Checks.positive(supplyVolts, "supplyVolts");
        supplyAmps.ifPresent(value -> Checks.finite(value, "supplyAmps"));
        uncertaintyParts = List.copyOf(uncertaintyParts);
        sweep = List.copyOf(sweep);
        harmonics = List.copyOf(harmonics);
        correlations = List.copyOf(correlations);
    }

    /** Makes what a channel gave, of whose budget no parts move together. */
    public ChannelReading(
            String channel,
            EndPointOutcome outcome,
            double loadOhms,
            double powerWatts,
            double standardUncertaintyWatts,
            double outputVoltsRms,
            double frequencyHz,
            double thdFRatio,
            double supplyVolts,
            OptionalDouble supplyAmps,
            List<UncertaintyPart> uncertaintyParts,
            List<SweepPoint> sweep,
            List<HarmonicFigure> harmonics) {
        this(
                channel,
                outcome,
                loadOhms,
                powerWatts,
                standardUncertaintyWatts,
                outputVoltsRms,
                frequencyHz,
                thdFRatio,
                supplyVolts,
                supplyAmps,
                uncertaintyParts,
                sweep,
                harmonics,
                List.of());
    }

    /**
     * Returns the drive in dB at which the channel gave its power: between the two levels around it, interpolated over the power in
     * dB; that of the end level when the power lies at or beyond it; empty without levels.
     */
    public OptionalDouble endPointDriveDb() {
        if (sweep.isEmpty()) {
            return OptionalDouble.empty();
        }
        SweepPoint below = sweep.get(0);
        if (powerWatts <= below.powerWatts()) {
            return OptionalDouble.of(below.driveDb());
        }
        for (SweepPoint above : sweep) {
            if (above.powerWatts() >= powerWatts) {
                return OptionalDouble.of(driveDbBetween(below, above));
            }
            below = above;
        }
        return OptionalDouble.of(below.driveDb());
    }

    private double driveDbBetween(SweepPoint below, SweepPoint above) {
        if (!(below.powerWatts() > 0) || above.powerWatts() <= below.powerWatts()) {
            return above.driveDb();
        }
        double share = Math.log(powerWatts / below.powerWatts()) / Math.log(above.powerWatts() / below.powerWatts());
        return below.driveDb() + share * (above.driveDb() - below.driveDb());
    }
}

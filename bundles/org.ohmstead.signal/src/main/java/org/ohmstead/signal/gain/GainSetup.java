// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.units.Decibels;

/**
 * A source and an amplifier set to each other. The gain overlap is how far below full scale the source already drives the amplifier to its
 * end point: music whose peaks seldom reach full scale then still uses the amplifier's power; 10 dB is common practice. Gain is 20 log10 of
 * the volts at the load over the volts at the input.
 *
 * @param fullScaleVoltsRms volts RMS that the source gives for a sine at full scale, above 0
 * @param overlapDb the gain overlap in dB, -100 to 100; below 0 when the source is too weak for the end point
 * @param target the end point
 * @param clipWatts power of a sine in the load at which the amplifier begins to clip, above 0; empty when that is the end point
 */
public record GainSetup(double fullScaleVoltsRms, double overlapDb, GainTarget target, OptionalDouble clipWatts) {
    /** Gain overlap that is common practice, in dB. */
    public static final double USUAL_OVERLAP_DB = 10;

    private static final double WIDEST_DB = 100;

    /** Checks the ranges. */
    public GainSetup {
        Checks.positive(fullScaleVoltsRms, "fullScaleVoltsRms");
        Checks.within(overlapDb, -WIDEST_DB, WIDEST_DB, "overlapDb");
        Objects.requireNonNull(target, "target");
        clipWatts.ifPresent(watts -> Checks.positive(watts, "clipWatts"));
    }

    /** Returns the set-up with a gain overlap in dB, where the end point is the onset of clipping. */
    public static GainSetup withOverlap(double fullScaleVoltsRms, double overlapDb, GainTarget target) {
        return new GainSetup(fullScaleVoltsRms, overlapDb, target, OptionalDouble.empty());
    }

    /**
     * Returns the set-up that a gain leads to, where the end point is the onset of clipping.
     *
     * @param gainDb from the input to the load, in dB
     * @throws IllegalArgumentException when the overlap would lie outside -100 to 100 dB
     */
    public static GainSetup withGain(double fullScaleVoltsRms, double gainDb, GainTarget target) {
        Checks.positive(fullScaleVoltsRms, "fullScaleVoltsRms");
        double overlapDb = gainDb - Decibels.ofFieldRatio(target.outputVoltsRms() / fullScaleVoltsRms);
        return withOverlap(fullScaleVoltsRms, overlapDb, target);
    }

    /** Returns this set-up with another power in watts at which clipping begins, or none. */
    public GainSetup withClipWatts(OptionalDouble newClipWatts) {
        return new GainSetup(fullScaleVoltsRms, overlapDb, target, newClipWatts);
    }

    /** Returns this set-up as it is when the amplifier has another gain in dB. */
    public GainSetup atGain(double gainDb) {
        return withGain(fullScaleVoltsRms, gainDb, target).withClipWatts(clipWatts);
    }

    /** Returns the level in dB relative to full scale at which the source drives the amplifier to its end point. */
    public double endPointDbfs() {
        return 0 - overlapDb;
    }

    /** Returns the volts RMS at the input that reach the end point: what the sensitivity is to be set to. */
    public double sensitivityVoltsRms() {
        return SourceLevels.voltsAt(endPointDbfs(), fullScaleVoltsRms);
    }

    /** Returns the gain to set as a factor: volts at the load over volts at the input. */
    public double gainRatio() {
        return target.outputVoltsRms() / sensitivityVoltsRms();
    }

    /** Returns the gain to set in dB. */
    public double gainDb() {
        return Decibels.ofFieldRatio(gainRatio());
    }

    /** Returns the gain of each channel in dB: 6.02 dB less when bridged, where two of them add up. */
    public double channelGainDb() {
        return Decibels.ofFieldRatio(gainRatio() / target.channelsAtLoad());
    }

    /** Returns how far the source can still rise beyond the end point, in dB; below 0 when it cannot reach it. */
    public double sourceHeadroomDb() {
        return overlapDb;
    }

    /** Returns how far the amplifier can still rise beyond the end point until it clips, in dB; 0 when the end point is the onset of clipping. */
    public double amplifierHeadroomDb() {
        return clipWatts.isPresent() ? Decibels.ofPowerRatio(clipWatts.getAsDouble() / target.powerWatts()) : 0;
    }

    /** Returns whether the source is strong enough to reach the end point. */
    public boolean endPointReached() {
        return overlapDb >= 0;
    }

    /** Returns what a sine at full scale asks of the amplifier. */
    public FullScaleDemand fullScaleDemand() {
        double beyondClipDb = overlapDb - amplifierHeadroomDb();
        double wanted = target.powerWatts() * Decibels.toPowerRatio(overlapDb);
        double onset = clipWatts.orElse(target.powerWatts());
        Optional<Overdrive> clipped = beyondClipDb > 0 ? Optional.of(new Overdrive(beyondClipDb)) : Optional.empty();
        return new FullScaleDemand(
                target.outputVoltsRms() * Decibels.toFieldRatio(overlapDb),
                wanted,
                overlapDb,
                beyondClipDb,
                clipped,
                clipped.map(wave -> onset * wave.powerRatio()).orElse(wanted));
    }

    /**
     * Returns what to feed and what to read at a level below the end point.
     *
     * @param relativeDb the level relative to the end point in dB, -200 to 0
     */
    public MeterCheck checkAt(double relativeDb) {
        Checks.within(relativeDb, -2 * WIDEST_DB, 0, "relativeDb");
        double share = Decibels.toFieldRatio(relativeDb);
        return new MeterCheck(
                relativeDb,
                endPointDbfs() + relativeDb,
                sensitivityVoltsRms() * share,
                target.outputVoltsRms() * share,
                target.powerWatts() * share * share);
    }
}

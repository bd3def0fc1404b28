// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.ohmstead.curves.internal.Checks;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;

/**
 * One reading of output power with all that a study of the supply needs. Figures that cannot be (a power of zero, a
 * supply of 0 V) are let in here, so that a study can say what is wrong with them; figures that are no numbers are not.
 *
 * @param dataSetId what belongs together: one amplifier and one end point, as a rule
 * @param channel "A", "B" and so on, or "A+B" for a bridged load
 * @param mode how the channels met the load
 * @param loadOhms the load as connected, in ohms; the whole of it when bridged
 * @param supplyVolts direct volts at the amplifier's terminals
 * @param powerWatts output power in watts: per channel in {@link Mode#STEREO}, in the load otherwise
 * @param standardUncertaintyWatts the part of its standard uncertainty that is this reading's own, in watts
 * @param label what the reading is called; may be empty
 * @param readingId which entry it came from; may be empty
 * @param caseCelsius temperature of the amplifier's case, when it was read
 * @param runIndex which in a row of readings without a rest, when they were counted
 */
public record StudyPoint(
        String dataSetId,
        String channel,
        Mode mode,
        double loadOhms,
        double supplyVolts,
        double powerWatts,
        double standardUncertaintyWatts,
        String label,
        String readingId,
        OptionalDouble caseCelsius,
        OptionalInt runIndex) {
    private static final Messages TEXTS = Messages.of(StudyPoint.class);

    /** Checks that nothing is missing and that the figures are numbers. */
    public StudyPoint {
        Checks.finite("loadOhms", loadOhms);
        Checks.finite("supplyVolts", supplyVolts);
        Checks.finite("powerWatts", powerWatts);
        Checks.finite("standardUncertaintyWatts", standardUncertaintyWatts);
        caseCelsius.ifPresent(value -> Checks.finite("caseCelsius", value));
        if (dataSetId == null || channel == null || mode == null || label == null || readingId == null) {
            throw new IllegalArgumentException(
                    "dataSetId, channel, mode, label and readingId must all be there; texts may be empty.");
        }
    }

    /** Returns a point of the data set and channel with empty names, without temperature and order. */
    public static StudyPoint of(
            Mode mode, double loadOhms, double supplyVolts, double powerWatts, double standardUncertaintyWatts) {
        return new StudyPoint(
                "",
                "",
                mode,
                loadOhms,
                supplyVolts,
                powerWatts,
                standardUncertaintyWatts,
                "",
                "",
                OptionalDouble.empty(),
                OptionalInt.empty());
    }

    /** Returns the load that one channel sees, in ohms: half of it when bridged. */
    public double channelOhms() {
        return mode == Mode.BRIDGED ? loadOhms / 2 : loadOhms;
    }

    /** Returns how many channels share the power: 2 when bridged, else 1. */
    public int channels() {
        return mode == Mode.BRIDGED ? 2 : 1;
    }

    /** Returns this point with another name of its data set and another channel. */
    public StudyPoint in(String newDataSetId, String newChannel) {
        return new StudyPoint(
                newDataSetId,
                newChannel,
                mode,
                loadOhms,
                supplyVolts,
                powerWatts,
                standardUncertaintyWatts,
                label,
                readingId,
                caseCelsius,
                runIndex);
    }

    /** Returns this point with other supply volts. */
    public StudyPoint withSupplyVolts(double newSupplyVolts) {
        return new StudyPoint(
                dataSetId,
                channel,
                mode,
                loadOhms,
                newSupplyVolts,
                powerWatts,
                standardUncertaintyWatts,
                label,
                readingId,
                caseCelsius,
                runIndex);
    }

    /** Returns this point with a name for people and the id of its reading. */
    public StudyPoint named(String newLabel, String newReadingId) {
        return new StudyPoint(
                dataSetId,
                channel,
                mode,
                loadOhms,
                supplyVolts,
                powerWatts,
                standardUncertaintyWatts,
                newLabel,
                newReadingId,
                caseCelsius,
                runIndex);
    }

    /** Returns this point with a case temperature and a place in a row of readings, or without. */
    public StudyPoint warmed(OptionalDouble newCaseCelsius, OptionalInt newRunIndex) {
        return new StudyPoint(
                dataSetId,
                channel,
                mode,
                loadOhms,
                supplyVolts,
                powerWatts,
                standardUncertaintyWatts,
                label,
                readingId,
                newCaseCelsius,
                newRunIndex);
    }

    /** Returns a few words that tell the point from others: its label, or else load, mode, volts and watts. */
    public String inWords() {
        String figures = TEXTS.text(
                "point.figures",
                StudyWords.say("%.4g", powerWatts),
                StudyWords.load(loadOhms, mode),
                StudyWords.say("%.4g", supplyVolts));
        return label.isEmpty() ? figures : label + " (" + figures + ")";
    }
}

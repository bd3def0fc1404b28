// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.CombinedParts;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Reading;

/** Makes the points of a study from readings of the test log. */
public final class StudyReadings {
    /** A reading is not taken to repeat better than this, relative (common practice, no source). */
    private static final double LEAST_OWN_RELATIVE = 0.0005;

    private StudyReadings() {}

    /**
     * Returns a point for each channel that reached its end point; the others give only bounds. The load is the nominal
     * one, and the power is brought to it: the output voltage hardly changes with so small a change of load, so the
     * power goes with the conductance. Only the uncertainty that is the reading's own is taken over.
     *
     * @param dataSetId the name of the data set
     * @param readingId the id of the reading
     * @param reading a reading that is not voided
     */
    public static List<StudyPoint> points(String dataSetId, String readingId, Reading reading) {
        List<StudyPoint> points = new ArrayList<>();
        for (ChannelReading channel : reading.channels()) {
            if (channel.outcome() == EndPointOutcome.REACHED) {
                double toNominal = channel.loadOhms() / reading.nominalLoadOhms();
                double powerWatts = toNominal * channel.powerWatts();
                double own = toNominal * CombinedParts.of(channel).watts(false);
                points.add(new StudyPoint(
                        dataSetId,
                        channel.channel(),
                        reading.mode(),
                        reading.nominalLoadOhms(),
                        channel.supplyVolts(),
                        powerWatts,
                        Math.max(own, LEAST_OWN_RELATIVE * powerWatts),
                        "",
                        readingId,
                        reading.conditions().caseCelsius(),
                        OptionalInt.empty()));
            }
        }
        return List.copyOf(points);
    }

    /**
     * Returns the relative standard uncertainty of power that the readings have in common, as root mean square over
     * their channels; 0 when there is none.
     */
    public static double sharedRelativeUncertainty(List<Reading> readings) {
        double squares = 0;
        int count = 0;
        for (Reading reading : readings) {
            for (ChannelReading channel : reading.channels()) {
                if (channel.powerWatts() > 0) {
                    double relative = CombinedParts.of(channel).watts(true) / channel.powerWatts();
                    squares += relative * relative;
                    count++;
                }
            }
        }
        return count == 0 ? 0 : Math.sqrt(squares / count);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Optional;

/** An output stage: how much it takes for what it puts out. */
public sealed interface OutputStage permits ClassAbStage, ClassDStage {
    /**
     * Returns where the power goes, on average over the drive.
     *
     * @throws IllegalArgumentException with the sentence of {@link #objection} if the stage cannot do it
     */
    default PowerSplit split(Drive drive, StageLoad load) {
        double seconds = 0;
        double outputJoules = 0;
        double inputJoules = 0;
        for (Drive.Stretch stretch : drive.stretches()) {
            PowerSplit part = steady(stretch.drive(), load);
            seconds += stretch.seconds();
            outputJoules += stretch.seconds() * part.outputWatts();
            inputJoules += stretch.seconds() * part.inputWatts();
        }
        return new PowerSplit(outputJoules / seconds, inputJoules / seconds);
    }

    /** Returns where the power goes in the stretch of a drive with the most heat. */
    default PowerSplit hottestStretch(Drive drive, StageLoad load) {
        PowerSplit hottest = steady(drive.stretches().get(0).drive(), load);
        for (Drive.Stretch stretch : drive.stretches()) {
            PowerSplit part = steady(stretch.drive(), load);
            if (stretch.seconds() > 0 && part.lossWatts() > hottest.lossWatts()) {
                hottest = part;
            }
        }
        return hottest;
    }

    /** Returns where the power goes in one steady stretch; as {@link #split}. */
    PowerSplit steady(Drive.Steady drive, StageLoad load);

    /** Returns why the stage cannot put this out, with a remedy; empty when it can. */
    Optional<String> objection(Drive drive, StageLoad load);

    /**
     * Returns the sine, without clipping, at which the stage gives off the most heat.
     *
     * @param load what hangs on it
     * @param mostOutputVoltsRms not more than this, in RMS volts, above 0
     */
    WorstLevel worstSine(StageLoad load, double mostOutputVoltsRms);
}

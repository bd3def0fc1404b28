// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/** What arrives at the amplifier's terminals. */
public sealed interface SupplyAnswer permits SupplyAnswer.Delivered, SupplyAnswer.InLimit, SupplyNoSolution {
    /**
     * The supply gives what is wanted.
     *
     * @param amps average current in amperes
     * @param terminalVolts at the amplifier's terminals
     * @param outputVolts at the supply's own terminals
     * @param cableDropVolts lost in the cable
     * @param cableWatts turned into heat in the cable by the average current
     * @param sourceWatts turned into heat in the supply's internal resistance by the average current
     */
    record Delivered(
            double amps,
            double terminalVolts,
            double outputVolts,
            double cableDropVolts,
            double cableWatts,
            double sourceWatts)
            implements SupplyAnswer {
        public Delivered {
            Checks.notNegative(amps, "amps");
            Checks.notNegative(terminalVolts, "terminalVolts");
            Checks.notNegative(outputVolts, "outputVolts");
            Checks.notNegative(cableDropVolts, "cableDropVolts");
            Checks.notNegative(cableWatts, "cableWatts");
            Checks.notNegative(sourceWatts, "sourceWatts");
        }

        /** Returns the power at the amplifier's terminals in watts. */
        public double terminalWatts() {
            return terminalVolts * amps;
        }
    }

    /**
     * More current is wanted than the supply gives, so it folds back into its limit.
     *
     * @param limitAmps the limit
     * @param terminalVolts where the amplifier's terminals settle; empty when they fall until the amplifier stops, as
     *     with a demand that does not shrink with the volts
     * @param highestWatts what the supply can bring to the terminals just before it limits
     * @param reason what is the matter, a sentence
     * @param remedy what to do, a sentence
     */
    record InLimit(double limitAmps, OptionalDouble terminalVolts, double highestWatts, String reason, String remedy)
            implements SupplyAnswer {
        public InLimit {
            Checks.positive(limitAmps, "limitAmps");
            Checks.present(terminalVolts, "terminalVolts")
                    .ifPresent(value -> Checks.notNegative(value, "terminalVolts"));
            Checks.notNegative(highestWatts, "highestWatts");
            Checks.named(reason, "reason");
            Checks.named(remedy, "remedy");
        }
    }
}

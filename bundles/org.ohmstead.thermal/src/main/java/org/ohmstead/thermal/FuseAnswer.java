// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.OptionalDouble;

/** What a current does to a fuse. */
public sealed interface FuseAnswer
        permits FuseAnswer.Carries, FuseAnswer.AboveContinuous, FuseAnswer.Opens, SupplyNoSolution {
    /**
     * It carries the current for ever.
     *
     * @param currentRatio RMS over rating, at most {@link FuseBank#CONTINUOUS_RATIO}
     */
    record Carries(double currentRatio) implements FuseAnswer {
        public Carries {
            Checks.notNegative(currentRatio, "currentRatio");
        }
    }

    /**
     * More than it is meant to carry for ever, but never opening within its table: it gets hot and ages.
     *
     * @param currentRatio RMS over rating
     * @param reason what is the matter, a sentence
     * @param remedy what to do, a sentence
     */
    record AboveContinuous(double currentRatio, String reason, String remedy) implements FuseAnswer {
        public AboveContinuous {
            Checks.positive(currentRatio, "currentRatio");
            Checks.named(reason, "reason");
            Checks.named(remedy, "remedy");
        }
    }

    /**
     * It opens, or may.
     *
     * @param currentRatio RMS over rating that opens it
     * @param earliestSeconds from the start; empty when the table does not say
     * @param latestSeconds from the start; empty when the table does not say, or when it need never open
     * @param withinBurst whether a single burst may open it, whatever comes between
     * @param citation where the times come from and how far they can be trusted, to be printed beside them
     * @param reason what is the matter, a sentence
     * @param remedy what to do, a sentence
     */
    record Opens(
            double currentRatio,
            OptionalDouble earliestSeconds,
            OptionalDouble latestSeconds,
            boolean withinBurst,
            String citation,
            String reason,
            String remedy)
            implements FuseAnswer {
        public Opens {
            Checks.positive(currentRatio, "currentRatio");
            Checks.present(earliestSeconds, "earliestSeconds");
            Checks.present(latestSeconds, "latestSeconds");
            Checks.named(citation, "citation");
            Checks.named(reason, "reason");
            Checks.named(remedy, "remedy");
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.OptionalDouble;
import org.ohmstead.model.PulseRule;

/**
 * How long a resistor takes more than the power allowed for ever, from the one overload that its maker states, by one of two models.
 *
 * @param rule the overload that the maker allows
 * @param model how to go from there to others
 */
public record PulseCurve(PulseRule rule, PulseModel model) {
    public PulseCurve {
        Checks.present(rule, "rule");
        Checks.present(model, "model");
    }

    /**
     * What bursts that come again and again do to a resistor.
     *
     * @param averageRatio mean power over the power allowed for ever
     * @param longestBurstSeconds how long one burst may last from cold; empty for ever
     * @param peakRiseRatio by the first-order model, the rise at the end of a burst over the rise allowed, once the bursts have gone on for
     *     long; empty by the other model
     * @param averageHolds whether the mean power is allowed
     * @param peakHolds whether the burst is short enough
     */
    public record Bursts(
            double averageRatio,
            OptionalDouble longestBurstSeconds,
            OptionalDouble peakRiseRatio,
            boolean averageHolds,
            boolean peakHolds) {
        /** Returns whether the resistor may take them for as long as one likes: both the mean power and the burst are allowed. */
        public boolean holds() {
            return averageHolds && peakHolds;
        }
    }

    /** Returns the time constant in seconds at which the maker's overload just reaches the rise of the rated power. */
    public double timeConstantSeconds() {
        return -rule.durationSeconds() / Math.log1p(-1 / rule.overloadRatio());
    }

    /**
     * Returns the longest time in seconds from cold; empty when it may last for ever.
     *
     * @param overloadRatio times the power allowed for ever, above 0
     */
    public OptionalDouble longestSeconds(double overloadRatio) {
        Checks.positive(overloadRatio, "overloadRatio");
        if (overloadRatio <= 1) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                switch (model) {
                    case CONSTANT_ENERGY -> rule.overloadRatio() * rule.durationSeconds() / overloadRatio;
                    case FIRST_ORDER -> -timeConstantSeconds() * Math.log1p(-1 / overloadRatio);
                });
    }

    /**
     * Returns how many times the power allowed for ever may be taken once, from cold; at least 1.
     *
     * @param seconds for how long, above 0
     */
    public double highestRatio(double seconds) {
        Checks.positive(seconds, "seconds");
        return switch (model) {
            case CONSTANT_ENERGY -> Math.max(1, rule.overloadRatio() * rule.durationSeconds() / seconds);
            case FIRST_ORDER -> -1 / Math.expm1(-seconds / timeConstantSeconds());
        };
    }

    /** Returns whether an overload goes beyond the one that the maker states, so that the model alone speaks for it. */
    public boolean isBeyondRule(double overloadRatio) {
        return Checks.positive(overloadRatio, "overloadRatio") > rule.overloadRatio();
    }

    /**
     * Judges bursts that come again and again: the mean power must be allowed for ever, and each burst must be short enough. By the
     * first-order model the second is asked of the resistor as warm as the bursts before have made it.
     *
     * @param burstRatio power during the burst over the power allowed for ever, above 0
     * @param betweenRatio the same between the bursts, at least 0
     * @param burstSeconds length of the burst, above 0
     * @param periodSeconds from one burst to the next, above {@code burstSeconds}
     */
    public Bursts bursts(double burstRatio, double betweenRatio, double burstSeconds, double periodSeconds) {
        Checks.positive(burstRatio, "burstRatio");
        Checks.notNegative(betweenRatio, "betweenRatio");
        Checks.positive(burstSeconds, "burstSeconds");
        if (!(periodSeconds > burstSeconds) || !Double.isFinite(periodSeconds)) {
            throw new IllegalArgumentException(
                    "periodSeconds is " + periodSeconds + "; it must be above burstSeconds, which is " + burstSeconds);
        }
        double pauseSeconds = periodSeconds - burstSeconds;
        double average = (burstRatio * burstSeconds + betweenRatio * pauseSeconds) / periodSeconds;
        OptionalDouble longest = longestSeconds(burstRatio);
        boolean peakHolds = longest.isEmpty() || burstSeconds <= longest.getAsDouble();
        OptionalDouble rise = OptionalDouble.empty();
        if (model == PulseModel.FIRST_ORDER) {
            double tau = timeConstantSeconds();
            // With heating by (1 - exp) towards each ratio in turn, the rise at the end of a burst returns to itself
            // after a period.
            double kept = Math.exp(-burstSeconds / tau);
            double warmed = -burstRatio * Math.expm1(-burstSeconds / tau)
                    - kept * betweenRatio * Math.expm1(-pauseSeconds / tau);
            rise = OptionalDouble.of(-warmed / Math.expm1(-periodSeconds / tau));
            peakHolds &= rise.getAsDouble() <= 1;
        }
        return new Bursts(average, longest, rise, average <= 1, peakHolds);
    }
}

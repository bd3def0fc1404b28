// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Price;
import org.ohmstead.units.text.Messages;

/**
 * What a watt costs: the price over the power of all outputs together. The price counts as exact; only the power is uncertain.
 *
 * @param power of the weakest channel
 * @param price what the amplifier cost
 * @param outputs how many outputs give that power at once: the channels in stereo, half as many bridged, one for a single one
 * @param perWatt the price over that power, in the currency per watt
 * @param base period to whose money it is brought; empty when it is not
 * @param adjustedPerWatt the same brought to the money of that period; empty when it is not
 */
public record PricePerWatt(
        SubjectPower power,
        Price price,
        int outputs,
        Estimate perWatt,
        Optional<String> base,
        Optional<Estimate> adjustedPerWatt) {
    private static final Messages TEXTS = Messages.of(PricePerWatt.class);

    /**
     * Returns the price per watt, or nothing when the price or the count of channels is not known.
     *
     * @param power of the weakest channel
     * @param mode how the channels met the load
     */
    public static Optional<PricePerWatt> of(SubjectPower power, Mode mode) {
        int channels = power.subject().channelCount();
        int outputs =
                switch (mode) {
                    case STEREO -> channels;
                    case BRIDGED -> channels / 2;
                    case SINGLE -> 1;
                };
        if (outputs < 1) {
            return Optional.empty();
        }
        return power.subject().price().map(price -> {
            Estimate watts = power.watts();
            double perWatt = price.amount() / (outputs * watts.value());
            Estimate estimate = new Estimate(
                    perWatt, perWatt * watts.standardUncertainty() / watts.value(), watts.degreesOfFreedom());
            return new PricePerWatt(power, price, outputs, estimate, Optional.empty(), Optional.empty());
        });
    }

    /**
     * Returns this brought to the money of another period: times index(base) over index(bought).
     *
     * @param index the user's table
     * @param basePeriod period of the table
     * @throws HistoryException when the table lacks one of the two periods
     */
    public PricePerWatt adjusted(PriceIndex index, String basePeriod) throws HistoryException {
        double factor = index.factor(price.on(), basePeriod);
        return new PricePerWatt(
                power,
                price,
                outputs,
                perWatt,
                Optional.of(basePeriod),
                Optional.of(new Estimate(
                        factor * perWatt.value(), factor * perWatt.standardUncertainty(), perWatt.degreesOfFreedom())));
    }

    /** Returns the price in the money of the base period; empty when it was not brought there. */
    public OptionalDouble adjustedAmount() {
        return adjustedPerWatt
                .map(estimate -> OptionalDouble.of(
                        estimate.value() * outputs * power.own().value()))
                .orElse(OptionalDouble.empty());
    }

    /** Returns it in a whole sentence. */
    public String sentence() {
        String unit = price.currency() + "/W";
        return TEXTS.text(
                adjustedPerWatt.isPresent() ? "price.adjusted" : "price.sentence",
                power.subject().name(),
                Words.quantity(price.amount(), price.currency()),
                price.on().toString(),
                Words.quantity(perWatt.value(), unit),
                Integer.toString(outputs),
                Words.quantity(power.own().value(), "W"),
                adjustedPerWatt
                        .map(estimate -> Words.quantity(estimate.value(), unit))
                        .orElse(""),
                base.orElse(""));
    }
}

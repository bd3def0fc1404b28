// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.load.Derating;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;

/** The kinds of resistors of a stock, prepared for the search. */
final class Kinds {
    private static final int LONG_BITS = 62;

    private final List<Resistor> resistors = new ArrayList<>();
    private final int[] limits;
    private final Features[] features;
    private final long[] exactUnits;
    private final double ambientCelsius;
    private final double bandRadiansPerSecond;
    private final boolean banded;
    private final int scale;

    Kinds(SearchRequest request) {
        List<Stock.Item> items = request.stock().items();
        limits = new int[items.size()];
        int digits = 0;
        boolean inductive = false;
        for (int kind = 0; kind < limits.length; kind++) {
            Stock.Item item = items.get(kind);
            resistors.add(item.resistor());
            limits[kind] = Math.min(item.count(), request.maxParts());
            digits = Math.max(digits, BigDecimal.valueOf(item.resistor().ohms()).scale());
            inductive |= item.resistor().traits().inductanceHenries().isPresent();
        }
        scale = digits;
        ambientCelsius = request.ambientCelsius();
        bandRadiansPerSecond = 2 * Math.PI * request.bandHz().orElse(0);
        banded = inductive && request.bandHz().isPresent();
        features = resistors.stream().map(this::measured).toArray(Features[]::new);
        exactUnits = new long[limits.length];
        for (int kind = 0; kind < limits.length; kind++) {
            BigInteger units = exact(kind).numerator();
            exactUnits[kind] = units.bitLength() <= LONG_BITS ? units.longValueExact() : 0;
        }
    }

    int size() {
        return limits.length;
    }

    /** Returns how many of each kind a network can hold. */
    int[] limits() {
        return limits.clone();
    }

    Resistor resistor(int kind) {
        return resistors.get(kind);
    }

    /** Returns which kind a resistor is of. */
    int kind(Resistor resistor) {
        return resistors.indexOf(resistor);
    }

    /** Returns whether impedances at the highest frequency of the band are needed. */
    boolean banded() {
        return banded;
    }

    /** Returns by what a resistance in ohms is multiplied to be in exact units. */
    Fraction unitsPerOhm() {
        return new Fraction(BigInteger.TEN.pow(scale), BigInteger.ONE);
    }

    Fraction exact(int kind) {
        BigDecimal units = BigDecimal.valueOf(resistor(kind).ohms()).movePointRight(scale);
        return new Fraction(units.toBigIntegerExact(), BigInteger.ONE);
    }

    /** Returns the exact resistance in units, or 0 where that does not fit into a long. */
    long exactUnits(int kind) {
        return exactUnits[kind];
    }

    Features features(int kind) {
        return features[kind];
    }

    /** Returns the power in watts that pieces together take, which no network of them exceeds; without a rating it is 0. */
    double powerWatts(Bag bag) {
        double watts = 0;
        for (int kind = 0; kind < limits.length; kind++) {
            watts += bag.count(kind) * features[kind].powerWatts;
        }
        return watts;
    }

    private Features measured(Resistor resistor) {
        Features single = new Features();
        single.ohms = resistor.ohms();
        single.lowOhms = resistor.ohms() * (1 - resistor.toleranceRatio());
        single.highOhms = resistor.ohms() * (1 + resistor.toleranceRatio());
        // Without a rating no power is proven; 0 keeps that through every joint.
        single.powerWatts = Derating.allowedWatts(resistor, ambientCelsius).orElse(0);
        single.bandRealOhms = resistor.ohms();
        single.bandImaginaryOhms =
                bandRadiansPerSecond * resistor.traits().inductanceHenries().orElse(0);
        return single;
    }
}

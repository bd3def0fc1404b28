// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * An exact number above or equal to 0, not necessarily in lowest terms.
 *
 * @param numerator at least 0
 * @param denominator above 0
 */
record Fraction(BigInteger numerator, BigInteger denominator) implements Comparable<Fraction> {
    static Fraction of(long numerator, long denominator) {
        return new Fraction(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    /** Returns the shortest decimal that reads back as the double, which is what somebody wrote who meant 8.2. */
    static Fraction ofDecimal(double value) {
        BigDecimal decimal = BigDecimal.valueOf(value);
        if (decimal.scale() <= 0) {
            return new Fraction(decimal.toBigIntegerExact(), BigInteger.ONE);
        }
        return new Fraction(decimal.unscaledValue(), BigInteger.TEN.pow(decimal.scale()));
    }

    Fraction plus(Fraction other) {
        return new Fraction(
                numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator));
    }

    Fraction parallelWith(Fraction other) {
        return new Fraction(
                numerator.multiply(other.numerator),
                numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)));
    }

    Fraction times(Fraction other) {
        return new Fraction(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    Fraction distanceTo(Fraction other) {
        return new Fraction(
                numerator
                        .multiply(other.denominator)
                        .subtract(other.numerator.multiply(denominator))
                        .abs(),
                denominator.multiply(other.denominator));
    }

    @Override
    public int compareTo(Fraction other) {
        return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
    }
}

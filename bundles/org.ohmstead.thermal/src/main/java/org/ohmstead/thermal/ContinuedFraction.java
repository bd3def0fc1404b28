// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Turns a Foster chain into a Cauer ladder by the continued fraction of its impedance Z(s) = P(s)/Q(s): 1/Z = s C_1 + 1/(R_1 + ...), each
 * step one division of polynomials. Every step loses digits; the numbers carry so many that enough are left.
 */
final class ContinuedFraction {
    private static final int DIGITS = 60;
    private static final int DIGITS_PER_STAGE = 40;

    private ContinuedFraction() {}

    static List<CauerStage> ladder(List<FosterStage> chain) {
        List<FosterStage> poles = merged(chain);
        MathContext digits = new MathContext(DIGITS + DIGITS_PER_STAGE * poles.size());
        // With coefficients from the constant term up: Q = product of (1 + s tau_i), P = sum of R_i times the other
        // factors.
        BigDecimal[] below = {BigDecimal.ONE};
        BigDecimal[] above = {};
        for (FosterStage pole : poles) {
            BigDecimal tau = new BigDecimal(pole.tauSeconds());
            above = sum(timesFactor(above, tau, digits), scaled(below, new BigDecimal(pole.kelvinPerWatt()), digits));
            below = timesFactor(below, tau, digits);
        }
        List<CauerStage> ladder = new ArrayList<>();
        for (int degree = poles.size(); degree > 0; degree--) {
            BigDecimal capacity = below[degree].divide(above[degree - 1], digits);
            BigDecimal[] rest = new BigDecimal[degree];
            rest[0] = below[0];
            for (int i = 1; i < degree; i++) {
                rest[i] = below[i].subtract(capacity.multiply(above[i - 1], digits), digits);
            }
            BigDecimal resistance = above[degree - 1].divide(rest[degree - 1], digits);
            BigDecimal[] remainder = new BigDecimal[degree - 1];
            for (int i = 0; i < degree - 1; i++) {
                remainder[i] = above[i].subtract(resistance.multiply(rest[i], digits), digits);
            }
            ladder.add(new CauerStage(resistance.doubleValue(), capacity.doubleValue()));
            below = rest;
            above = remainder;
        }
        return ladder;
    }

    private static List<FosterStage> merged(List<FosterStage> chain) {
        List<FosterStage> merged = new ArrayList<>();
        for (FosterStage stage : chain.stream()
                .sorted(Comparator.comparingDouble(FosterStage::tauSeconds))
                .toList()) {
            int last = merged.size() - 1;
            if (last >= 0 && merged.get(last).tauSeconds() == stage.tauSeconds()) {
                double together = merged.get(last).kelvinPerWatt() + stage.kelvinPerWatt();
                merged.set(last, new FosterStage(together, stage.tauSeconds()));
            } else {
                merged.add(stage);
            }
        }
        return merged;
    }

    private static BigDecimal[] timesFactor(BigDecimal[] polynomial, BigDecimal tau, MathContext digits) {
        if (polynomial.length == 0) {
            return polynomial;
        }
        BigDecimal[] product = new BigDecimal[polynomial.length + 1];
        product[0] = polynomial[0];
        for (int i = 1; i < polynomial.length; i++) {
            product[i] = polynomial[i].add(tau.multiply(polynomial[i - 1], digits), digits);
        }
        product[polynomial.length] = tau.multiply(polynomial[polynomial.length - 1], digits);
        return product;
    }

    private static BigDecimal[] scaled(BigDecimal[] polynomial, BigDecimal factor, MathContext digits) {
        BigDecimal[] product = new BigDecimal[polynomial.length];
        for (int i = 0; i < product.length; i++) {
            product[i] = polynomial[i].multiply(factor, digits);
        }
        return product;
    }

    private static BigDecimal[] sum(BigDecimal[] one, BigDecimal[] other) {
        BigDecimal[] longer = one.length < other.length ? other : one;
        BigDecimal[] shorter = longer == other ? one : other;
        BigDecimal[] sum = longer.clone();
        for (int i = 0; i < shorter.length; i++) {
            sum[i] = sum[i].add(shorter[i]);
        }
        return sum;
    }
}

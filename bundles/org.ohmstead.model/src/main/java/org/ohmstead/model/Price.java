// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;

/**
 * What the amplifier cost.
 *
 * @param amount in units of the currency, at least 0
 * @param currency which currency, usually its three letters of ISO 4217; not blank
 * @param on day for which the price holds
 */
public record Price(double amount, String currency, LocalDate on) {
    public Price {
        Checks.notNegative(amount, "amount");
        Checks.named(currency, "currency");
        Checks.present(on, "on");
    }

    /** Returns this price with another amount. */
    public Price withAmount(double newAmount) {
        return new Price(newAmount, currency, on);
    }

    /** Returns this price with another currency. */
    public Price withCurrency(String newCurrency) {
        return new Price(amount, newCurrency, on);
    }

    /** Returns this price with another day. */
    public Price withOn(LocalDate newOn) {
        return new Price(amount, currency, newOn);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Reads and prints quantities as people at a bench write them. Calculations elsewhere use plain SI doubles; this is for the edges:
 * forms, tables, axes and messages.
 *
 * <pre>{@code
 * Quantity load = QuantityParser.parse("4R7", Unit.OHM);                    // 4.7 ohm
 * Quantity supply = QuantityParser.parse("13,8 V", Unit.VOLT);              // 13.8 V
 * String text = QuantityFormat.LOCALE_FREE.format(new Quantity(0.0047, Unit.OHM)); // "4.7 mΩ"
 * double gain = Decibels.ofPowerRatio(2);                                   // 3.0103 dB
 * }</pre>
 */
package org.ohmstead.units;

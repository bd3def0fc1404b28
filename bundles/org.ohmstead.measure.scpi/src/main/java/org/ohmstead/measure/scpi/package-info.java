// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Instruments that speak SCPI over TCP, by themselves and as a bench. A {@link org.ohmstead.measure.scpi.ScpiConnection} holds the
 * conversation, bounded in time and size; a {@link org.ohmstead.measure.scpi.CommandSet}, a text file, says what an instrument is told;
 * {@link org.ohmstead.measure.scpi.PowerSupply}, {@link org.ohmstead.measure.scpi.Multimeter},
 * {@link org.ohmstead.measure.scpi.Generator} and {@link org.ohmstead.measure.scpi.Oscilloscope} are the roles, and
 * {@link org.ohmstead.measure.scpi.ScpiBenchDriver} makes a bench of them.
 *
 * <pre>{@code
 * CommandSet set = CommandSets.shipped().get("multimeter", InstrumentRole.MULTIMETER);
 * try (ScpiConnection connection = ScpiConnection.open(ScpiAddress.parse("192.0.2.7:5025"), ScpiOptions.USUAL)) {
 *     Multimeter meter = new Multimeter(connection, set, "");
 *     meter.begin(true);
 *     double supplyVolts = meter.measureVolts();
 * }
 * }</pre>
 */
package org.ohmstead.measure.scpi;

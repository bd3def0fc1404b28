// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Labelled fields whose units and refusals stand beside them, laid out in aligned columns. What does not read is kept, marked and
 * explained, and never reaches the project.
 *
 * <pre>{@code
 * FormSection supply = new FormSection(parent, "supply", "Supply");
 * QuantityField volts = supply.quantity("volts", "&Voltage", Measure.of(Unit.VOLT));
 * volts.onCommit(value -> session.edit("Change supply voltage", p -> withSupplyVolts(p, value)));
 * volts.setValue(project.bench().supply().volts());
 * }</pre>
 */
package org.ohmstead.workbench.form;

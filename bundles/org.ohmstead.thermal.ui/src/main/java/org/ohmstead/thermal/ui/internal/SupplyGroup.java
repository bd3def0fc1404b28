// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.CheckField;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.look.MessageLine;

/** What else bounds the supply side: source, continuous current, cable. */
final class SupplyGroup {
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 400;

    private final HeatBindings bindings;
    private final FormSection form;
    private double copperMetres;

    SupplyGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", "Supply side");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        source();
        cable();
        form.note("Set volts and current limit of the supply, and the cable, on the page Bench.");
        MessageLine caution = new MessageLine(parent, "heat.batteryCaution");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(caution);
        caution.setVisible(false);
        bindings.add(project -> {
            boolean battery = project.heat().supply().battery();
            if (battery) {
                caution.show(Severity.WARNING, SupplyCautions.BATTERIES);
            } else {
                caution.clear();
            }
            ((GridData) caution.getLayoutData()).exclude = !battery;
            caution.setVisible(battery);
            caution.requestLayout();
        });
    }

    private void source() {
        CheckField battery = form.check("battery", "The supply is a &battery");
        battery.setHint("A battery has no current limit of its own: only its fuse stands between it and a short.");
        bindings.bind(
                battery,
                "supply.battery",
                "kind of supply",
                heat -> heat.supply().battery(),
                (heat, value) -> heat.withSupply(heat.supply().withBattery(value)));
        OptionalQuantityField source = form.optionalQuantity("source", "Internal re&sistance", Measure.milli(Unit.OHM));
        source.setHint("Fall of the volts over the current, read at the supply's own terminals.");
        source.check(HeatBindings.within(0, Double.MAX_VALUE, "It must not be below 0."));
        bindings.bind(
                source,
                "supply.sourceOhms",
                "internal resistance of the supply",
                heat -> heat.supply().sourceOhms(),
                (heat, value) -> heat.withSupply(heat.supply().withSourceOhms(value)));
        OptionalQuantityField amps =
                form.optionalQuantity("continuous", "Co&ntinuous current", Measure.of(Unit.AMPERE));
        amps.setHint("What the supply gives for as long as one likes; empty: its current limit.");
        amps.check(HeatBindings.positive());
        bindings.bind(
                amps,
                "supply.continuousAmps",
                "continuous current of the supply",
                heat -> heat.supply().continuousAmps(),
                (heat, value) -> heat.withSupply(heat.supply().withContinuousAmps(value)));
    }

    private void cable() {
        OptionalQuantityField limit =
                form.optionalQuantity("cableLimit", "&Insulation at most", Measure.of(Unit.CELSIUS));
        limit.setHint("As printed on the cable; empty: 70 \u00b0C, that of general-purpose PVC.");
        limit.check(HeatBindings.within(
                COLDEST_CELSIUS, HOTTEST_CELSIUS, "It must lie between -60 and 400 \u00b0C, or be left empty."));
        bindings.bind(
                limit,
                "supply.cableLimitCelsius",
                "limit of the cable",
                heat -> heat.supply().cableLimitCelsius(),
                (heat, value) -> heat.withSupply(heat.supply().withCableLimitCelsius(value)));
        OptionalQuantityField outer =
                form.optionalQuantity("cableOuter", "&Outer diameter of a lead", Measure.milli(Unit.METRE));
        outer.setHint("With its insulation; empty: reckoned from the copper and 1 mm of insulation.");
        outer.check(value -> value.ifPresent(metres -> HeatBindings.require(
                metres >= copperMetres,
                "The copper alone is " + HeatWords.number(1000 * copperMetres)
                        + " mm thick, by its cross-section on the page Bench.")));
        bindings.add(project ->
                copperMetres = 2e-3 * Math.sqrt(project.bench().cable().crossSectionSquareMillimetres() / Math.PI));
        bindings.bind(
                outer,
                "supply.cableOuterMetres",
                "outer diameter of the cable",
                heat -> heat.supply().cableOuterMetres(),
                (heat, value) -> heat.withSupply(heat.supply().withCableOuterMetres(value)));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.CheckField;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.look.MessageLine;

/** What else bounds the supply side: source, continuous current, cable. */
final class SupplyGroup {
    private static final Messages TEXTS = Messages.of(SupplyGroup.class);
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 400;

    private final HeatBindings bindings;
    private final FormSection form;
    private double copperMetres;

    SupplyGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", TEXTS.text("supply.heading"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        source();
        cable();
        form.note(TEXTS.text("supply.note"));
        MessageLine caution = new MessageLine(parent, "heat.batteryCaution");
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(caution);
        caution.setVisible(false);
        bindings.add(project -> {
            boolean battery = project.heat().supply().battery();
            if (battery) {
                caution.show(Severity.WARNING, SupplyCautions.batteries());
            } else {
                caution.clear();
            }
            ((GridData) caution.getLayoutData()).exclude = !battery;
            caution.setVisible(battery);
            caution.requestLayout();
        });
    }

    private void source() {
        CheckField battery = form.check("battery", TEXTS.text("supply.battery"));
        battery.setHint(TEXTS.text("supply.battery.hint"));
        bindings.bind(
                battery,
                "supply.battery",
                TEXTS.text("supply.battery.words"),
                heat -> heat.supply().battery(),
                (heat, value) -> heat.withSupply(heat.supply().withBattery(value)));
        OptionalQuantityField source =
                form.optionalQuantity("source", TEXTS.text("supply.source"), Measure.milli(Unit.OHM));
        source.setHint(TEXTS.text("supply.source.hint"));
        source.check(HeatBindings.within(0, Double.MAX_VALUE, TEXTS.text("check.notBelow")));
        bindings.bind(
                source,
                "supply.sourceOhms",
                TEXTS.text("supply.source.words"),
                heat -> heat.supply().sourceOhms(),
                (heat, value) -> heat.withSupply(heat.supply().withSourceOhms(value)));
        OptionalQuantityField amps =
                form.optionalQuantity("continuous", TEXTS.text("supply.continuous"), Measure.of(Unit.AMPERE));
        amps.setHint(TEXTS.text("supply.continuous.hint"));
        amps.check(HeatBindings.positive());
        bindings.bind(
                amps,
                "supply.continuousAmps",
                TEXTS.text("supply.continuous.words"),
                heat -> heat.supply().continuousAmps(),
                (heat, value) -> heat.withSupply(heat.supply().withContinuousAmps(value)));
    }

    private void cable() {
        OptionalQuantityField limit =
                form.optionalQuantity("cableLimit", TEXTS.text("supply.cableLimit"), Measure.of(Unit.CELSIUS));
        limit.setHint(TEXTS.text("supply.cableLimit.hint"));
        limit.check(HeatBindings.within(COLDEST_CELSIUS, HOTTEST_CELSIUS, TEXTS.text("check.hottest")));
        bindings.bind(
                limit,
                "supply.cableLimitCelsius",
                TEXTS.text("supply.cableLimit.words"),
                heat -> heat.supply().cableLimitCelsius(),
                (heat, value) -> heat.withSupply(heat.supply().withCableLimitCelsius(value)));
        OptionalQuantityField outer =
                form.optionalQuantity("cableOuter", TEXTS.text("supply.cableOuter"), Measure.milli(Unit.METRE));
        outer.setHint(TEXTS.text("supply.cableOuter.hint"));
        outer.check(value -> value.ifPresent(metres -> HeatBindings.require(
                metres >= copperMetres, TEXTS.text("supply.cableOuter.check", HeatWords.number(1000 * copperMetres)))));
        bindings.add(project ->
                copperMetres = 2e-3 * Math.sqrt(project.bench().cable().crossSectionSquareMillimetres() / Math.PI));
        bindings.bind(
                outer,
                "supply.cableOuterMetres",
                TEXTS.text("supply.cableOuter.words"),
                heat -> heat.supply().cableOuterMetres(),
                (heat, value) -> heat.withSupply(heat.supply().withCableOuterMetres(value)));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.look.Ids;

/** How the amplifier gets rid of its heat, and how hot it may get. */
final class CaseGroup {
    private static final Messages TEXTS = Messages.of(CaseGroup.class);
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 400;

    private final HeatBindings bindings;
    private final FormSection form;

    CaseGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", TEXTS.text("case.heading"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        path();
        limits();
        Label origin = Ids.name(form.note(""), "heat.origin");
        bindings.add(project -> {
            boolean own = project.heat().amplifier().caseKelvinPerWatt().isPresent();
            boolean listed = project.amplifier().heatSinkKelvinPerWatt().isPresent();
            boolean sized = project.heat().amplifier().sinkSize().isPresent();
            origin.setText(
                    own
                            ? TEXTS.text("case.origin.own")
                            : listed
                                    ? TEXTS.text(
                                            "case.origin.listed",
                                            HeatWords.number(project.amplifier()
                                                    .heatSinkKelvinPerWatt()
                                                    .getAsDouble()))
                                    : sized ? TEXTS.text("case.origin.sized") : TEXTS.text("case.origin.none"));
            origin.requestLayout();
        });
    }

    private void path() {
        RangeField toAir = new RangeField(form, "case", TEXTS.text("case.toAir"), Measure.of(Unit.KELVIN_PER_WATT));
        toAir.setHint(TEXTS.text("case.toAir.hint"));
        toAir.check(HeatBindings.above(0, TEXTS.text("check.above")));
        bindings.bind(
                toAir,
                "amplifier.caseKelvinPerWatt",
                TEXTS.text("case.toAir.words"),
                heat -> heat.amplifier().caseKelvinPerWatt(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withCaseKelvinPerWatt(value)));
        RangeField capacity = new RangeField(form, "capacity", TEXTS.text("case.capacity"), Measure.named("J/K"));
        capacity.setHint(TEXTS.text("case.capacity.hint"));
        capacity.check(HeatBindings.above(0, TEXTS.text("check.above")));
        bindings.bind(
                capacity,
                "amplifier.caseJoulesPerKelvin",
                TEXTS.text("case.capacity.words"),
                heat -> heat.amplifier().caseJoulesPerKelvin(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withCaseJoulesPerKelvin(value)));
        RangeField device = new RangeField(form, "device", TEXTS.text("case.device"), Measure.of(Unit.KELVIN_PER_WATT));
        device.setHint(TEXTS.text("case.device.hint"));
        device.check(range -> HeatBindings.require(range.low() >= 0, TEXTS.text("check.notBelow")));
        bindings.bind(
                device,
                "amplifier.deviceKelvinPerWatt",
                TEXTS.text("case.device.words"),
                heat -> heat.amplifier().deviceKelvinPerWatt(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withDeviceKelvinPerWatt(value)));
    }

    private void limits() {
        OptionalQuantityField caseLimit =
                form.optionalQuantity("caseLimit", TEXTS.text("case.limit"), Measure.of(Unit.CELSIUS));
        caseLimit.setHint(TEXTS.text("case.limit.hint"));
        caseLimit.check(HeatBindings.within(COLDEST_CELSIUS, HOTTEST_CELSIUS, TEXTS.text("check.hottest")));
        bindings.bind(
                caseLimit,
                "amplifier.caseLimitCelsius",
                TEXTS.text("case.limit.words"),
                heat -> heat.amplifier().caseLimitCelsius(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withCaseLimitCelsius(value)));
        OptionalQuantityField deviceLimit =
                form.optionalQuantity("deviceLimit", TEXTS.text("case.deviceLimit"), Measure.of(Unit.CELSIUS));
        deviceLimit.setHint(TEXTS.text("case.deviceLimit.hint"));
        deviceLimit.check(HeatBindings.within(COLDEST_CELSIUS, HOTTEST_CELSIUS, TEXTS.text("check.hottest")));
        bindings.bind(
                deviceLimit,
                "amplifier.deviceLimitCelsius",
                TEXTS.text("case.deviceLimit.words"),
                heat -> heat.amplifier().deviceLimitCelsius(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withDeviceLimitCelsius(value)));
    }
}

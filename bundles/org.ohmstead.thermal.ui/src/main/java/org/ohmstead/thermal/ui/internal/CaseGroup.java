// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.look.Ids;

/** How the amplifier gets rid of its heat, and how hot it may get. */
final class CaseGroup {
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 400;
    private static final String LIMIT = "It must lie between -60 and 400 \u00b0C, or be left empty.";

    private final HeatBindings bindings;
    private final FormSection form;

    CaseGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", "How it gets rid of it");
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
                            ? "The view Thermal identification finds resistance and capacity from a logged warm-up."
                            : listed
                                    ? "Empty: the sink's "
                                            + HeatWords.number(project.amplifier()
                                                    .heatSinkKelvinPerWatt()
                                                    .getAsDouble())
                                            + " K/W from the amplifier's page is taken."
                                    : sized
                                            ? "Empty: the resistance is estimated from the sink's size."
                                            : "Log a warm-up at a known power; the view Thermal identification finds"
                                                    + " resistance and capacity from it.");
            origin.requestLayout();
        });
    }

    private void path() {
        RangeField toAir = new RangeField(form, "case", "&Case to air", Measure.of(Unit.KELVIN_PER_WATT));
        toAir.setHint("How much warmer than the air the case gets for each watt of heat, in the end.");
        toAir.check(HeatBindings.above(0, "It must lie above 0."));
        bindings.bind(
                toAir,
                "amplifier.caseKelvinPerWatt",
                "resistance from case to air",
                heat -> heat.amplifier().caseKelvinPerWatt(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withCaseKelvinPerWatt(value)));
        RangeField capacity = new RangeField(form, "capacity", "&Heat capacity", Measure.named("J/K"));
        capacity.setHint("The heat that warms the case by a kelvin: about 0.9 kJ/K for each kilogram of aluminium.");
        capacity.check(HeatBindings.above(0, "It must lie above 0."));
        bindings.bind(
                capacity,
                "amplifier.caseJoulesPerKelvin",
                "heat capacity of the case",
                heat -> heat.amplifier().caseJoulesPerKelvin(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withCaseJoulesPerKelvin(value)));
        RangeField device = new RangeField(form, "device", "&Devices to case", Measure.of(Unit.KELVIN_PER_WATT));
        device.setHint("From the junctions of all output devices together to the case, washers and grease included.");
        device.check(range -> HeatBindings.require(range.low() >= 0, "It must not be below 0."));
        bindings.bind(
                device,
                "amplifier.deviceKelvinPerWatt",
                "resistance from devices to case",
                heat -> heat.amplifier().deviceKelvinPerWatt(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withDeviceKelvinPerWatt(value)));
    }

    private void limits() {
        OptionalQuantityField caseLimit = form.optionalQuantity("caseLimit", "Case at &most", Measure.of(Unit.CELSIUS));
        caseLimit.setHint("The hottest that the case may get; above about 60 \u00b0C metal burns skin at a touch.");
        caseLimit.check(HeatBindings.within(COLDEST_CELSIUS, HOTTEST_CELSIUS, LIMIT));
        bindings.bind(
                caseLimit,
                "amplifier.caseLimitCelsius",
                "limit of the case",
                heat -> heat.amplifier().caseLimitCelsius(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withCaseLimitCelsius(value)));
        OptionalQuantityField deviceLimit =
                form.optionalQuantity("deviceLimit", "&Junctions at most", Measure.of(Unit.CELSIUS));
        deviceLimit.setHint("The hottest that a junction may get, from the data of the output devices.");
        deviceLimit.check(HeatBindings.within(COLDEST_CELSIUS, HOTTEST_CELSIUS, LIMIT));
        bindings.bind(
                deviceLimit,
                "amplifier.deviceLimitCelsius",
                "limit of the junctions",
                heat -> heat.amplifier().deviceLimitCelsius(),
                (heat, value) -> OutputGroup.with(heat, heat.amplifier().withDeviceLimitCelsius(value)));
    }
}

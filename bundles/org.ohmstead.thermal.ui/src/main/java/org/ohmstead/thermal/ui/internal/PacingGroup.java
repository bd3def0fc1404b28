// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Pacing;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.CheckField;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.PercentField;
import org.ohmstead.workbench.form.QuantityField;

/** How long the handling takes, and how much room stays below each limit. */
final class PacingGroup {
    private static final double MOST_MARGIN_RATIO = 0.95;

    private final HeatBindings bindings;
    private final FormSection form;

    PacingGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", "Pacing");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        times();
        margins();
        new RestsLine(parent, form, bindings);
    }

    private void times() {
        QuantityField step = form.quantity("step", "Signal of a step is o&n", Measure.of(Unit.SECOND));
        step.check(value -> HeatBindings.require(value > 0, "It must be above 0."));
        bind(step, "stepSeconds", "length of a step", Pacing::stepSeconds, Pacing::withStepSeconds);
        QuantityField load = change("loadChange", "Strapping a new &load");
        bind(
                load,
                "loadChangeSeconds",
                "time of a change of load",
                Pacing::loadChangeSeconds,
                Pacing::withLoadChangeSeconds);
        QuantityField mode = change("modeChange", "Wiring another &mode");
        bind(
                mode,
                "modeChangeSeconds",
                "time of a change of mode",
                Pacing::modeChangeSeconds,
                Pacing::withModeChangeSeconds);
        QuantityField supply = change("supplyChange", "Other supply &volts");
        bind(
                supply,
                "supplyChangeSeconds",
                "time of a change of supply volts",
                Pacing::supplyChangeSeconds,
                Pacing::withSupplyChangeSeconds);
    }

    private QuantityField change(String id, String label) {
        QuantityField field = form.quantity(id, label, Measure.of(Unit.SECOND));
        field.setHint("From the end of one step to the start of the next.");
        field.check(value -> HeatBindings.require(value >= 0, "It must not be below 0."));
        return field;
    }

    private void margins() {
        QuantityField kelvin = form.quantity("margin", "&Room below temperatures", Measure.of(Unit.KELVIN));
        kelvin.setHint("How far every temperature is to stay below its limit.");
        kelvin.check(value -> HeatBindings.require(value >= 0, "It must not be below 0."));
        bind(kelvin, "marginKelvin", "margin of temperatures", Pacing::marginKelvin, Pacing::withMarginKelvin);
        PercentField current = form.percent("currentMargin", "Room below &currents");
        current.setHint("Which part of each current limit is to be left free.");
        current.check(value ->
                HeatBindings.require(value >= 0 && value <= MOST_MARGIN_RATIO, "It must lie between 0 and 95 %."));
        bind(
                current,
                "currentMarginRatio",
                "margin of currents",
                Pacing::currentMarginRatio,
                Pacing::withCurrentMarginRatio);
        CheckField warmUp = form.check("warmUp", "Begin with a &warm-up");
        warmUp.setHint("Preconditioning as in 16 CFR 432: an hour at an eighth of the rated power.");
        bind(warmUp, "warmUp", "warm-up", Pacing::warmUp, Pacing::withWarmUp);
    }

    private <T> void bind(
            Field<T> field, String name, String words, Function<Pacing, T> get, BiFunction<Pacing, T, Pacing> with) {
        bindings.bind(
                field,
                "pacing." + name,
                words,
                heat -> get.apply(heat.pacing()),
                (heat, value) -> heat.withPacing(with.apply(heat.pacing(), value)));
    }
}

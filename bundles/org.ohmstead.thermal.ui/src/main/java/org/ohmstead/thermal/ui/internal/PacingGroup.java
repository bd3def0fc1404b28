// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Pacing;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.CheckField;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.PercentField;
import org.ohmstead.workbench.form.QuantityField;

/** How long the handling takes, and how much room stays below each limit. */
final class PacingGroup {
    private static final Messages TEXTS = Messages.of(PacingGroup.class);
    private static final double MOST_MARGIN_RATIO = 0.95;

    private final HeatBindings bindings;
    private final FormSection form;

    PacingGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", TEXTS.text("pacing.heading"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        times();
        margins();
        new RestsLine(parent, form, bindings);
    }

    private void times() {
        QuantityField step = form.quantity("step", TEXTS.text("pacing.step"), Measure.of(Unit.SECOND));
        step.check(value -> HeatBindings.require(value > 0, TEXTS.text("check.isAbove")));
        bind(step, "stepSeconds", TEXTS.text("pacing.step.words"), Pacing::stepSeconds, Pacing::withStepSeconds);
        QuantityField load = change("loadChange", TEXTS.text("pacing.load"));
        bind(
                load,
                "loadChangeSeconds",
                TEXTS.text("pacing.load.words"),
                Pacing::loadChangeSeconds,
                Pacing::withLoadChangeSeconds);
        QuantityField mode = change("modeChange", TEXTS.text("pacing.mode"));
        bind(
                mode,
                "modeChangeSeconds",
                TEXTS.text("pacing.mode.words"),
                Pacing::modeChangeSeconds,
                Pacing::withModeChangeSeconds);
        QuantityField supply = change("supplyChange", TEXTS.text("pacing.supply"));
        bind(
                supply,
                "supplyChangeSeconds",
                TEXTS.text("pacing.supply.words"),
                Pacing::supplyChangeSeconds,
                Pacing::withSupplyChangeSeconds);
    }

    private QuantityField change(String id, String label) {
        QuantityField field = form.quantity(id, label, Measure.of(Unit.SECOND));
        field.setHint(TEXTS.text("pacing.change.hint"));
        field.check(value -> HeatBindings.require(value >= 0, TEXTS.text("check.notBelow")));
        return field;
    }

    private void margins() {
        QuantityField kelvin = form.quantity("margin", TEXTS.text("pacing.margin"), Measure.of(Unit.KELVIN));
        kelvin.setHint(TEXTS.text("pacing.margin.hint"));
        kelvin.check(value -> HeatBindings.require(value >= 0, TEXTS.text("check.notBelow")));
        bind(kelvin, "marginKelvin", TEXTS.text("pacing.margin.words"), Pacing::marginKelvin, Pacing::withMarginKelvin);
        PercentField current = form.percent("currentMargin", TEXTS.text("pacing.current"));
        current.setHint(TEXTS.text("pacing.current.hint"));
        current.check(value ->
                HeatBindings.require(value >= 0 && value <= MOST_MARGIN_RATIO, TEXTS.text("pacing.current.check")));
        bind(
                current,
                "currentMarginRatio",
                TEXTS.text("pacing.current.words"),
                Pacing::currentMarginRatio,
                Pacing::withCurrentMarginRatio);
        CheckField warmUp = form.check("warmUp", TEXTS.text("pacing.warmUp"));
        warmUp.setHint(TEXTS.text("pacing.warmUp.hint"));
        bind(warmUp, "warmUp", TEXTS.text("pacing.warmUp.words"), Pacing::warmUp, Pacing::withWarmUp);
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

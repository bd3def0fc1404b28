// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.OutputClass;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.ChoiceField;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;

/** How the amplifier turns power into heat. */
final class OutputGroup {
    private static final Messages TEXTS = Messages.of(OutputGroup.class);

    private final HeatBindings bindings;
    private final FormSection form;

    OutputGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", TEXTS.text("output.heading"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        kind();
        rails();
        losses();
        form.note(TEXTS.text("output.note"));
    }

    private void kind() {
        ChoiceField<OutputClass> kind =
                form.choice("class", TEXTS.text("output.class"), List.of(OutputClass.values()), HeatWords::of);
        kind.setHint(TEXTS.text("output.class.hint"));
        bindings.bind(
                kind,
                "amplifier.outputClass",
                TEXTS.text("output.class.words"),
                heat -> heat.amplifier().outputClass(),
                (heat, value) -> with(heat, heat.amplifier().withOutputClass(value)));
    }

    private void rails() {
        OptionalQuantityField rails = form.optionalQuantity("rails", TEXTS.text("output.rails"), Measure.of(Unit.VOLT));
        rails.setHint(TEXTS.text("output.rails.hint"));
        rails.check(HeatBindings.positive());
        bindings.bind(
                rails,
                "amplifier.railVolts",
                TEXTS.text("output.rails.words"),
                heat -> heat.amplifier().railVolts(),
                (heat, value) -> with(heat, heat.amplifier().withRailVolts(value)));
        OptionalQuantityField supply =
                form.optionalQuantity("railSupply", TEXTS.text("output.railSupply"), Measure.of(Unit.VOLT));
        supply.setHint(TEXTS.text("output.railSupply.hint"));
        supply.check(HeatBindings.positive());
        bindings.bind(
                supply,
                "amplifier.railSupplyVolts",
                TEXTS.text("output.railSupply.words"),
                heat -> heat.amplifier().railSupplyVolts(),
                (heat, value) -> with(heat, heat.amplifier().withRailSupplyVolts(value)));
    }

    private void losses() {
        RangeField converter =
                new RangeField(form, "converter", TEXTS.text("output.converter"), Measure.percentOfOne());
        converter.setHint(TEXTS.text("output.converter.hint"));
        converter.check(
                range -> HeatBindings.require(range.low() > 0 && range.high() <= 1, TEXTS.text("check.upToAll")));
        bindings.bind(
                converter,
                "amplifier.converterEfficiencyRatio",
                TEXTS.text("output.converter.words"),
                heat -> heat.amplifier().converterEfficiencyRatio(),
                (heat, value) -> with(heat, heat.amplifier().withConverterEfficiencyRatio(value)));
        RangeField idle = new RangeField(form, "idle", TEXTS.text("output.idle"), Measure.of(Unit.WATT));
        idle.setHint(TEXTS.text("output.idle.hint"));
        idle.check(range -> HeatBindings.require(range.low() >= 0, TEXTS.text("check.notBelow")));
        bindings.bind(
                idle,
                "amplifier.idleWatts",
                TEXTS.text("output.idle.words"),
                heat -> heat.amplifier().idleWatts(),
                (heat, value) -> with(heat, heat.amplifier().withIdleWatts(value)));
    }

    static HeatData with(HeatData heat, AmplifierHeat amplifier) {
        return heat.withAmplifier(amplifier);
    }
}

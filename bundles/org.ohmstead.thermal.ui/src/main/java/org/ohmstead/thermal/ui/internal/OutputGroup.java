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
import org.ohmstead.workbench.form.ChoiceField;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;

/** How the amplifier turns power into heat. */
final class OutputGroup {
    private final HeatBindings bindings;
    private final FormSection form;

    OutputGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        form = new FormSection(parent, "heat", "How it turns power into heat");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        kind();
        rails();
        losses();
        form.note("Leave empty what is not known: it is estimated, and said to be. Write 0.4 to 0.5 for what lies"
                + " between.");
    }

    private void kind() {
        ChoiceField<OutputClass> kind =
                form.choice("class", "&Output class", List.of(OutputClass.values()), HeatWords::of);
        kind.setHint("AB: linear, half of the supply's power may turn into heat at middling levels. D: switching.");
        bindings.bind(
                kind,
                "amplifier.outputClass",
                "output class",
                heat -> heat.amplifier().outputClass(),
                (heat, value) -> with(heat, heat.amplifier().withOutputClass(value)));
    }

    private void rails() {
        OptionalQuantityField rails = form.optionalQuantity("rails", "&Rail to ground", Measure.of(Unit.VOLT));
        rails.setHint("Each rail of a linear output stage against ground; for class AB it decides the heat.");
        rails.check(HeatBindings.positive());
        bindings.bind(
                rails,
                "amplifier.railVolts",
                "rail volts",
                heat -> heat.amplifier().railVolts(),
                (heat, value) -> with(heat, heat.amplifier().withRailVolts(value)));
        OptionalQuantityField supply =
                form.optionalQuantity("railSupply", "Rail read at suppl&y", Measure.of(Unit.VOLT));
        supply.setHint("The volts at the amplifier's terminals at which the rails were read.");
        supply.check(HeatBindings.positive());
        bindings.bind(
                supply,
                "amplifier.railSupplyVolts",
                "supply volts of the rails",
                heat -> heat.amplifier().railSupplyVolts(),
                (heat, value) -> with(heat, heat.amplifier().withRailSupplyVolts(value)));
    }

    private void losses() {
        RangeField converter = new RangeField(form, "converter", "Converter e&fficiency", Measure.percentOfOne());
        converter.setHint("Output over input of the internal converter; 100 for an amplifier without one.");
        converter.check(range -> HeatBindings.require(
                range.low() > 0 && range.high() <= 1, "It must lie above 0 and be at most 100 %."));
        bindings.bind(
                converter,
                "amplifier.converterEfficiencyRatio",
                "converter efficiency",
                heat -> heat.amplifier().converterEfficiencyRatio(),
                (heat, value) -> with(heat, heat.amplifier().withConverterEfficiencyRatio(value)));
        RangeField idle = new RangeField(form, "idle", "&Idle power", Measure.of(Unit.WATT));
        idle.setHint("What it takes from the supply without a signal.");
        idle.check(range -> HeatBindings.require(range.low() >= 0, "It must not be below 0."));
        bindings.bind(
                idle,
                "amplifier.idleWatts",
                "idle power",
                heat -> heat.amplifier().idleWatts(),
                (heat, value) -> with(heat, heat.amplifier().withIdleWatts(value)));
    }

    static HeatData with(HeatData heat, AmplifierHeat amplifier) {
        return heat.withAmplifier(amplifier);
    }
}

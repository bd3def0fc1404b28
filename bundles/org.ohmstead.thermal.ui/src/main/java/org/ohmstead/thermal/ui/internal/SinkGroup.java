// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Project;
import org.ohmstead.model.SinkSize;
import org.ohmstead.thermal.SinkEstimate;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.look.Ids;

/**
 * The outside of the sink, for an estimate where nothing was measured. It goes into the project when all of it is there, and out again when
 * a figure is taken away.
 */
final class SinkGroup implements HeatBindings.Bound {
    private static final double EXAMPLE_WATTS = 50;
    private static final double USUAL_CELSIUS = 25;
    static final String NO_ESTIMATE =
            "This size gives no estimate: its fins leave no air between them, or the sink would get more than"
                    + " 600 K above the air.";
    private static final int MOST_FINS = 1000;
    private static final String ABOVE = "It must be above 0, or left empty.";

    /** A figure of the sink. */
    private enum Part {
        LENGTH("length", "Base &length", "length"),
        HEIGHT("height", "Height, ai&r rising", "height"),
        FINS("fins", "&Number of fins", "number of fins"),
        DEPTH("depth", "Fins stand o&ut", "depth of the fins"),
        THICKNESS("thickness", "Fin &thickness", "fin thickness"),
        EMISSIVITY("emissivity", "&Emissivity", "emissivity");

        private final String id;
        private final String label;
        private final String words;

        Part(String id, String label, String words) {
            this.id = id;
            this.label = label;
            this.words = words;
        }

        private Measure measure() {
            return this == FINS || this == EMISSIVITY ? Measure.named("") : Measure.milli(Unit.METRE);
        }
    }

    private final HeatBindings bindings;
    private final List<OptionalQuantityField> fields = new ArrayList<>();
    private final OptionalDouble[] draft = new OptionalDouble[Part.values().length];
    private final Label result;
    private Optional<Project> shown = Optional.empty();
    private Optional<SinkSize> size = Optional.empty();
    private boolean writing;

    SinkGroup(Composite parent, HeatBindings bindings) {
        this.bindings = bindings;
        FormSection form = new FormSection(parent, "heat.sink", "Size of the sink, for an estimate");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        for (Part part : Part.values()) {
            draft[part.ordinal()] = OptionalDouble.empty();
            OptionalQuantityField field = form.optionalQuantity(part.id, part.label, part.measure());
            field.check(value -> value.ifPresent(number -> check(part, number)));
            field.onCommit(value -> take(part, value));
            fields.add(field);
        }
        hint(Part.LENGTH, "Along which the fins are lined up.");
        hint(Part.FINS, "0 for a plain plate, which gives off heat on both faces.");
        hint(Part.EMISSIVITY, "About 0.05 for bare aluminium, 0.85 to 0.9 when anodised or painted.");
        result = Ids.name(form.note(""), "heat.sink.result");
        bindings.add(this);
    }

    private void hint(Part part, String hint) {
        fields.get(part.ordinal()).setHint(hint);
    }

    private static void check(Part part, double value) {
        switch (part) {
            case FINS -> HeatBindings.require(
                    value >= 0 && value <= MOST_FINS && value == Math.rint(value),
                    "It must be a whole number from 0 to 1000.");
            case DEPTH -> HeatBindings.require(value >= 0, "It must not be below 0.");
            case EMISSIVITY -> HeatBindings.require(value >= 0 && value <= 1, "It must lie between 0 and 1.");
            default -> HeatBindings.require(value > 0, ABOVE);
        }
    }

    private void take(Part part, OptionalDouble value) {
        OptionalDouble before = draft[part.ordinal()];
        draft[part.ordinal()] = value;
        try {
            checkFit();
        } catch (IllegalArgumentException refused) {
            draft[part.ordinal()] = before;
            throw refused;
        }
        Optional<SinkSize> made = made();
        if (!made.equals(size)) {
            size = made;
            writing = true;
            bindings.edit(
                    made.isPresent() ? "Set " + part.words + " of the sink" : "Remove the sink's size",
                    heat -> heat.withAmplifier(heat.amplifier().withSinkSize(made)));
            writing = false;
        }
        say();
    }

    private void checkFit() {
        OptionalDouble length = draft[Part.LENGTH.ordinal()];
        OptionalDouble fins = draft[Part.FINS.ordinal()];
        OptionalDouble thickness = draft[Part.THICKNESS.ordinal()];
        if (length.isPresent() && fins.isPresent() && thickness.isPresent()) {
            double taken = fins.getAsDouble() * thickness.getAsDouble();
            HeatBindings.require(
                    taken < length.getAsDouble(),
                    "The fins together would be " + HeatWords.number(1000 * taken)
                            + " mm thick, which leaves no air on a" + " length of "
                            + HeatWords.number(1000 * length.getAsDouble()) + " mm.");
        }
    }

    private Optional<SinkSize> made() {
        for (OptionalDouble each : draft) {
            if (each.isEmpty()) {
                return Optional.empty();
            }
        }
        return Optional.of(new SinkSize(
                value(Part.LENGTH),
                value(Part.HEIGHT),
                (int) value(Part.FINS),
                value(Part.DEPTH),
                value(Part.THICKNESS),
                value(Part.EMISSIVITY)));
    }

    private double value(Part part) {
        return draft[part.ordinal()].getAsDouble();
    }

    @Override
    public void show(Project project) {
        shown = Optional.of(project);
        Optional<SinkSize> now = project.heat().amplifier().sinkSize();
        if (!writing && !now.equals(size)) {
            size = now;
            put(now);
        }
        for (Part part : Part.values()) {
            fields.get(part.ordinal()).setValue(draft[part.ordinal()]);
        }
        say();
    }

    private void put(Optional<SinkSize> now) {
        for (Part part : Part.values()) {
            draft[part.ordinal()] =
                    now.map(sink -> OptionalDouble.of(value(sink, part))).orElse(OptionalDouble.empty());
        }
    }

    private static double value(SinkSize sink, Part part) {
        return switch (part) {
            case LENGTH -> sink.lengthMetres();
            case HEIGHT -> sink.heightMetres();
            case FINS -> sink.finCount();
            case DEPTH -> sink.finDepthMetres();
            case THICKNESS -> sink.finThicknessMetres();
            case EMISSIVITY -> sink.emissivityRatio();
        };
    }

    private void say() {
        String words = size.isPresent() ? estimate(size.get()) : missing();
        if (!words.equals(result.getText())) {
            result.setText(words);
            result.requestLayout();
        }
    }

    private String missing() {
        List<String> open = new ArrayList<>();
        for (Part part : Part.values()) {
            if (draft[part.ordinal()].isEmpty()) {
                open.add(part.words);
            }
        }
        return open.size() == Part.values().length
                ? "Only needed where the resistance from case to air was not measured."
                : "Not used yet; still to come: " + String.join(", ", open) + ".";
    }

    private String estimate(SinkSize sink) {
        double air = shown.flatMap(project -> project.bench().ambientCelsius().isPresent()
                        ? Optional.of(project.bench().ambientCelsius().getAsDouble())
                        : Optional.empty())
                .orElse(USUAL_CELSIUS);
        try {
            SinkEstimate estimate = SinkEstimate.of(sink, EXAMPLE_WATTS, air, false);
            boolean measured = shown.map(project ->
                            project.heat().amplifier().caseKelvinPerWatt().isPresent())
                    .orElse(false);
            return "Upright, air free to rise, 50 W of heat: " + HeatWords.range(estimate.kelvinPerWatt()) + " K/W, "
                    + HeatWords.range(estimate.riseKelvin()) + " K above the air."
                    + (measured ? " The resistance entered above goes before it." : "");
        } catch (IllegalArgumentException refused) {
            return NO_ESTIMATE;
        }
    }

    @Override
    public void readOnly(boolean readOnly) {
        fields.forEach(field -> field.setReadOnly(readOnly));
    }

    @Override
    public boolean reveal(String where) {
        if (!where.startsWith("$.heat.amplifier.sinkSize")) {
            return false;
        }
        fields.get(0).focus();
        return true;
    }
}

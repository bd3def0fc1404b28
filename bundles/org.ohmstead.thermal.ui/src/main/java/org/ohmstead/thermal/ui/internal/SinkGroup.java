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
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.look.Ids;

/**
 * The outside of the sink, for an estimate where nothing was measured. It goes into the project when all of it is there, and out again when
 * a figure is taken away.
 */
final class SinkGroup implements HeatBindings.Bound {
    private static final Messages TEXTS = Messages.of(SinkGroup.class);
    private static final double EXAMPLE_WATTS = 50;
    private static final double USUAL_CELSIUS = 25;

    private static final int MOST_FINS = 1000;

    /** A figure of the sink. */
    private enum Part {
        LENGTH("length"),
        HEIGHT("height"),
        FINS("fins"),
        DEPTH("depth"),
        THICKNESS("thickness"),
        EMISSIVITY("emissivity");

        private final String id;

        Part(String id) {
            this.id = id;
        }

        private String label() {
            return TEXTS.text("sink." + id);
        }

        private String words() {
            return TEXTS.text("sink." + id + ".words");
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
        FormSection form = new FormSection(parent, "heat.sink", TEXTS.text("sink.heading"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        for (Part part : Part.values()) {
            draft[part.ordinal()] = OptionalDouble.empty();
            OptionalQuantityField field = form.optionalQuantity(part.id, part.label(), part.measure());
            field.check(value -> value.ifPresent(number -> check(part, number)));
            field.onCommit(value -> take(part, value));
            fields.add(field);
        }
        hint(Part.LENGTH, TEXTS.text("sink.length.hint"));
        hint(Part.FINS, TEXTS.text("sink.fins.hint"));
        hint(Part.EMISSIVITY, TEXTS.text("sink.emissivity.hint"));
        result = Ids.name(form.note(""), "heat.sink.result");
        bindings.add(this);
    }

    private void hint(Part part, String hint) {
        fields.get(part.ordinal()).setHint(hint);
    }

    private static void check(Part part, double value) {
        switch (part) {
            case FINS ->
                HeatBindings.require(
                        value >= 0 && value <= MOST_FINS && value == Math.rint(value), TEXTS.text("sink.fins.check"));
            case DEPTH -> HeatBindings.require(value >= 0, TEXTS.text("check.notBelow"));
            case EMISSIVITY -> HeatBindings.require(value >= 0 && value <= 1, TEXTS.text("sink.emissivity.check"));
            default -> HeatBindings.require(value > 0, TEXTS.text("check.positive"));
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
                    made.isPresent() ? TEXTS.text("sink.edit.set", part.words()) : TEXTS.text("sink.edit.remove"),
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
                    TEXTS.text(
                            "sink.noAir",
                            HeatWords.number(1000 * taken),
                            HeatWords.number(1000 * length.getAsDouble())));
        }
    }

    /** Returns why a size gives no estimate. */
    static String noEstimate() {
        return TEXTS.text("sink.noEstimate");
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
                open.add(part.words());
            }
        }
        return open.size() == Part.values().length
                ? TEXTS.text("sink.onlyNeeded")
                : TEXTS.text("sink.open", String.join(", ", open));
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
            return TEXTS.text(
                    measured ? "sink.estimate.unused" : "sink.estimate",
                    HeatWords.range(estimate.kelvinPerWatt()),
                    HeatWords.range(estimate.riseKelvin()));
        } catch (IllegalArgumentException refused) {
            return noEstimate();
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

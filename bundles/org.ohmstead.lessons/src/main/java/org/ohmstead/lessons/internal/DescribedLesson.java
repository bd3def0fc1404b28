// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonException;
import org.ohmstead.lessons.LessonModel;
import org.ohmstead.lessons.Prediction;
import org.ohmstead.lessons.Source;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** A lesson made of a description and the lesson whose model it names. */
public final class DescribedLesson {
    private static final String ID = "[a-z][a-z0-9-]*";
    private static final double MOST_TOLERANCE_PERCENT = 100;

    private final DescriptionKeys keys;
    private final Lesson base;
    private final Map<String, Double> fixed = new LinkedHashMap<>();

    private DescribedLesson(DescriptionKeys keys, Lesson base) {
        this.keys = keys;
        this.base = base;
    }

    /**
     * Returns the lesson.
     *
     * @throws LessonException with the key that is wrong, and what would be right
     */
    public static Lesson of(DescriptionKeys keys, List<Lesson> bases) throws LessonException {
        String model = keys.need(
                "model", bases.isEmpty() ? "load-and-power" : bases.get(0).id());
        Optional<Lesson> base =
                bases.stream().filter(lesson -> lesson.id().equals(model)).findFirst();
        if (base.isEmpty()) {
            throw keys.wrong(
                    "model", "model", model, bases.stream().map(Lesson::id).collect(Collectors.joining(", ")));
        }
        return new DescribedLesson(keys, base.get()).lesson();
    }

    private Lesson lesson() throws LessonException {
        String id = keys.need("lesson", "our-workshop");
        if (!id.matches(ID)) {
            throw keys.wrong("lesson", "id", id);
        }
        List<Control> controls = new ArrayList<>();
        for (Control control : base.controls()) {
            shown(control).ifPresent(controls::add);
        }
        if (controls.isEmpty()) {
            throw keys.wrong("fixed", "fixed");
        }
        List<String> formulas = keys.numbered("formula");
        Lesson lesson = new Lesson(
                id,
                base.locale(),
                keys.get("title").orElse(base.title()),
                keys.get("idea").orElse(base.idea()),
                keys.get("explanation").orElse(base.explanation()),
                formulas.isEmpty() ? base.formulas() : formulas,
                controls,
                prediction(),
                Stream.concat(
                                base.sources().stream(),
                                keys.numbered("source").stream().map(Source::of))
                        .toList(),
                Stream.concat(base.cautions().stream(), keys.numbered("caution").stream())
                        .toList(),
                model());
        Optional<String> unknown = keys.unknown();
        if (unknown.isPresent()) {
            throw keys.wrong(
                    unknown.get(),
                    "unknown",
                    base.controls().stream().map(Control::id).collect(Collectors.joining(", ")));
        }
        return lesson;
    }

    /** Returns the control as the learner gets it, or nothing when it is fixed. */
    private Optional<Control> shown(Control control) throws LessonException {
        String id = control.id();
        Optional<String> kept = keys.get("fixed." + id);
        if (kept.isPresent()) {
            fixed.put(id, valueOf(control, "fixed." + id, kept.get()));
            return Optional.empty();
        }
        Control.Slider slider = control instanceof Control.Slider found ? ranged(found) : null;
        Control ranged = slider == null ? control : slider;
        Optional<String> start = keys.get("start." + id);
        if (start.isEmpty()) {
            return Optional.of(ranged);
        }
        double value = valueOf(ranged, "start." + id, start.get());
        if (slider != null) {
            return Optional.of(slider.withRange(slider.least(), slider.most(), value));
        }
        if (control instanceof Control.Choice choice) {
            return Optional.of(new Control.Choice(id, choice.label(), choice.options(), (int) value));
        }
        Control.Switch onOff = (Control.Switch) control;
        return Optional.of(new Control.Switch(id, onOff.label(), onOff.onText(), onOff.offText(), value >= 0.5));
    }

    private Control.Slider ranged(Control.Slider slider) throws LessonException {
        double least = end(slider, "least.", slider.least());
        double most = end(slider, "most.", slider.most());
        if (!(least < most)) {
            throw keys.wrong("most." + slider.id(), "ends", slider.id(), base.id());
        }
        return slider.withRange(least, most, Math.max(least, Math.min(most, slider.start())));
    }

    private double end(Control.Slider slider, String prefix, double otherwise) throws LessonException {
        Optional<String> text = keys.get(prefix + slider.id());
        return text.isPresent() ? valueOf(slider, prefix + slider.id(), text.get()) : otherwise;
    }

    private double valueOf(Control control, String key, String text) throws LessonException {
        try {
            return Controls.startOf(List.of(control))
                    .withText(control.id(), text)
                    .number(control.id());
        } catch (LessonException e) {
            throw keys.wrong(key, e);
        }
    }

    private Prediction prediction() throws LessonException {
        String question = keys.get("question").orElse(base.prediction().question());
        Optional<String> relative = keys.get("tolerance");
        Optional<String> absolute = keys.get("tolerance.absolute");
        if (base.prediction() instanceof Prediction.Choice choice) {
            if (relative.isPresent() || absolute.isPresent()) {
                throw keys.wrong(relative.isPresent() ? "tolerance" : "tolerance.absolute", "tolerance");
            }
            return new Prediction.Choice(question, choice.options());
        }
        Prediction.Number number = (Prediction.Number) base.prediction();
        boolean own = relative.isPresent() || absolute.isPresent();
        double ratio = relative.isPresent()
                ? tolerance("tolerance", relative.get(), Unit.PERCENT, MOST_TOLERANCE_PERCENT) / 100
                : own ? 0 : number.toleranceRatio();
        double wide = absolute.isPresent()
                ? tolerance("tolerance.absolute", absolute.get(), number.unit(), Double.MAX_VALUE)
                : own ? 0 : number.toleranceAbsolute();
        return new Prediction.Number(question, number.unit(), ratio, wide, number.digits());
    }

    private double tolerance(String key, String text, Unit unit, double most) throws LessonException {
        double value;
        try {
            value = QuantityParser.parse(text, unit).value();
        } catch (QuantityException e) {
            throw keys.wrong(key, new LessonException(e.getMessage(), e));
        }
        if (!(value >= 0 && value <= most)) {
            throw most < Double.MAX_VALUE
                    ? keys.wrong(key, "number.between", text, (int) most)
                    : keys.wrong(key, "number", text);
        }
        return value;
    }

    private LessonModel model() {
        Controls start = base.start();
        Map<String, Double> kept = Map.copyOf(fixed);
        return values -> {
            Controls all = start;
            for (Map.Entry<String, Double> entry : kept.entrySet()) {
                all = all.with(entry.getKey(), entry.getValue());
            }
            for (Control control : values.list()) {
                all = all.with(control.id(), values.number(control.id()));
            }
            return base.at(all);
        };
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.ohmstead.lessons.internal.Faults;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** The controls of a lesson with the values that they have now. Immutable. */
public final class Controls {
    private final Map<String, Control> controls;
    private final Map<String, Double> values;

    private Controls(Map<String, Control> controls, Map<String, Double> values) {
        this.controls = controls;
        this.values = values;
    }

    /** Returns controls at their start values; the ids must differ. */
    public static Controls startOf(List<Control> controls) {
        Map<String, Control> byId = new LinkedHashMap<>();
        Map<String, Double> values = new LinkedHashMap<>();
        for (Control control : controls) {
            if (byId.put(control.id(), control) != null) {
                throw new IllegalArgumentException("controls has the id '" + control.id() + "' twice; ids must differ");
            }
            values.put(control.id(), control.start());
        }
        return new Controls(byId, values);
    }

    /** Returns the controls in their order. */
    public List<Control> list() {
        return List.copyOf(controls.values());
    }

    /**
     * Returns the control of an id.
     *
     * @throws IllegalArgumentException if there is none
     */
    public Control control(String id) {
        Control control = controls.get(id);
        if (control == null) {
            throw new IllegalArgumentException("id is '" + id + "'; it must be one of " + ids());
        }
        return control;
    }

    /** Returns a control's value: a slider's number in its unit, a choice's index, 1 or 0 of a switch. */
    public double number(String id) {
        control(id);
        return values.get(id);
    }

    /** Returns whether a switch is on. */
    public boolean isOn(String id) {
        if (!(control(id) instanceof Control.Switch)) {
            throw new IllegalArgumentException("id is '" + id + "'; it must be that of a switch");
        }
        return number(id) >= 0.5;
    }

    /** Returns the id of the option chosen of a choice. */
    public String chosen(String id) {
        if (control(id) instanceof Control.Choice choice) {
            return choice.options().get((int) number(id)).id();
        }
        throw new IllegalArgumentException("id is '" + id + "'; it must be that of a choice");
    }

    /** Returns these controls with one value changed to the nearest that its control can have. */
    public Controls with(String id, double value) {
        Map<String, Double> changed = new LinkedHashMap<>(values);
        changed.put(id, control(id).nearest(value));
        return new Controls(controls, changed);
    }

    /** Returns these controls with an option of a choice chosen. */
    public Controls withChosen(String id, String option) {
        if (control(id) instanceof Control.Choice choice) {
            for (int i = 0; i < choice.options().size(); i++) {
                if (choice.options().get(i).id().equals(option)) {
                    return with(id, i);
                }
            }
            throw new IllegalArgumentException("option is '" + option + "'; it must be one of " + optionIds(choice));
        }
        throw new IllegalArgumentException("id is '" + id + "'; it must be that of a choice");
    }

    /**
     * Returns these controls with one value as a person wrote it: a number with or without its unit ("2R2", "20 ms", "4"), the id of an
     * option, "on" or "off".
     *
     * @param id which control
     * @param text what was written
     * @throws LessonException if there is no such control, the text cannot be read, or it lies outside the range
     */
    public Controls withText(String id, String text) throws LessonException {
        Control control = controls.get(id);
        if (control == null) {
            throw Faults.of("control.none", id, ids());
        }
        if (control instanceof Control.Slider slider) {
            return with(id, inRange(slider, readNumber(slider.unit(), id, text)));
        }
        String word = text.strip();
        if (control instanceof Control.Choice choice) {
            if (choice.options().stream().noneMatch(option -> option.id().equals(word))) {
                throw Faults.of("control.option", text, id, optionIds(choice));
            }
            return withChosen(id, word);
        }
        if (!word.equals("on") && !word.equals("off")) {
            throw Faults.of("control.switch", text, id);
        }
        return with(id, word.equals("on") ? 1 : 0);
    }

    /** Returns a control's value as people read it. */
    public String text(String id, Locale locale) {
        return control(id).text(number(id), locale);
    }

    /** Reads a number with or without its unit. */
    static double readNumber(Unit unit, String name, String text) throws LessonException {
        try {
            return QuantityParser.parse(text, unit).value();
        } catch (QuantityException e) {
            throw Faults.because(e, "control.value", text, name, e.getMessage());
        }
    }

    private static double inRange(Control.Slider slider, double value) throws LessonException {
        if (value < slider.least() || value > slider.most()) {
            throw Faults.of(
                    "control.range",
                    slider.id(),
                    plain(slider, value),
                    plain(slider, slider.least()),
                    plain(slider, slider.most()));
        }
        return value;
    }

    private static String plain(Control.Slider slider, double value) {
        return QuantityFormat.LOCALE_FREE.format(new Quantity(value, slider.unit()));
    }

    private String ids() {
        return String.join(", ", controls.keySet());
    }

    private static String optionIds(Control.Choice choice) {
        return choice.options().stream().map(Option::id).collect(Collectors.joining(", "));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Controls that && controls.equals(that.controls) && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    @Override
    public String toString() {
        return "Controls" + values;
    }
}

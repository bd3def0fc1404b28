// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;
import org.ohmstead.workbench.form.CheckField;
import org.ohmstead.workbench.form.ChoiceField;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.IntegerField;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.QuantityField;
import org.ohmstead.workbench.form.TextField;
import org.ohmstead.workbench.look.Slices;

/** A form made from the settings of a plug-in: units, ranges and choices come from them, and so does what is refused. */
final class SettingsForm {
    private static final int AT_ONCE = 3;

    private final Composite parent;
    private final String id;
    private final Slices slices;
    private final Runnable grown;
    private final Map<String, Filler> fillers = new LinkedHashMap<>();
    private Optional<FormSection> section = Optional.empty();
    private List<Setting> made = List.of();
    private Map<String, String> values = Map.of();
    private BiConsumer<String, String> commit = (setting, text) -> {};

    /** Puts a text into a field. */
    private interface Filler {
        void put(String text);
    }

    /**
     * Makes a form without fields.
     *
     * @param id the beginning of its fields' names
     * @param grown runs whenever it has another height
     */
    SettingsForm(Composite parent, String id, Slices slices, Runnable grown) {
        this.parent = parent;
        this.id = id;
        this.slices = slices;
        this.grown = grown;
    }

    /**
     * Shows settings with their values; those of the same plug-in keep their fields.
     *
     * @param newValues the values that are not the usual ones, as text
     * @param newCommit hears of a value that fits
     */
    void show(List<Setting> settings, Map<String, String> newValues, BiConsumer<String, String> newCommit) {
        values = Map.copyOf(newValues);
        commit = newCommit;
        if (settings.equals(made)) {
            fillers.forEach((setting, filler) -> filler.put(value(setting)));
            return;
        }
        made = List.copyOf(settings);
        fillers.clear();
        section.ifPresent(FormSection::dispose);
        section = Optional.empty();
        if (!made.isEmpty()) {
            FormSection fresh = new FormSection(parent, id, "");
            GridDataFactory.fillDefaults().grab(true, false).applyTo(fresh);
            section = Optional.of(fresh);
            List<Setting> mine = made;
            for (int from = 0; from < mine.size(); from += AT_ONCE) {
                List<Setting> some = mine.subList(from, Math.min(mine.size(), from + AT_ONCE));
                slices.add(() -> grow(fresh, mine, some));
            }
        }
        grown.run();
    }

    private void grow(FormSection into, List<Setting> of, List<Setting> some) {
        if (into.isDisposed() || of != made) {
            return;
        }
        some.forEach(setting -> {
            fillers.put(setting.id(), field(into, setting));
            fillers.get(setting.id()).put(value(setting.id()));
        });
        into.requestLayout();
        grown.run();
    }

    private String value(String setting) {
        return values.getOrDefault(
                setting,
                made.stream()
                        .filter(each -> each.id().equals(setting))
                        .map(Setting::defaultText)
                        .findFirst()
                        .orElse(""));
    }

    private Filler field(FormSection into, Setting setting) {
        String label = setting.name().substring(0, 1).toUpperCase(Locale.ROOT)
                + setting.name().substring(1);
        if (setting instanceof Setting.Number number) {
            QuantityField field = into.quantity(setting.id(), label, Measure.of(number.unit()));
            tie(field, setting, value -> Double.toString(value));
            return text -> field.setValue(Double.valueOf(text));
        }
        if (setting instanceof Setting.Count count) {
            IntegerField field = into.integer(setting.id(), label, count.least(), count.most());
            tie(field, setting, value -> Integer.toString(value));
            return text -> field.setValue(Integer.valueOf(text));
        }
        if (setting instanceof Setting.Choice choice) {
            ChoiceField<String> field = into.choice(setting.id(), label, choice.choices(), choice::label);
            tie(field, setting, value -> value);
            return field::setValue;
        }
        if (setting instanceof Setting.Flag) {
            CheckField field = into.check(setting.id(), label);
            tie(field, setting, value -> Boolean.toString(value));
            return text -> field.setValue(Boolean.valueOf(text));
        }
        TextField field = into.text(setting.id(), label);
        tie(field, setting, value -> value);
        return field::setValue;
    }

    /** Writes a value as the text of a setting. */
    private interface Writer<T> {
        String text(T value);
    }

    private <T> void tie(Field<T> field, Setting setting, Writer<T> writer) {
        field.setHint(setting.help());
        field.check(value -> check(setting, writer.text(value)));
        field.onCommit(value -> commit.accept(setting.id(), writer.text(value)));
    }

    private static void check(Setting setting, String text) {
        try {
            Settings.of(List.of(setting), Map.of(setting.id(), text));
        } catch (SettingException refused) {
            throw new IllegalArgumentException(refused.getMessage(), refused);
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.text.Messages;

/**
 * Values for the settings of a plug-in, each checked against its setting. Never changes.
 *
 * <pre>{@code
 * Settings settings = Settings.of(info.settings(), Map.of("limitRatio", "0.01"));
 * double limitRatio = settings.number("limitRatio");
 * }</pre>
 */
public final class Settings {
    private static final Messages TEXTS = Messages.of(Settings.class);

    private final Map<String, Setting> known;
    private final Map<String, String> texts;

    private Settings(Map<String, Setting> known, Map<String, String> texts) {
        this.known = known;
        this.texts = texts;
    }

    /** Returns the values that hold until the user says otherwise. */
    public static Settings defaults(List<Setting> settings) {
        Map<String, Setting> known = new LinkedHashMap<>();
        Map<String, String> texts = new TreeMap<>();
        for (Setting setting : settings) {
            if (known.put(setting.id(), setting) != null) {
                throw new IllegalArgumentException("settings holds the id \"" + setting.id() + "\" twice");
            }
            texts.put(setting.id(), setting.defaultText());
        }
        return new Settings(Collections.unmodifiableMap(known), Collections.unmodifiableMap(texts));
    }

    /**
     * Returns the values that were given, and the defaults for the others.
     *
     * @param settings what may be set
     * @param given values as text by id; quantities may have a unit and a prefix
     * @throws SettingException when a value does not fit its setting, or there is no such setting; it names all that is wrong
     */
    public static Settings of(List<Setting> settings, Map<String, String> given) throws SettingException {
        Settings defaults = defaults(settings);
        Map<String, String> texts = new TreeMap<>(defaults.texts);
        List<String> wrong = new ArrayList<>();
        for (Map.Entry<String, String> each : new TreeMap<>(given).entrySet()) {
            Setting setting = defaults.known.get(each.getKey());
            if (setting == null) {
                wrong.add(TEXTS.text("setting.unknown", each.getKey(), defaults.known.keySet()));
                continue;
            }
            try {
                texts.put(each.getKey(), checked(setting, each.getValue().strip()));
            } catch (SettingException refused) {
                wrong.add(refused.getMessage());
            }
        }
        if (!wrong.isEmpty()) {
            throw new SettingException(String.join(" ", wrong));
        }
        return new Settings(defaults.known, Collections.unmodifiableMap(texts));
    }

    /** Returns a quantity in its unit. */
    public double number(String id) {
        return Double.parseDouble(text(id, Setting.Number.class));
    }

    /** Returns a whole number. */
    public int count(String id) {
        return Integer.parseInt(text(id, Setting.Count.class));
    }

    /** Returns the word chosen. */
    public String choice(String id) {
        return text(id, Setting.Choice.class);
    }

    /** Returns whether it is yes. */
    public boolean flag(String id) {
        return Boolean.parseBoolean(text(id, Setting.Flag.class));
    }

    /** Returns the words. */
    public String text(String id) {
        return text(id, Setting.Text.class);
    }

    /** Returns all values as text by id, to be kept with a reading: {@link #of} takes them back. */
    public Map<String, String> texts() {
        return texts;
    }

    private String text(String id, Class<? extends Setting> type) {
        Setting setting = known.get(id);
        if (!type.isInstance(setting)) {
            throw new IllegalArgumentException(
                    "id is \"" + id + "\"; there is no " + type.getSimpleName() + " of that id");
        }
        return texts.get(id);
    }

    private static String checked(Setting setting, String text) throws SettingException {
        if (setting instanceof Setting.Number number) {
            return number(number, text);
        }
        if (setting instanceof Setting.Count count) {
            return count(count, text);
        }
        if (setting instanceof Setting.Choice choice && !choice.choices().contains(text)) {
            throw refused(setting, text, TEXTS.text("setting.choice", choice.choices()));
        }
        if (setting instanceof Setting.Flag && !text.equals("true") && !text.equals("false")) {
            throw refused(setting, text, TEXTS.text("setting.flag"));
        }
        return text;
    }

    private static String number(Setting.Number setting, String text) throws SettingException {
        double value;
        try {
            value = QuantityParser.parse(text, setting.unit()).value();
        } catch (QuantityException unreadable) {
            throw new SettingException(
                    TEXTS.text("setting.unreadable", setting.name(), unreadable.getMessage()), unreadable);
        }
        if (value < setting.least() || value > setting.most()) {
            throw refused(
                    setting,
                    text,
                    TEXTS.text(
                            "setting.number",
                            plain(setting.least()),
                            plain(setting.most()),
                            setting.unit().symbol()));
        }
        return Double.toString(value);
    }

    private static String count(Setting.Count setting, String text) throws SettingException {
        String allowed =
                TEXTS.text("setting.count", Integer.toString(setting.least()), Integer.toString(setting.most()));
        if (!text.matches("[+-]?\\d{1,9}")) {
            throw refused(setting, text, allowed);
        }
        int value = Integer.parseInt(text);
        if (value < setting.least() || value > setting.most()) {
            throw refused(setting, text, allowed);
        }
        return Integer.toString(value);
    }

    private static SettingException refused(Setting setting, String text, String allowed) {
        return new SettingException(TEXTS.text("setting.refused", setting.name(), text, allowed.strip()));
    }

    private static String plain(double value) {
        return Double.toString(value)
                .replace('.', DecimalFormatSymbols.getInstance(TEXTS.locale()).getDecimalSeparator());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Settings settings && texts.equals(settings.texts);
    }

    @Override
    public int hashCode() {
        return texts.hashCode();
    }

    @Override
    public String toString() {
        return texts.toString();
    }
}

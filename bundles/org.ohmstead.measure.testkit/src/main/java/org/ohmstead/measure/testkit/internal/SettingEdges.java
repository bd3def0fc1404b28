// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;

/** Values at and beyond the edges of settings. */
public final class SettingEdges {
    private SettingEdges() {}

    /** Returns all values of a setting that are at an edge, or each where there are few. */
    public static List<String> within(Setting setting) {
        if (setting instanceof Setting.Number number) {
            return List.of(Double.toString(number.least()), Double.toString(number.most()));
        }
        if (setting instanceof Setting.Count count) {
            return List.of(Integer.toString(count.least()), Integer.toString(count.most()));
        }
        if (setting instanceof Setting.Choice choice) {
            return choice.choices();
        }
        return setting instanceof Setting.Flag ? List.of("true", "false") : List.of(setting.defaultText());
    }

    private static List<String> beyond(Setting setting) {
        List<String> values = new ArrayList<>();
        if (setting instanceof Setting.Number number) {
            values.addAll(List.of(
                    Double.toString(Math.nextDown(number.least())),
                    Double.toString(Math.nextUp(number.most())),
                    "words"));
        } else if (setting instanceof Setting.Count count) {
            values.addAll(List.of(Long.toString(count.least() - 1L), Long.toString(count.most() + 1L), "0.5"));
        } else if (setting instanceof Setting.Choice choice) {
            values.add(String.join("", choice.choices()) + "?");
        } else if (setting instanceof Setting.Flag) {
            values.add("perhaps");
        }
        values.removeIf(value -> value.contains("Infinity"));
        return values;
    }

    /** Returns what is wrong with how settings take values, whole sentences. */
    public static List<String> faults(List<Setting> settings) {
        List<String> faults = new ArrayList<>();
        for (Setting setting : settings) {
            List<String> allowed = new ArrayList<>(within(setting));
            allowed.add(setting.defaultText());
            for (String value : allowed) {
                if (!takes(settings, setting.id(), value)) {
                    faults.add("The setting \"" + setting.id() + "\" refuses its own value \"" + value + "\".");
                }
            }
            for (String value : beyond(setting)) {
                if (takes(settings, setting.id(), value)) {
                    faults.add(
                            "The setting \"" + setting.id() + "\" takes \"" + value + "\", which is beyond its range.");
                }
            }
        }
        if (takes(settings, "thereIsNoSuchSetting", "1")) {
            faults.add("A setting that is unknown is taken.");
        }
        return faults;
    }

    private static boolean takes(List<Setting> settings, String id, String value) {
        try {
            return Settings.of(settings, Map.of(id, value)).texts().containsKey(id);
        } catch (SettingException refused) {
            return refused.getMessage().isBlank();
        }
    }
}

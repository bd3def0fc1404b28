// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.List;
import org.ohmstead.units.Unit;

/** One thing that a user may set, as data: forms, help, storage and the command line are made from it. */
public sealed interface Setting {
    /** Returns a short name, unique among the settings of a plug-in: letters, digits and dots. */
    String id();

    /** Returns what a person calls it. */
    String name();

    /** Returns a sentence that says what it does. */
    String help();

    /** Returns the value that holds until the user says otherwise, as text. */
    String defaultText();

    /**
     * A quantity.
     *
     * @param unit its unit; values are in the unit without a prefix
     * @param defaultValue within the range
     * @param least the least allowed
     * @param most the most allowed
     */
    record Number(String id, String name, String help, Unit unit, double defaultValue, double least, double most)
            implements Setting {
        public Number {
            checkWords(id, name, help);
            Checks.present(unit, "unit");
            Checks.finite(least, "least");
            Checks.within(most, least, Double.MAX_VALUE, "most");
            Checks.within(defaultValue, least, most, "defaultValue");
        }

        @Override
        public String defaultText() {
            return Double.toString(defaultValue);
        }
    }

    /**
     * A whole number.
     *
     * @param defaultValue within the range
     * @param least the least allowed
     * @param most the most allowed
     */
    record Count(String id, String name, String help, int defaultValue, int least, int most) implements Setting {
        public Count {
            checkWords(id, name, help);
            Checks.within(most, least, Integer.MAX_VALUE, "most");
            Checks.within(defaultValue, least, most, "defaultValue");
        }

        @Override
        public String defaultText() {
            return Integer.toString(defaultValue);
        }
    }

    /**
     * One of some words.
     *
     * @param choices at least one; no two alike; these are stored
     * @param labels what a person calls each of them, in the same order
     * @param defaultText one of the choices
     */
    record Choice(String id, String name, String help, List<String> choices, List<String> labels, String defaultText)
            implements Setting {
        public Choice {
            checkWords(id, name, help);
            choices = List.copyOf(choices);
            labels = List.copyOf(labels);
            if (labels.size() != choices.size()) {
                throw new IllegalArgumentException("labels is " + labels + "; it must hold one for each of " + choices);
            }
            if (choices.isEmpty() || choices.stream().distinct().count() < choices.size()) {
                throw new IllegalArgumentException("choices is " + choices + "; it must hold different words");
            }
            if (!choices.contains(defaultText)) {
                throw new IllegalArgumentException(
                        "defaultText is \"" + defaultText + "\"; it must be one of " + choices);
            }
        }

        /** Makes a choice whose words are shown as they are. */
        public Choice(String id, String name, String help, List<String> choices, String defaultText) {
            this(id, name, help, choices, choices, defaultText);
        }

        /** Returns what a person calls a choice; a word that is none stands for itself. */
        public String label(String choice) {
            int index = choices.indexOf(choice);
            return index < 0 ? choice : labels.get(index);
        }
    }

    /**
     * Yes or no.
     *
     * @param defaultValue whether it is yes
     */
    record Flag(String id, String name, String help, boolean defaultValue) implements Setting {
        public Flag {
            checkWords(id, name, help);
        }

        @Override
        public String defaultText() {
            return Boolean.toString(defaultValue);
        }
    }

    /**
     * Words, such as an address or a folder.
     *
     * @param defaultText may be empty
     */
    record Text(String id, String name, String help, String defaultText) implements Setting {
        public Text {
            checkWords(id, name, help);
            Checks.present(defaultText, "defaultText");
        }
    }

    private static void checkWords(String id, String name, String help) {
        if (!Checks.present(id, "id").matches("[A-Za-z][A-Za-z0-9.]*")) {
            throw new IllegalArgumentException(
                    "id is \"" + id + "\"; it must begin with a letter and go on with letters, digits and dots");
        }
        Checks.named(name, "name");
        Checks.named(help, "help");
    }
}

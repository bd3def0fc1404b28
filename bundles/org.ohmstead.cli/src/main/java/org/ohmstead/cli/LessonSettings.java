// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonException;
import picocli.CommandLine.Option;

/** The options that set a lesson's controls. */
final class LessonSettings {
    @Option(names = "--set", paramLabel = "CONTROL=VALUE", descriptionKey = "lesson.settings.set")
    private List<String> settings = List.of();

    /** Returns the lesson's controls with what was set. */
    Controls of(Lesson lesson) throws InputException {
        Controls values = lesson.start();
        for (String setting : settings) {
            int sign = setting.indexOf('=');
            if (sign < 1) {
                throw new InputException(Texts.of(
                        "lesson.noSetting", setting, lesson.controls().get(0).id()));
            }
            try {
                values = values.withText(setting.substring(0, sign).strip(), setting.substring(sign + 1));
            } catch (LessonException wrong) {
                throw new InputException(wrong.getMessage());
            }
        }
        return values;
    }
}

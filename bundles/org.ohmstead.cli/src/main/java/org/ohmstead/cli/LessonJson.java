// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Source;

/** A lesson at a setting as one JSON document. */
final class LessonJson {
    private LessonJson() {}

    static ObjectNode of(Lesson lesson, Controls values, LessonResult result) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("id", lesson.id());
        root.put("language", lesson.locale().toLanguageTag());
        root.put("title", lesson.title());
        root.put("idea", lesson.idea());
        root.put("question", lesson.prediction().question());
        ObjectNode settings = root.putObject("settings");
        for (Control control : lesson.controls()) {
            if (control instanceof Control.Choice) {
                settings.put(control.id(), values.chosen(control.id()));
            } else if (control instanceof Control.Switch) {
                settings.put(control.id(), values.isOn(control.id()));
            } else {
                settings.put(control.id(), values.number(control.id()));
            }
        }
        ArrayNode figures = root.putArray("figures");
        for (Figure figure : result.figures()) {
            figures.addObject()
                    .put("id", figure.id())
                    .put("name", figure.name())
                    .put("value", figure.value())
                    .put("unit", figure.unit().symbol());
        }
        ObjectNode answer = root.putObject("answer");
        if (result.answer() instanceof Answer.Number number) {
            answer.put("value", number.value());
        } else {
            answer.put("option", ((Answer.Choice) result.answer()).optionId());
        }
        answer.put("reason", result.answer().reason());
        texts(root, "remarks", result.remarks());
        root.put("explanation", lesson.explanation());
        texts(root, "formulas", lesson.formulas());
        texts(root, "sources", lesson.sources().stream().map(Source::text).toList());
        ArrayNode cautions = texts(root, "cautions", lesson.cautions());
        result.cautions().forEach(cautions::add);
        return root;
    }

    private static ArrayNode texts(ObjectNode root, String name, List<String> texts) {
        ArrayNode array = root.putArray(name);
        texts.forEach(array::add);
        return array;
    }
}

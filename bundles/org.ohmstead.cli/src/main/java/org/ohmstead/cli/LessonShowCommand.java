// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Feedback;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Option;
import org.ohmstead.lessons.Prediction;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Shows a lesson: its question first, and the answer to whoever has predicted one or asks for it. */
@Command(
        name = "show",
        description = {"${bundle:lesson.show.does}", ""},
        footer = {"", "${bundle:lesson.show.note}", "${bundle:lesson.show.example}"})
final class LessonShowCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private LessonSource source;

    @Mixin
    private LessonSettings settings;

    @Parameters(paramLabel = "ID", descriptionKey = "lesson.show.ID")
    private String id;

    @picocli.CommandLine.Option(names = "--predict", paramLabel = "ANSWER", descriptionKey = "lesson.show.predict")
    private String predicted;

    @picocli.CommandLine.Option(names = "--answer", descriptionKey = "lesson.show.answer")
    private boolean answer;

    LessonShowCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        Lesson lesson = source.lesson(id, console);
        Controls values = settings.of(lesson);
        LessonResult result = lesson.at(values);
        if (json.wanted()) {
            console.json(LessonJson.of(lesson, values, result));
            return ExitCodes.DONE;
        }
        print(lesson, values);
        if (predicted == null && !answer) {
            figures(result.figuresBefore(), lesson.locale());
            ask(lesson);
        } else {
            ask(lesson);
            if (predicted != null) {
                console.line("");
                console.line(feedback(lesson, result).text());
            } else {
                console.line("");
                console.line(result.answer().reason());
            }
            figures(result.figures(), lesson.locale());
            explain(lesson, result);
        }
        lesson.cautions().forEach(caution -> console.line(Texts.of("cautions.line", caution)));
        result.cautions().forEach(caution -> console.line(Texts.of("cautions.line", caution)));
        return ExitCodes.DONE;
    }

    private void print(Lesson lesson, Controls values) {
        console.line(lesson.title());
        console.line(lesson.idea());
        console.line("");
        TextTable table = TextTable.named("lesson.controls");
        for (Control control : lesson.controls()) {
            table.row(control.id(), values.text(control.id(), lesson.locale()), control.label());
        }
        table.print(console);
        console.line("");
    }

    private void figures(List<Figure> figures, Locale locale) {
        TextTable table = TextTable.named("lesson.figures");
        figures.forEach(figure -> table.row(figure.name(), figure.text(locale)));
        table.print(console);
        console.line("");
    }

    private void ask(Lesson lesson) {
        console.line(lesson.prediction().question());
        if (lesson.prediction() instanceof Prediction.Choice choice) {
            for (Option option : choice.options()) {
                console.line("  " + option.id() + ": " + option.text());
            }
        }
    }

    private void explain(Lesson lesson, LessonResult result) {
        result.remarks().forEach(console::line);
        lesson.explanation().lines().forEach(console::line);
        lesson.formulas().forEach(formula -> console.line("  " + formula));
        lesson.sources().forEach(origin -> console.line(Texts.of("lesson.source", origin.text())));
    }

    private Feedback feedback(Lesson lesson, LessonResult result) throws InputException {
        if (lesson.prediction() instanceof Prediction.Number number) {
            try {
                return lesson.feedback(
                        QuantityParser.parse(predicted, number.unit()).value(), result);
            } catch (QuantityException wrong) {
                throw new InputException(Texts.of("lesson.noAnswer", predicted, wrong.getMessage()));
            }
        }
        List<String> ids = ((Prediction.Choice) lesson.prediction())
                .options().stream().map(Option::id).toList();
        if (!ids.contains(predicted)) {
            throw new InputException(Texts.of("lesson.noOption", predicted, String.join(", ", ids)));
        }
        return lesson.feedback(predicted, result);
    }
}

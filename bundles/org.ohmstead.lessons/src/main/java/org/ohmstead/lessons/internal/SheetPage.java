// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import freemarker.core.HTMLOutputFormat;
import freemarker.template.Configuration;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.LessonSheet;
import org.ohmstead.lessons.Option;
import org.ohmstead.lessons.Picture;
import org.ohmstead.lessons.Prediction;
import org.ohmstead.lessons.Source;
import org.ohmstead.model.PaperSize;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.ChartRenderer;
import org.ohmstead.plot.chart.SvgOptions;
import org.ohmstead.units.text.Messages;

/** Fills the template of the sheet. Every text is escaped unless it is a chart or the style sheet, which are ours. */
public final class SheetPage {
    private static final String TEMPLATE = "lesson.ftlh";
    private static final String STYLE = "lesson.css";
    private static final double CHART_WIDTH = 620;
    private static final double CHART_HEIGHT = 260;

    private SheetPage() {}

    /** Returns the sheet as one HTML document. */
    public static String html(Lesson lesson, Controls values, LessonSheet.Kind kind, PaperSize paper) {
        boolean solution = kind == LessonSheet.Kind.SOLUTION;
        LessonResult result = lesson.at(values);
        Messages messages = Messages.of(SheetPage.class, lesson.locale());
        Map<String, Object> view = new HashMap<>();
        view.put("language", lesson.locale().getLanguage());
        view.put("style", resource(STYLE));
        view.put("paper", paper.widthMillimetres() + "mm " + paper.heightMillimetres() + "mm");
        view.put("solution", solution);
        view.put("words", wordsOf(messages));
        view.put("title", lesson.title());
        view.put("idea", lesson.idea());
        view.put("settings", settings(lesson, values));
        view.put("question", lesson.prediction().question());
        view.put("options", options(lesson.prediction()));
        view.put("figures", figures(lesson.locale(), solution ? result.figures() : result.figuresBefore()));
        view.put("charts", charts(solution ? result.pictures() : result.picturesBefore(), lesson.locale()));
        view.put("cautions", both(lesson.cautions(), solution ? result.cautions() : lesson.cautionsBefore(result)));
        view.put(
                "answer",
                solution ? FeedbackWords.solution(lesson.locale(), lesson.prediction(), result.answer()) : "");
        view.put("reason", solution ? result.answer().reason() : "");
        view.put("remarks", solution ? result.remarks() : List.of());
        view.put("paragraphs", solution ? List.of(lesson.explanation().split("\n")) : List.of());
        view.put("formulas", solution ? lesson.formulas() : List.of());
        view.put("sources", solution ? sources(lesson.sources()) : List.of());
        return fill(view);
    }

    private static Map<String, String> wordsOf(Messages messages) {
        Map<String, String> words = new HashMap<>();
        for (String key : List.of(
                "exercise",
                "solution",
                "name",
                "date",
                "settings",
                "question",
                "prediction",
                "why",
                "figures",
                "answer",
                "explanation",
                "sources",
                "cautions",
                "after")) {
            words.put(key, messages.text("sheet." + key));
        }
        return words;
    }

    private static List<Map<String, String>> settings(Lesson lesson, Controls values) {
        List<Map<String, String>> rows = new ArrayList<>();
        for (Control control : lesson.controls()) {
            rows.add(Map.of("name", control.label(), "value", values.text(control.id(), lesson.locale())));
        }
        return rows;
    }

    private static List<Map<String, String>> figures(Locale locale, List<Figure> figures) {
        return figures.stream()
                .map(figure -> Map.of("name", figure.name(), "value", figure.text(locale)))
                .toList();
    }

    private static List<String> options(Prediction prediction) {
        return prediction instanceof Prediction.Choice choice
                ? choice.options().stream().map(Option::text).toList()
                : List.of();
    }

    private static List<String> charts(List<Picture> pictures, Locale language) {
        ChartRenderer renderer = new ChartRenderer(ChartFonts.standard(), language);
        return pictures.stream()
                .map(picture -> renderer.toSvg(
                        picture.plot(), CHART_WIDTH, CHART_HEIGHT, SvgOptions.responsive("plot-" + picture.id())))
                .toList();
    }

    private static List<Map<String, String>> sources(List<Source> sources) {
        return sources.stream()
                .map(source -> Map.of(
                        "text",
                        source.text(),
                        "link",
                        source.link().map(Object::toString).orElse("")))
                .toList();
    }

    private static List<String> both(List<String> first, List<String> second) {
        List<String> all = new ArrayList<>(first);
        all.addAll(second);
        return all;
    }

    private static String fill(Map<String, Object> view) {
        StringWriter text = new StringWriter();
        try {
            template().process(view, text);
        } catch (TemplateException e) {
            throw new IllegalStateException("The template of the lesson's sheet does not fit its data.", e);
        } catch (IOException e) {
            throw new UncheckedIOException("The template of the lesson's sheet cannot be read.", e);
        }
        return text.toString();
    }

    private static Template template() throws IOException {
        Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
        configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
        configuration.setLocale(Locale.ROOT);
        configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
        configuration.setLogTemplateExceptions(false);
        return new Template(TEMPLATE, new StringReader(resource(TEMPLATE)), configuration);
    }

    private static String resource(String name) {
        try (InputStream stream = SheetPage.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("The file " + name + " is missing from the bundle of lessons.");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("The file " + name + " of the bundle of lessons cannot be read.", e);
        }
    }
}

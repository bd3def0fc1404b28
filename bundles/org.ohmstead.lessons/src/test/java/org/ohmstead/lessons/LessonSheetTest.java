// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.model.PaperSize;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

class LessonSheetTest {
    static Stream<Lesson> lessons() {
        return Stream.concat(BuiltIn.LESSONS.stream(), Lessons.builtIn(Locale.GERMAN).stream());
    }

    private static String sheet(Lesson lesson, LessonSheet.Kind kind) {
        return LessonSheet.html(lesson, lesson.start(), kind, PaperSize.A4);
    }

    private static Document parsed(String html) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(html.strip())));
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void theExerciseKeepsTheAnswerAndTheSolutionTellsIt(Lesson lesson) throws Exception {
        LessonResult result = lesson.at(lesson.start());
        String exercise = parsed(sheet(lesson, LessonSheet.Kind.EXERCISE))
                .getDocumentElement()
                .getTextContent();
        String solution = parsed(sheet(lesson, LessonSheet.Kind.SOLUTION))
                .getDocumentElement()
                .getTextContent();
        assertTrue(exercise.contains(lesson.prediction().question()));
        assertFalse(exercise.contains(result.answer().reason()));
        assertFalse(exercise.contains(lesson.formulas().get(0)));
        assertTrue(solution.contains(result.answer().reason()));
        for (Figure figure : result.figures()) {
            assertEquals(
                    !figure.revealing(), exercise.contains(figure.name() + figure.text(lesson.locale())), figure.id());
            assertTrue(solution.contains(figure.name() + figure.text(lesson.locale())), figure.id());
        }
        for (Source source : lesson.sources()) {
            assertTrue(solution.contains(source.text()));
        }
        for (String caution : lesson.cautions()) {
            assertTrue(exercise.contains(caution) && solution.contains(caution));
        }
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void drawsEachPlotOnceAndNeedsNothingElse(Lesson lesson) throws Exception {
        LessonResult result = lesson.at(lesson.start());
        String solution = sheet(lesson, LessonSheet.Kind.SOLUTION);
        Document page = parsed(solution);
        assertEquals(
                result.pictures().size(), page.getElementsByTagName("figure").getLength());
        assertEquals(
                result.picturesBefore().size(),
                parsed(sheet(lesson, LessonSheet.Kind.EXERCISE))
                        .getElementsByTagName("figure")
                        .getLength());
        for (String outside : List.of("<link", "<script", " src=", "url(http", "@import")) {
            assertFalse(solution.contains(outside), outside);
        }
        assertEquals(lesson.locale().getLanguage(), page.getDocumentElement().getAttribute("lang"));
    }

    @Test
    void aCautionThatTellsTheRightOptionIsOnTheSolutionOnly() {
        Lesson lesson = BuiltIn.lesson("bridging");
        Controls tooLow = lesson.start().with("load", 1);
        LessonResult result = lesson.at(tooLow);
        assertFalse(result.cautions().isEmpty());
        assertEquals(List.of(), lesson.cautionsBefore(result));
        for (String caution : result.cautions()) {
            assertFalse(LessonSheet.html(lesson, tooLow, LessonSheet.Kind.EXERCISE, PaperSize.A4)
                    .contains(caution));
            assertTrue(LessonSheet.html(lesson, tooLow, LessonSheet.Kind.SOLUTION, PaperSize.A4)
                    .contains(caution));
        }
    }

    @Test
    void aCautionThatTellsNoNumberIsOnTheExerciseToo() {
        Lesson lesson = BuiltIn.lesson("load-and-power");
        Controls low = lesson.start().with("load", 1);
        String caution = lesson.at(low).cautions().get(0);
        assertEquals(List.of(caution), lesson.cautionsBefore(lesson.at(low)));
        assertTrue(LessonSheet.html(lesson, low, LessonSheet.Kind.EXERCISE, PaperSize.A4)
                .contains(caution));
    }

    @Test
    void hasThePaperAskedFor() {
        Lesson lesson = BuiltIn.lesson("decibels");
        // ISO 216 A4 is 210 mm by 297 mm; 8.5 in by 11 in are 215.9 mm by 279.4 mm.
        assertTrue(sheet(lesson, LessonSheet.Kind.EXERCISE).contains("size: 210.0mm 297.0mm"));
        assertTrue(LessonSheet.html(lesson, lesson.start(), LessonSheet.Kind.EXERCISE, PaperSize.LETTER)
                .contains("size: 215.9mm 279.4mm"));
    }

    @Test
    void statesTheSettingsThatItIsFor() throws LessonException {
        Lesson lesson = BuiltIn.lesson("load-and-power");
        String page =
                LessonSheet.html(lesson, lesson.start().withText("load", "2"), LessonSheet.Kind.SOLUTION, PaperSize.A4);
        assertTrue(page.contains("<td>2.00 \u03a9</td>"), page);
        assertTrue(page.contains("316 W"));
    }

    @Test
    void aTrainersTextsAreEscaped() throws Exception {
        Lesson base = BuiltIn.lesson("decibels");
        String nasty = "<script>alert(\"x\")</script> & 'more' ${1+1}";
        Lesson lesson = new Lesson(
                base.id(),
                base.locale(),
                nasty,
                nasty,
                nasty,
                List.of(nasty),
                base.controls(),
                base.prediction(),
                List.of(Source.of(nasty)),
                List.of(nasty),
                base.model());
        for (LessonSheet.Kind kind : LessonSheet.Kind.values()) {
            String page = sheet(lesson, kind);
            assertFalse(page.contains("<script"), page);
            assertTrue(page.indexOf("default-src 'none'; style-src 'unsafe-inline'") < page.indexOf("<title"), page);
            assertTrue(page.contains("default-src 'none'"), page);
            assertTrue(parsed(page).getDocumentElement().getTextContent().contains(nasty));
        }
    }

    @Test
    void aSourceLeadsToThePublicWebOnly() {
        for (String link : List.of("javascript:alert(1)", "file:///etc/passwd", "/relative")) {
            Optional<URI> address = Optional.of(URI.create(link));
            assertThrows(IllegalArgumentException.class, () -> new Source("a handbook", address), link);
        }
        assertTrue(new Source("a handbook", Optional.of(URI.create("https://example.org/x")))
                .link()
                .isPresent());
    }
}

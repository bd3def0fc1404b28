// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * Lessons for people who learn to test amplifiers: each has one idea, live controls on the models that the rest of Ohmstead works with, a
 * question to answer before the figures are shown, a short explanation with its sources, and a sheet to print.
 *
 * <pre>{@code
 * Lesson lesson = Lessons.find(Lessons.builtIn(), "load-and-power").orElseThrow();
 * LessonResult result = lesson.at(lesson.start().with("load", 2));
 * String watts = result.figure("power").text(lesson.locale());
 * String said = lesson.feedback(1.9, result).text();
 * String page = LessonSheet.html(lesson, lesson.start(), LessonSheet.Kind.EXERCISE, PaperSize.A4);
 * }</pre>
 *
 * <p>A trainer adds a lesson without Java by a file that {@link org.ohmstead.lessons.LessonFiles} reads; with Java by an OSGi service
 * {@link org.ohmstead.lessons.LessonProvider}.
 */
package org.ohmstead.lessons;

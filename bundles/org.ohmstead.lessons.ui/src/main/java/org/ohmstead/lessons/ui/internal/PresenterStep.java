// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Picture;
import org.ohmstead.lessons.Source;

/**
 * One step of a lesson before a room.
 *
 * @param kind what it shows
 * @param key tells it from the other steps of the lesson
 * @param blocks its paragraphs, where it is made of those
 */
record PresenterStep(Kind kind, String key, List<Block> blocks) {
    /** What a step shows. */
    enum Kind {
        /** The one idea, and the cautions. */
        IDEA,
        /** The controls, and the figures that do not give the answer away. */
        SETTINGS,
        /** The controls, and one plot. */
        PICTURE,
        /** The question and the place for the prediction. */
        QUESTION,
        /** What is said to the prediction. */
        ANSWER,
        /** The controls, and all figures. */
        FIGURES,
        /** Why it is so. */
        WHY,
        /** The formulas. */
        FORMULAS,
        /** Where they come from. */
        SOURCES
    }

    /** What a page of paragraphs can hold at the smallest type. */
    private static final int LINES = 12;

    private static final int CHARACTERS_PER_LINE = 72;

    PresenterStep {
        blocks = List.copyOf(blocks);
    }

    /** Returns whether it shows what the controls act on, with the controls beside it. */
    boolean live() {
        return kind == Kind.SETTINGS || kind == Kind.PICTURE || kind == Kind.FIGURES;
    }

    /** Returns the name of the step for its head. */
    String title() {
        return Texts.say("step." + kind.name());
    }

    /** Returns the steps that may be shown now, in their order: what gives the answer away comes only after the prediction. */
    static List<PresenterStep> of(LessonRun run) {
        Lesson lesson = run.lesson();
        List<PresenterStep> steps = new ArrayList<>();
        List<Block> idea = new ArrayList<>(List.of(new Block(lesson.idea(), Block.Weight.MAIN)));
        lesson.cautions().forEach(caution -> idea.add(new Block(caution, Block.Weight.CAUTION)));
        add(steps, Kind.IDEA, idea);
        steps.add(new PresenterStep(Kind.SETTINGS, Kind.SETTINGS.name(), List.of()));
        run.result().map(LessonResult::picturesBefore).ifPresent(pictures -> addPictures(steps, pictures));
        steps.add(new PresenterStep(Kind.QUESTION, Kind.QUESTION.name(), List.of()));
        if (run.open() && run.result().isPresent()) {
            LessonResult result = run.result().get();
            add(steps, Kind.ANSWER, answer(run));
            addPictures(
                    steps, result.pictures().stream().filter(Picture::revealing).toList());
            steps.add(new PresenterStep(Kind.FIGURES, Kind.FIGURES.name(), List.of()));
            addTheory(steps, lesson);
        }
        return steps;
    }

    private static void addPictures(List<PresenterStep> steps, List<Picture> pictures) {
        for (Picture picture : pictures) {
            steps.add(new PresenterStep(Kind.PICTURE, pictureKey(picture), List.of()));
        }
    }

    private static String pictureKey(Picture picture) {
        return Kind.PICTURE.name() + "." + picture.id();
    }

    /** Returns the plot of a step that shows one. */
    Optional<Picture> picture(LessonRun run) {
        return run.result().stream()
                .flatMap(result -> result.pictures().stream())
                .filter(picture -> pictureKey(picture).equals(key))
                .findFirst();
    }

    /** Returns the paragraphs on the answer for the values of now. */
    static List<Block> answer(LessonRun run) {
        List<Block> blocks = new ArrayList<>();
        boolean right = run.feedback().map(feedback -> feedback.right()).orElse(false);
        Block.Weight weight = run.moved() ? Block.Weight.MAIN : right ? Block.Weight.RIGHT : Block.Weight.WRONG;
        blocks.add(new Block(AnswerWords.of(run), weight));
        AnswerWords.remarks(run).forEach(remark -> blocks.add(new Block(remark, Block.Weight.PLAIN)));
        AnswerWords.cautionsOfValues(run).forEach(caution -> blocks.add(new Block(caution, Block.Weight.CAUTION)));
        return blocks;
    }

    private static void addTheory(List<PresenterStep> steps, Lesson lesson) {
        add(steps, Kind.WHY, blocks(List.of(lesson.explanation().split("\n")), Block.Weight.PLAIN));
        if (!lesson.formulas().isEmpty()) {
            add(steps, Kind.FORMULAS, blocks(lesson.formulas(), Block.Weight.FORMULA));
        }
        add(
                steps,
                Kind.SOURCES,
                blocks(lesson.sources().stream().map(PresenterStep::words).toList(), Block.Weight.PLAIN));
    }

    private static String words(Source source) {
        return source.link().map(link -> source.text() + "\n" + link).orElse(source.text());
    }

    private static List<Block> blocks(List<String> texts, Block.Weight weight) {
        return texts.stream()
                .filter(text -> !text.isBlank())
                .map(text -> new Block(text, weight))
                .toList();
    }

    /** Adds as many steps as the paragraphs need. */
    private static void add(List<PresenterStep> steps, Kind kind, List<Block> blocks) {
        List<Block> page = new ArrayList<>();
        int lines = 0;
        int pages = 0;
        for (Block block : blocks) {
            int needed =
                    1 + (int) Math.ceil(block.words().length() * block.weight().size() / CHARACTERS_PER_LINE);
            if (!page.isEmpty() && lines + needed > LINES) {
                steps.add(new PresenterStep(kind, key(kind, pages), page));
                pages++;
                page.clear();
                lines = 0;
            }
            page.add(block);
            lines += needed;
        }
        steps.add(new PresenterStep(kind, key(kind, pages), page));
    }

    private static String key(Kind kind, int page) {
        return page == 0 ? kind.name() : kind.name() + "." + page;
    }
}

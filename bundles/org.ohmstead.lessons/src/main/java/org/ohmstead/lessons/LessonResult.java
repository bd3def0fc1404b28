// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;

/**
 * What a lesson shows for one setting of its controls.
 *
 * @param figures numbers, the one that the lesson turns on first
 * @param pictures plots, at least one
 * @param answer to the lesson's question
 * @param remarks what is worth noticing at this setting, in whole sentences; may be empty
 * @param cautions what could hurt hands, ears or gear at this setting, in whole sentences; may be empty
 */
public record LessonResult(
        List<Figure> figures, List<Picture> pictures, Answer answer, List<String> remarks, List<String> cautions) {
    /** Copies the lists and checks the parameters. */
    public LessonResult {
        figures = Checks.some(figures, "figures");
        pictures = Checks.some(pictures, "pictures");
        Checks.present(answer, "answer");
        remarks = List.copyOf(remarks);
        cautions = List.copyOf(cautions);
    }

    /**
     * Returns the figure of an id.
     *
     * @throws IllegalArgumentException if there is none
     */
    public Figure figure(String id) {
        return figures.stream()
                .filter(figure -> figure.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("id is '" + id + "'; it must be one of "
                        + figures.stream().map(Figure::id).toList()));
    }

    /** Returns the figures that do not give the answer away. */
    public List<Figure> figuresBefore() {
        return figures.stream().filter(figure -> !figure.revealing()).toList();
    }

    /** Returns the plots that do not give the answer away. */
    public List<Picture> picturesBefore() {
        return pictures.stream().filter(picture -> !picture.revealing()).toList();
    }
}

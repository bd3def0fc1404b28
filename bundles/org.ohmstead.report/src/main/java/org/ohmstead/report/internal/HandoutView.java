// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;

/**
 * The teaching handout as the template sees it.
 *
 * @param facts the title block
 * @param given the one result that all questions start from; empty when there is none
 * @param predictions what the learner guesses before reading on
 * @param steps the results, explained
 * @param confidence in percent, with its sign
 * @param log the log's head
 */
public record HandoutView(
        List<Item> facts, String given, List<Prediction> predictions, List<Step> steps, String confidence, String log) {
    /** Copies the lists. */
    public HandoutView {
        facts = List.copyOf(facts);
        predictions = List.copyOf(predictions);
        steps = List.copyOf(steps);
    }

    /**
     * A question to answer before the result is seen.
     *
     * @param step number of the step that answers it
     * @param question with what is known so far
     * @param unit of the answer
     */
    public record Prediction(int step, String question, String unit) {}

    /**
     * One idea, with the formula and the numbers of this test.
     *
     * @param number of the step, from 1
     * @param title a few words
     * @param idea what it is about, in plain words
     * @param formula markup of our own
     * @param symbols what the letters stand for
     * @param source where the formula comes from
     * @param worked lines of the calculation with this test's numbers
     * @param measured what was measured, beside the calculation; may be empty
     * @param meaning why they agree or not, in plain words
     * @param charts that go with it
     */
    public record Step(
            int number,
            String title,
            String idea,
            String formula,
            String symbols,
            String source,
            List<String> worked,
            String measured,
            String meaning,
            List<Chart> charts) {
        /** Copies the lists. */
        public Step {
            worked = List.copyOf(worked);
            charts = List.copyOf(charts);
        }
    }
}

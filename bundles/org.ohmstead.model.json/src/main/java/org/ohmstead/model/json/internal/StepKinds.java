// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.json.ProjectFileException;

/** The closed alternatives, told apart in files by their field {@code kind}: stimulus and end point. */
final class StepKinds {
    private static final String KIND = "kind";
    private static final String CONTINUOUS_SINE = "continuousSine";
    private static final String TONE_BURST = "toneBurst";
    private static final String DISTORTION_LIMIT = "distortionLimit";
    private static final String CLIPPING_ONSET = "clippingOnset";
    private static final String FIXED_LEVEL = "fixedLevel";

    private StepKinds() {}

    static ObjectNode toJson(Stimulus stimulus) {
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return ObjectBuilder.begin()
                    .text(KIND, TONE_BURST)
                    .number("frequencyHz", burst.frequencyHz())
                    .number("onSeconds", burst.onSeconds())
                    .number("periodSeconds", burst.periodSeconds())
                    .number("lowLevelDb", burst.lowLevelDb())
                    .end();
        }
        return ObjectBuilder.begin()
                .text(KIND, CONTINUOUS_SINE)
                .number("frequencyHz", stimulus.frequencyHz())
                .end();
    }

    static ObjectNode toJson(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return ObjectBuilder.begin()
                    .text(KIND, DISTORTION_LIMIT)
                    .number("ratio", limit.ratio())
                    .choice("measure", limit.measure())
                    .end();
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return ObjectBuilder.begin()
                    .text(KIND, FIXED_LEVEL)
                    .number("driveDb", level.driveDb())
                    .end();
        }
        return ObjectBuilder.begin().text(KIND, CLIPPING_ONSET).end();
    }

    /** Writes the fields of a stimulus in the order of their names. */
    static void stimulus(Stimulus stimulus, CanonicalText to) {
        to.number("frequencyHz", stimulus.frequencyHz());
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            to.text(KIND, TONE_BURST)
                    .number("lowLevelDb", burst.lowLevelDb())
                    .number("onSeconds", burst.onSeconds())
                    .number("periodSeconds", burst.periodSeconds());
        } else {
            to.text(KIND, CONTINUOUS_SINE);
        }
    }

    /** Writes the fields of an end point in the order of their names. */
    static void endPoint(EndPoint endPoint, CanonicalText to) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            to.text(KIND, DISTORTION_LIMIT).choice("measure", limit.measure()).number("ratio", limit.ratio());
        } else if (endPoint instanceof EndPoint.FixedLevel level) {
            to.number("driveDb", level.driveDb()).text(KIND, FIXED_LEVEL);
        } else {
            to.text(KIND, CLIPPING_ONSET);
        }
    }

    static Stimulus stimulus(FieldReader in) throws ProjectFileException {
        String kind = in.choice(KIND, List.of(CONTINUOUS_SINE, TONE_BURST), "field.step.stimulus");
        double frequencyHz = in.number("frequencyHz", "field.stimulus.frequencyHz");
        if (kind.equals(CONTINUOUS_SINE)) {
            return in.build(() -> new Stimulus.ContinuousSine(frequencyHz));
        }
        double onSeconds = in.number("onSeconds", "field.stimulus.onSeconds");
        double periodSeconds = in.number("periodSeconds", "field.stimulus.periodSeconds");
        double lowLevelDb = in.number("lowLevelDb", "field.stimulus.lowLevelDb");
        return in.build(() -> new Stimulus.ToneBurst(frequencyHz, onSeconds, periodSeconds, lowLevelDb));
    }

    static EndPoint endPoint(FieldReader in) throws ProjectFileException {
        String kind = in.choice(KIND, List.of(DISTORTION_LIMIT, CLIPPING_ONSET, FIXED_LEVEL), "field.step.endPoint");
        if (kind.equals(DISTORTION_LIMIT)) {
            double ratio = in.number("ratio", "field.endPoint.ratio");
            DistortionMeasure measure = in.choice("measure", DistortionMeasure.class, "field.endPoint.measure");
            return in.build(() -> new EndPoint.DistortionLimit(ratio, measure));
        }
        if (kind.equals(FIXED_LEVEL)) {
            double driveDb = in.number("driveDb", "field.endPoint.driveDb");
            return in.build(() -> new EndPoint.FixedLevel(driveDb));
        }
        return in.build(EndPoint.ClippingOnset::new);
    }
}

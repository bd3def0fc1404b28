// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** What the test log calls the cases of the model. */
final class Words {
    private static final Messages TEXTS = Messages.of(Words.class);

    private Words() {}

    static String of(Mode mode) {
        return TEXTS.text("mode." + mode.name());
    }

    static String of(EndPointOutcome outcome) {
        return TEXTS.text("outcome." + outcome.name());
    }

    /** Returns the sign before a power that is only a bound. */
    static String bound(EndPointOutcome outcome) {
        return switch (outcome) {
            case REACHED -> "";
            case NOT_REACHED -> "\u2265\u00a0";
            case ALREADY_BEYOND -> "\u2264\u00a0";
        };
    }

    static String explain(EndPointOutcome outcome) {
        return TEXTS.text("outcome." + outcome.name() + ".why");
    }

    static String of(DistortionMeasure measure) {
        return switch (measure) {
            case THD_F -> "THD_F";
            case THD_R -> "THD_R";
            case THD_PLUS_NOISE_R -> "THD+N_R";
        };
    }

    static String of(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            return Numbers.percent(limit.ratio()) + " " + of(limit.measure());
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return TEXTS.text("endPoint.level", Numbers.shown(level.driveDb()));
        }
        return TEXTS.text("endPoint.clipping");
    }

    static String of(Stimulus stimulus) {
        String hertz = Numbers.shown(stimulus.frequencyHz());
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return TEXTS.text(
                    "stimulus.burst",
                    hertz,
                    Numbers.shown(1000 * burst.onSeconds()),
                    Numbers.shown(1000 * burst.periodSeconds()),
                    Numbers.shown(burst.lowLevelDb()));
        }
        return TEXTS.text("stimulus.sine", hertz);
    }

    static String of(MeterQuantity quantity) {
        return TEXTS.text("quantity." + quantity.name());
    }
}

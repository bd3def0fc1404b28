// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/**
 * A step as it is said to the person at the bench.
 *
 * @param headline load, mode and supply volts
 * @param signal what is fed in, and until where
 * @param connect what to strap, connect and set, whole sentences
 */
record StepWords(String headline, String signal, String connect) {
    private static final Messages TEXTS = Messages.of(StepWords.class);

    private static final String BETWEEN = "  \u00b7  ";
    private static final double MILLI = 1000;

    static StepWords of(Project project, Step step) {
        return new StepWords(
                headline(project, step),
                TEXTS.text("step.signal", signal(step.stimulus()), endPoint(step.endPoint())),
                connect(project, step));
    }

    /** Returns the headline alone, for lists that are said anew while a run goes on. */
    static String headline(Project project, Step step) {
        String ohms = project.load(step.loadId())
                .map(load -> Numbers.shown(load.nominalOhms()) + " \u03a9")
                .orElseGet(() -> TEXTS.text("step.unknownLoad", step.loadId()));
        return ohms + BETWEEN + mode(step.mode()) + BETWEEN + Numbers.format("%.1f V", step.supplyVolts());
    }

    static String mode(Mode mode) {
        return TEXTS.text("step.mode." + mode.name());
    }

    private static String signal(Stimulus stimulus) {
        String tone = frequency(stimulus.frequencyHz());
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return TEXTS.text(
                    "step.bursts",
                    tone,
                    Numbers.shown(MILLI * burst.onSeconds()),
                    Numbers.shown(MILLI * burst.periodSeconds()));
        }
        return TEXTS.text("step.sine", tone);
    }

    private static String frequency(double hertz) {
        return hertz < MILLI ? Numbers.shown(hertz) + " Hz" : Numbers.shown(hertz / MILLI) + " kHz";
    }

    private static String endPoint(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            String measure = limit.measure() == DistortionMeasure.THD_PLUS_NOISE_R ? "THD+N" : "THD";
            return TEXTS.text("step.upTo", Numbers.percent(limit.ratio()), measure);
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return TEXTS.text("step.drive", Numbers.shown(level.driveDb()));
        }
        return TEXTS.text("step.clips");
    }

    private static String connect(Project project, Step step) {
        List<String> sentences = new ArrayList<>();
        project.load(step.loadId()).ifPresent(load -> sentences.add(strap(load, step.mode())));
        sentences.add(TEXTS.text("step.branches." + step.mode().name()));
        sentences.add(TEXTS.text("step.supply", Numbers.format("%.2f", step.supplyVolts())));
        return String.join(" ", sentences);
    }

    private static String strap(BenchLoad load, Mode mode) {
        LoadBranch branch = load.branches().get(0);
        int count = mode == Mode.STEREO ? load.branches().size() : 1;
        boolean alike = load.branches().stream().limit(count).allMatch(each -> each.network()
                .equals(branch.network()));
        if (!alike || branch.network().isBlank()) {
            return TEXTS.text("step.load", load.id());
        }
        return TEXTS.text(count > 1 ? "step.strappedEach" : "step.strapped", load.id(), branch.network());
    }
}

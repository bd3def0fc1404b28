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
import org.ohmstead.workbench.look.Numbers;

/**
 * A step as it is said to the person at the bench.
 *
 * @param headline load, mode and supply volts
 * @param signal what is fed in, and until where
 * @param connect what to strap, connect and set, whole sentences
 */
record StepWords(String headline, String signal, String connect) {
    private static final String BETWEEN = "  \u00b7  ";
    private static final double MILLI = 1000;

    static StepWords of(Project project, Step step) {
        String ohms = project.load(step.loadId())
                .map(load -> Numbers.shown(load.nominalOhms()) + " \u03a9")
                .orElse("load \"" + step.loadId() + "\"");
        String headline = ohms + BETWEEN + mode(step.mode()) + BETWEEN + Numbers.format("%.1f V", step.supplyVolts());
        return new StepWords(
                headline, signal(step.stimulus()) + ", " + endPoint(step.endPoint()), connect(project, step));
    }

    static String mode(Mode mode) {
        return switch (mode) {
            case STEREO -> "stereo";
            case BRIDGED -> "bridged";
            case SINGLE -> "one channel";
        };
    }

    private static String signal(Stimulus stimulus) {
        String tone = frequency(stimulus.frequencyHz());
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return tone + " bursts, " + Numbers.shown(MILLI * burst.onSeconds()) + " ms of "
                    + Numbers.shown(MILLI * burst.periodSeconds()) + " ms";
        }
        return tone + " sine";
    }

    private static String frequency(double hertz) {
        return hertz < MILLI ? Numbers.shown(hertz) + " Hz" : Numbers.shown(hertz / MILLI) + " kHz";
    }

    private static String endPoint(EndPoint endPoint) {
        if (endPoint instanceof EndPoint.DistortionLimit limit) {
            String measure = limit.measure() == DistortionMeasure.THD_PLUS_NOISE_R ? "THD+N" : "THD";
            return "up to " + Numbers.percent(limit.ratio()) + " " + measure;
        }
        if (endPoint instanceof EndPoint.FixedLevel level) {
            return "at a drive of " + Numbers.shown(level.driveDb()) + " dB";
        }
        return "up to where it clips";
    }

    private static String connect(Project project, Step step) {
        List<String> sentences = new ArrayList<>();
        project.load(step.loadId()).ifPresent(load -> sentences.add(strap(load, step.mode())));
        sentences.add(
                switch (step.mode()) {
                    case STEREO -> "One branch to each channel.";
                    case BRIDGED -> "One branch between the two outputs; neither of them is ground.";
                    case SINGLE -> "One branch to channel A; nothing on the others.";
                });
        sentences.add(Numbers.format("Supply %.2f V at the amplifier's terminals.", step.supplyVolts()));
        return String.join(" ", sentences);
    }

    private static String strap(BenchLoad load, Mode mode) {
        LoadBranch branch = load.branches().get(0);
        int count = mode == Mode.STEREO ? load.branches().size() : 1;
        boolean alike = load.branches().stream().limit(count).allMatch(each -> each.network()
                .equals(branch.network()));
        String how = branch.network().isBlank() ? "" : ", strapped as " + branch.network();
        return "Load \"" + load.id() + "\"" + (alike ? how + (count > 1 && !how.isEmpty() ? " each" : "") : "") + ".";
    }
}

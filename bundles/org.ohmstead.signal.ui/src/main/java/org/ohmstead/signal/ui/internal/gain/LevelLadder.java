// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ohmstead.signal.gain.GainSetup;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.signal.gain.MeterCheck;
import org.ohmstead.signal.gain.SourceLevels;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/**
 * The levels of a set-up from the source to the load as rungs above one another, all in dB relative to the end point.
 *
 * @param rungs the highest first
 * @param clipDb where the amplifier clips
 * @param fullScaleDb where the source ends
 * @param musicHighDb where the average of much recorded music begins, 12 dB below full scale
 * @param musicLowDb where it ends, 18 dB below full scale
 * @param topDb the upper end of the drawing
 * @param bottomDb the lower end of the drawing
 */
record LevelLadder(
        List<Rung> rungs,
        double clipDb,
        double fullScaleDb,
        double musicHighDb,
        double musicLowDb,
        double topDb,
        double bottomDb) {
    /** Common practice: recorded music peaks at full scale and averages 12 to 18 dB below. */
    private static final double MUSIC_HIGH_DBFS = -12;

    private static final double MUSIC_LOW_DBFS = -18;
    private static final double MARGIN_DB = 3;
    private static final double SAME_DB = 0.05;
    private static final int DIGITS = 3;

    /** What a rung stands for. */
    enum Kind {
        FULL_SCALE,
        CLIP,
        END_POINT,
        CHECK
    }

    /**
     * A level on both sides of the amplifier.
     *
     * @param kind what it stands for
     * @param levelDb relative to the end point
     * @param name what it is called
     * @param inputVolts the volts at the input, with their unit
     * @param inputLevel the level of the source, with its unit
     * @param outputVolts the volts at the load, with their unit
     * @param outputPower the power in the load, with its unit
     */
    record Rung(
            Kind kind,
            double levelDb,
            String name,
            String inputVolts,
            String inputLevel,
            String outputVolts,
            String outputPower) {}

    LevelLadder {
        rungs = List.copyOf(rungs);
    }

    static LevelLadder of(GainSetup setup, MeterCheck check, Messages messages) {
        double clipDb = setup.amplifierHeadroomDb();
        double fullScaleDb = setup.sourceHeadroomDb();
        List<Rung> rungs = new ArrayList<>();
        boolean together = Math.abs(clipDb) < SAME_DB;
        rungs.add(rung(Kind.FULL_SCALE, fullScaleDb, messages.text("rung.fullScale"), setup));
        rungs.add(rung(Kind.END_POINT, 0, messages.text(together ? "rung.endPointClips" : "rung.endPoint"), setup));
        if (!together) {
            rungs.add(rung(Kind.CLIP, clipDb, messages.text("rung.clip"), setup));
        }
        rungs.add(rung(Kind.CHECK, check.relativeDb(), messages.text("rung.check"), setup));
        rungs.sort(Comparator.comparingDouble(Rung::levelDb).reversed());
        double lowest = Math.min(check.relativeDb(), fullScaleDb + MUSIC_LOW_DBFS);
        return new LevelLadder(
                rungs,
                clipDb,
                fullScaleDb,
                fullScaleDb + MUSIC_HIGH_DBFS,
                fullScaleDb + MUSIC_LOW_DBFS,
                Math.max(0, Math.max(clipDb, fullScaleDb)) + MARGIN_DB,
                Math.min(clipDb, lowest) - MARGIN_DB);
    }

    private static Rung rung(Kind kind, double levelDb, String name, GainSetup setup) {
        GainTarget target = setup.target();
        double inputVolts = setup.sensitivityVoltsRms() * Decibels.toFieldRatio(levelDb);
        double outputVolts = target.outputVoltsRms() * Decibels.toFieldRatio(levelDb);
        double dbfs = SourceLevels.dbfs(inputVolts, setup.fullScaleVoltsRms());
        return new Rung(
                kind,
                levelDb,
                name,
                Numbers.digits(inputVolts, DIGITS) + " V",
                Numbers.format("%.1f dBFS", Math.abs(dbfs) < SAME_DB ? 0 : dbfs),
                Numbers.digits(outputVolts, DIGITS) + " V",
                Numbers.digits(target.wattsAt(outputVolts), DIGITS) + " W");
    }

    /** Returns whether the source can drive the amplifier beyond clipping. */
    boolean clips() {
        return fullScaleDb > clipDb + SAME_DB;
    }

    /** Returns how far down a level lies in the drawing, 0 at the top and 1 at the bottom. */
    double depth(double levelDb) {
        return (topDb - levelDb) / (topDb - bottomDb);
    }

    /** Returns all of it in words, for those who cannot see the drawing. */
    String words() {
        StringBuilder words = new StringBuilder();
        for (Rung rung : rungs) {
            words.append(words.isEmpty() ? "" : "\n")
                    .append(rung.name())
                    .append(": ")
                    .append(rung.inputVolts())
                    .append(", ")
                    .append(rung.inputLevel())
                    .append(" \u2192 ")
                    .append(rung.outputVolts())
                    .append(", ")
                    .append(rung.outputPower());
        }
        return words.toString();
    }
}

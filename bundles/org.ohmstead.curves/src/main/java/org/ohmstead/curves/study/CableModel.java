// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.curves.internal.Checks;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;

/**
 * The cable between the supply, where the voltage was read, and the amplifier's terminals.
 *
 * @param loopOhms its resistance there and back, at least 0
 * @param draw how the amplifier draws its current
 * @param channelsDriven how many channels were driven together, at least 1; one alone in {@link Mode#SINGLE} whatever
 *     this says
 */
public record CableModel(double loopOhms, CurrentDraw draw, int channelsDriven) {
    private static final Messages TEXTS = Messages.of(CableModel.class);

    /**
     * Loss of a current shaped like a rectified sine over that of a steady one of the same mean: pi²/8 (closed form of
     * its RMS value, pi/(2 sqrt 2) times the mean).
     */
    public static final double RECTIFIED_SINE_LOSS_RATIO = Math.PI * Math.PI / 8;

    /** Checks the ranges given above. */
    public CableModel {
        Checks.notNegative("loopOhms", loopOhms);
        if (channelsDriven < 1) {
            throw new IllegalArgumentException("channelsDriven is " + channelsDriven + " but must be at least 1.");
        }
    }

    /** How an amplifier draws its current. */
    public sealed interface CurrentDraw {

        /**
         * Class AB straight from the supply, each channel between two output stages: the mean current of a channel is
         * that of the rectified sine, 2 V_peak/(pi r). The drop of the mean voltage takes the mean current.
         *
         * @param smoothed whether capacitors inside make the current in the cable steady; if not, the cable heats by
         *     {@link CableModel#RECTIFIED_SINE_LOSS_RATIO} more
         */
        record ClassAbBridgeTied(boolean smoothed) implements CurrentDraw {}

        /**
         * A converter inside that draws the power it needs, whatever the voltage: a steady current of P/(eff V).
         *
         * @param efficiencyRatio output over input power, above 0 and at most 1
         */
        record ConstantPower(double efficiencyRatio) implements CurrentDraw {

            /** Checks the range given above. */
            public ConstantPower {
                if (Checks.positive("efficiencyRatio", efficiencyRatio) > 1) {
                    throw new IllegalArgumentException(
                            "efficiencyRatio is " + efficiencyRatio + " but must be at most 1.");
                }
            }
        }
    }

    /** What reaches the terminals. */
    public sealed interface TerminalVolts {

        /**
         * A voltage there.
         *
         * @param terminalVolts at the terminals
         * @param supplyAmps mean current in the cable
         * @param heatWatts what the cable turns to heat
         */
        record Found(double terminalVolts, double supplyAmps, double heatWatts) implements TerminalVolts {}

        /**
         * The cable cannot carry it.
         *
         * @param limitWatts the most input power that reaches an amplifier through this cable
         * @param reason why, and what to do, in whole sentences
         */
        record NoSolution(double limitWatts, String reason) implements TerminalVolts {}
    }

    /**
     * Returns the peak volts of a class AB channel between two output stages, behind a cable of its own: (V_s -
     * V_sat)/(1 + 2 R_c/(pi r)) (closed form); 0 when the supply is below the loss.
     *
     * @param supplyVolts V_s, before the cable, above 0
     * @param saturationVolts V_sat, peak volts lost
     * @param channelOhms r, above 0
     * @param loopOhms R_c, at least 0
     */
    public static double classAbPeakVolts(
            double supplyVolts, double saturationVolts, double channelOhms, double loopOhms) {
        Checks.positive("supplyVolts", supplyVolts);
        Checks.positive("channelOhms", channelOhms);
        Checks.notNegative("loopOhms", loopOhms);
        return Math.max(0, (supplyVolts - saturationVolts) / (1 + 2 * loopOhms / (Math.PI * channelOhms)));
    }

    /**
     * Returns what is left at the terminals of an amplifier that draws a power whatever its voltage: V = (V_s +
     * sqrt(V_s² - 4 R_c P))/2 (closed form). More than V_s²/(4 R_c) does not get through the cable.
     *
     * @param supplyVolts V_s, before the cable, above 0
     * @param inputWatts P, what the amplifier draws at its terminals, at least 0
     * @param loopOhms R_c, at least 0
     */
    public static TerminalVolts constantPower(double supplyVolts, double inputWatts, double loopOhms) {
        Checks.positive("supplyVolts", supplyVolts);
        Checks.notNegative("inputWatts", inputWatts);
        Checks.notNegative("loopOhms", loopOhms);
        double discriminant = supplyVolts * supplyVolts - 4 * loopOhms * inputWatts;
        if (discriminant < 0) {
            double limitWatts = supplyVolts * supplyVolts / (4 * loopOhms);
            return new TerminalVolts.NoSolution(
                    limitWatts,
                    TEXTS.text(
                            "cable.tooMuch",
                            StudyWords.say("%.3g", loopOhms),
                            StudyWords.say("%.4g", limitWatts),
                            StudyWords.say("%.4g", supplyVolts),
                            StudyWords.say("%.4g", inputWatts)));
        }
        double volts = (supplyVolts + Math.sqrt(discriminant)) / 2;
        double amps = inputWatts / volts;
        return new TerminalVolts.Found(volts, amps, amps * amps * loopOhms);
    }

    /** Returns what reached the terminals in a reading whose voltage was taken before the cable. */
    public TerminalVolts terminalVolts(StudyPoint point) {
        Checks.positive("supplyVolts", point.supplyVolts());
        Checks.positive("loadOhms", point.loadOhms());
        Checks.notNegative("powerWatts", point.powerWatts());
        int driven = point.mode() == Mode.SINGLE ? 1 : Math.max(channelsDriven, point.channels());
        double channelWatts = point.powerWatts() / point.channels();
        if (draw instanceof CurrentDraw.ConstantPower constant) {
            return constantPower(point.supplyVolts(), driven * channelWatts / constant.efficiencyRatio(), loopOhms);
        }
        boolean smoothed = draw instanceof CurrentDraw.ClassAbBridgeTied classAb && classAb.smoothed();
        double peakVolts = Math.sqrt(2 * point.channelOhms() * channelWatts);
        double amps = driven * 2 * peakVolts / (Math.PI * point.channelOhms());
        double volts = point.supplyVolts() - loopOhms * amps;
        if (volts <= 0) {
            return new TerminalVolts.NoSolution(
                    point.supplyVolts() * point.supplyVolts() / (4 * loopOhms),
                    TEXTS.text(
                            "cable.losesAll",
                            StudyWords.say("%.3g", loopOhms),
                            StudyWords.say("%.4g", point.supplyVolts()),
                            StudyWords.say("%.4g", amps)));
        }
        double loss = smoothed ? 1 : RECTIFIED_SINE_LOSS_RATIO;
        return new TerminalVolts.Found(volts, amps, loss * amps * amps * loopOhms);
    }

    /**
     * Readings corrected to the terminals.
     *
     * @param points those that could be
     * @param refused those that could not
     */
    public record Corrected(List<StudyPoint> points, List<RefusedPoint> refused) {

        /** Copies the lists. */
        public Corrected {
            points = List.copyOf(points);
            refused = List.copyOf(refused);
        }
    }

    /** Returns readings whose voltage was taken before the cable as if it had been taken at the terminals. */
    public Corrected correct(List<StudyPoint> points) {
        List<StudyPoint> corrected = new ArrayList<>();
        List<RefusedPoint> refused = new ArrayList<>();
        for (StudyPoint point : points) {
            if (point.supplyVolts() <= 0 || point.loadOhms() <= 0 || point.powerWatts() < 0) {
                refused.add(new RefusedPoint(point, TEXTS.text("cable.unknown")));
                continue;
            }
            TerminalVolts volts = terminalVolts(point);
            if (volts instanceof TerminalVolts.Found found) {
                corrected.add(point.withSupplyVolts(found.terminalVolts()));
            } else if (volts instanceof TerminalVolts.NoSolution none) {
                refused.add(new RefusedPoint(point, none.reason()));
            }
        }
        return new Corrected(corrected, refused);
    }
}

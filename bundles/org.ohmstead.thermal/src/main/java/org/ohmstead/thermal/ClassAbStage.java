// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Optional;
import org.ohmstead.units.text.Messages;

/**
 * A linear output stage of class B, or AB with little standing current. The rails deliver their volts times the mean of the rectified output
 * current, whatever the load does with it: P_in = V |I|_mean. For a sine of peak m V into R that is 2 m V²/(pi R), and the heat is greatest
 * at m = 2/pi, where the efficiency is one half (closed form). Immutable.
 *
 * @param reachVolts the highest peak at the load without loss in the devices, above 0: one rail of a split pair, both together when bridged
 * @param devices output devices that share the heat, at least 2
 */
public record ClassAbStage(double reachVolts, int devices) implements OutputStage {
    private static final Messages TEXTS = Messages.of(ClassAbStage.class);
    private static final double SINE_MEAN = 2 * Math.sqrt(2) / Math.PI;
    private static final double GAUSS_MEAN = Math.sqrt(2 / Math.PI);
    /** Rounding of a level that is meant to be just at the rails. */
    private static final double ROUNDING = 1e-12;

    private static final int HALVINGS = 200;

    public ClassAbStage {
        Checks.positive(reachVolts, "reachVolts");
        Checks.within(devices, 2, 1000, "devices");
    }

    /** Returns a channel between two rails of so many volts to ground each: two devices. */
    public static ClassAbStage splitRails(double railVolts) {
        return new ClassAbStage(Checks.positive(railVolts, "railVolts"), 2);
    }

    /** Returns a channel with its load through a capacitor on one supply: its rails are half the supply. */
    public static ClassAbStage singleSupply(double supplyVolts) {
        return new ClassAbStage(Checks.positive(supplyVolts, "supplyVolts") / 2, 2);
    }

    /** Returns a full bridge on one supply: four devices, two of them in the path at any moment. */
    public static ClassAbStage fullBridge(double supplyVolts) {
        return new ClassAbStage(Checks.positive(supplyVolts, "supplyVolts"), 4);
    }

    /** Returns two such channels with one load between their outputs: each sees half of the load's ohms. */
    public ClassAbStage bridgedPair() {
        return new ClassAbStage(2 * reachVolts, 2 * devices);
    }

    /** Returns the highest RMS volts of a sine that is not clipped. */
    public double sineVoltsRms() {
        return reachVolts / Math.sqrt(2);
    }

    /** Returns the sine whose peak is a part of the rails, 0 to 1. */
    public Drive.Sine atRailRatio(double ratio) {
        return new Drive.Sine(Checks.within(ratio, 0, 1, "ratio") * sineVoltsRms());
    }

    @Override
    public PowerSplit steady(Drive.Steady drive, StageLoad load) {
        Optional<String> objection = objection(drive, load);
        if (objection.isPresent()) {
            throw new IllegalArgumentException(objection.get());
        }
        double voltsRms = drive.outputVoltsRms();
        double meanVolts = drive instanceof Drive.Programme ? GAUSS_MEAN * voltsRms : sineMeanVolts(voltsRms);
        return new PowerSplit(load.watts(voltsRms), reachVolts * meanVolts / load.ohms());
    }

    @Override
    public Optional<String> objection(Drive drive, StageLoad load) {
        for (Drive.Stretch stretch : drive.stretches()) {
            double voltsRms = stretch.drive().outputVoltsRms();
            if (voltsRms >= reachVolts) {
                return Optional.of(TEXTS.text(
                        "stage.beyond",
                        SupplyFigures.format("%.4g", voltsRms),
                        SupplyFigures.format("%.4g", reachVolts)));
            }
            if (load.phaseRadians() != 0 && voltsRms > sineVoltsRms() * (1 + ROUNDING)) {
                return Optional.of(TEXTS.text(
                        "stage.clips",
                        SupplyFigures.format("%.4g", voltsRms),
                        SupplyFigures.format("%.4g", reachVolts)));
            }
        }
        return Optional.empty();
    }

    @Override
    public WorstLevel worstSine(StageLoad load, double mostOutputVoltsRms) {
        Checks.positive(mostOutputVoltsRms, "mostOutputVoltsRms");
        double ratio = Math.min(1, 2 / Math.PI / Math.cos(load.phaseRadians()));
        double voltsRms = Math.min(mostOutputVoltsRms, ratio * sineVoltsRms());
        return new WorstLevel(voltsRms, steady(new Drive.Sine(voltsRms), load));
    }

    /** Returns the heat of the hottest single device when all share alike, of a loss in watts. */
    public double deviceWatts(double lossWatts) {
        return lossWatts / devices;
    }

    /** Returns the mean of the rectified volts of a sine, clipped at the rails if need be. */
    private double sineMeanVolts(double voltsRms) {
        if (voltsRms <= sineVoltsRms() * (1 + ROUNDING)) {
            return SINE_MEAN * voltsRms;
        }
        // k is the rails over the peak that the sine would have; the angle up to the clip is asin k.
        double low = 0;
        double high = 1;
        for (int i = 0; i < HALVINGS && low < high; i++) {
            double middle = low + (high - low) / 2;
            if (middle <= low || middle >= high) {
                break;
            }
            if (clippedMeanSquare(middle) > voltsRms * voltsRms) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double angle = Math.asin(high);
        return 2 / Math.PI * reachVolts * ((1 - Math.cos(angle)) / high + Math.PI / 2 - angle);
    }

    private double clippedMeanSquare(double k) {
        double angle = Math.asin(k);
        double within = (angle - Math.sin(2 * angle) / 2) / 2 / (k * k);
        return 2 / Math.PI * reachVolts * reachVolts * (within + Math.PI / 2 - angle);
    }
}

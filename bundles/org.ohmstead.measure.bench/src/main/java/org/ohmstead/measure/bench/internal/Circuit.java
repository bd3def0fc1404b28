// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import org.ohmstead.model.Mode;

/**
 * The amplifier between its terminals and its load, in steps of time. Each channel amplifies, loses what lies in the crossover's dead
 * zone, meets its output resistance, and is limited by its rail: the highest output is (rail - V_s) R / (R + R_s). The rails sag by a
 * resistance with a time constant, exactly for a current that is constant within a step.
 */
final class Circuit {
    private static final double EARLY_RATIO = 0.6;
    private static final double OSCILLATION_SHARE = 0.06;
    private static final double OSCILLATION_HZ = 16_300;

    private final AmplifierTraits traits;
    private final Hookup hookup;
    private final Drive drive;
    private final double[] peakVolts;
    private final double[] crossPeakVolts;
    private final double shiftSeconds;
    private final double openRailVolts;
    private final Fault fault;
    private final int faultChannel;
    private double plusVolts;
    private double minusVolts;
    private double summedRailAmps;
    private double summedOutputWatts;
    private double highestVolts;
    private long steps;

    /**
     * Makes one at rest.
     *
     * @param aboveAirKelvin how much hotter than the air the case is
     */
    Circuit(
            AmplifierTraits traits,
            Hookup hookup,
            Drive drive,
            double terminalVolts,
            double aboveAirKelvin,
            Fault fault,
            int faultChannel) {
        this.traits = traits;
        this.hookup = hookup;
        this.drive = drive;
        this.fault = fault;
        this.faultChannel = faultChannel;
        this.openRailVolts =
                traits.openRailVolts(terminalVolts) * Math.max(0, 1 + traits.railPerKelvinRatio() * aboveAirKelvin);
        this.plusVolts = openRailVolts;
        this.minusVolts = openRailVolts;
        this.shiftSeconds = traits.bandRadians(drive.frequencyHz()) / (2 * Math.PI * drive.frequencyHz());
        int working = hookup.working(traits);
        this.peakVolts = new double[working];
        this.crossPeakVolts = new double[working];
        double band = traits.bandRatio(drive.frequencyHz());
        double cross = Math.pow(10, traits.crosstalkDb() / 20);
        double allPeaks = 0;
        for (int channel = 0; channel < traits.channelCount(); channel++) {
            allPeaks += drive.voltsPeak(channel);
        }
        for (int channel = 0; channel < working; channel++) {
            double gain = band * traits.gainRatio(channel, aboveAirKelvin);
            // In a bridge both channels hear the same source.
            double own = hookup.mode() == Mode.BRIDGED ? drive.voltsPeak(0) : drive.voltsPeak(channel);
            double others = hookup.mode() == Mode.STEREO ? allPeaks - own : 0;
            peakVolts[channel] = gain * own;
            crossPeakVolts[channel] = gain * cross * others;
        }
    }

    /**
     * Goes on by one step.
     *
     * @param atSeconds time since the feed began
     * @param stepSeconds length of the step
     * @param outputVolts where the volts across the loads go
     */
    void step(double atSeconds, double stepSeconds, double[] outputVolts) {
        double share = drive.shareAt(atSeconds, shiftSeconds);
        double plusAmps = 0;
        double minusAmps = 0;
        double watts = 0;
        double bridge = 0;
        for (int channel = 0; channel < peakVolts.length; channel++) {
            double polarity = hookup.mode() == Mode.BRIDGED && channel == 1 ? -1 : 1;
            double ohms = hookup.ohms(channel);
            double volts = channelVolts(channel, polarity * share, ohms, atSeconds);
            double amps = volts / ohms;
            double rail = amps >= 0 ? plusVolts : minusVolts;
            double drawn = traits.switching() ? Math.abs(volts * amps) / Math.max(rail, 1) : Math.abs(amps);
            plusAmps += amps >= 0 ? drawn : 0;
            minusAmps += amps >= 0 ? 0 : drawn;
            watts += volts * amps;
            highestVolts = Math.max(highestVolts, Math.abs(volts));
            bridge += polarity * volts;
            if (hookup.mode() != Mode.BRIDGED) {
                outputVolts[channel] = volts;
            }
        }
        if (hookup.mode() == Mode.BRIDGED) {
            outputVolts[0] = bridge;
        }
        sag(plusAmps, minusAmps, stepSeconds);
        summedRailAmps += plusAmps + minusAmps;
        summedOutputWatts += watts;
        steps++;
    }

    private double channelVolts(int channel, double share, double ohms, double atSeconds) {
        boolean concerned = channel == faultChannel;
        if (fault == Fault.CHANNEL_DEAD && concerned) {
            return 0;
        }
        double volts = share * (peakVolts[channel] + crossPeakVolts[channel]);
        double dead = traits.crossoverVolts();
        volts -= Math.max(-dead, Math.min(dead, volts));
        volts *= ohms / (ohms + traits.outputOhms());
        double rail = volts >= 0 ? plusVolts : minusVolts;
        double limit = Math.max(0, rail - traits.saturationVolts()) * ohms / (ohms + traits.saturationOhms());
        limit = Math.min(limit, traits.currentLimitAmps() * ohms);
        if (fault == Fault.CLIPS_EARLY && concerned) {
            limit *= EARLY_RATIO;
        }
        if (fault == Fault.OSCILLATION && concerned && Math.abs(volts) > 0.3 * limit) {
            volts += OSCILLATION_SHARE * limit * Math.sin(2 * Math.PI * OSCILLATION_HZ * atSeconds);
        }
        return limited(volts, limit, traits.kneeRatio());
    }

    /** Clips hard, or bends towards the limit by a hyperbolic tangent from the knee on. */
    private static double limited(double volts, double limit, double knee) {
        double size = Math.abs(volts);
        double straight = (1 - knee) * limit;
        if (size <= straight) {
            return volts;
        }
        double bent =
                knee > 0 && limit > 0 ? straight + knee * limit * Math.tanh((size - straight) / (knee * limit)) : limit;
        return Math.copySign(bent, volts);
    }

    private void sag(double plusAmps, double minusAmps, double stepSeconds) {
        if (traits.railOhms() <= 0) {
            return;
        }
        double kept = traits.railSeconds() > 0 ? Math.exp(-stepSeconds / traits.railSeconds()) : 0;
        double plusEnd = Math.max(0, openRailVolts - traits.railOhms() * plusAmps);
        double minusEnd = Math.max(0, openRailVolts - traits.railOhms() * minusAmps);
        plusVolts = plusEnd + (plusVolts - plusEnd) * kept;
        minusVolts = minusEnd + (minusVolts - minusEnd) * kept;
    }

    /** Begins to take averages anew. */
    void restartAverages() {
        summedRailAmps = 0;
        summedOutputWatts = 0;
        highestVolts = 0;
        steps = 0;
    }

    double meanOutputWatts() {
        return summedOutputWatts / steps;
    }

    /** Largest output of a channel since the averages began. */
    double highestVolts() {
        return highestVolts;
    }

    /** What the terminals give on average: the rails' power by way of the converter, and the idle current. */
    double meanSupplyAmps(double terminalVolts) {
        double ratio = traits.openRailVolts(terminalVolts) / terminalVolts;
        return ratio * summedRailAmps / steps / traits.converterEfficiencyRatio() + traits.idleAmps();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

/**
 * An impedance at one frequency.
 *
 * @param resistanceOhms its real part in ohms
 * @param reactanceOhms its imaginary part in ohms, above 0 for an inductance
 */
public record Impedance(double resistanceOhms, double reactanceOhms) {
    public Impedance {
        Checks.finite(resistanceOhms, "resistanceOhms");
        Checks.finite(reactanceOhms, "reactanceOhms");
    }

    /** Returns its magnitude in ohms. */
    public double magnitudeOhms() {
        return Math.hypot(resistanceOhms, reactanceOhms);
    }

    /** Returns by how many degrees the voltage leads the current, -180 to 180. */
    public double phaseDegrees() {
        return Math.toDegrees(Math.atan2(reactanceOhms, resistanceOhms));
    }

    /** Returns the real power in watts that a sine of so many RMS volts, at least 0, drives into it: V^2 Re(1/Z). */
    public double realPowerWatts(double voltsRms) {
        Checks.notNegative(voltsRms, "voltsRms");
        return voltsRms * voltsRms * conductanceSiemens();
    }

    /** Returns the apparent power in volt-amperes at so many RMS volts, at least 0: V^2 / |Z|. */
    public double apparentVoltAmps(double voltsRms) {
        Checks.notNegative(voltsRms, "voltsRms");
        return voltsRms * voltsRms / magnitudeOhms();
    }

    /** Returns the real part of its reciprocal in siemens. */
    public double conductanceSiemens() {
        return inverse().resistanceOhms;
    }

    /** Returns this impedance and another in series. */
    public Impedance plus(Impedance other) {
        return new Impedance(resistanceOhms + other.resistanceOhms, reactanceOhms + other.reactanceOhms);
    }

    /** Returns this impedance and another in parallel; neither may be 0. */
    public Impedance parallel(Impedance other) {
        return inverse().plus(other.inverse()).inverse();
    }

    /** One over this, the admittance, in the same clothes. */
    Impedance inverse() {
        double magnitude = magnitudeOhms();
        return new Impedance(resistanceOhms / magnitude / magnitude, -reactanceOhms / magnitude / magnitude);
    }
}

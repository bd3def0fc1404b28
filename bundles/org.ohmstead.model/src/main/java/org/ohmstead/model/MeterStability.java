// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * How far a meter may be trusted beyond its specification: what its calibration leaves open, how it drifts, and what temperature does.
 *
 * @param certificateExpandedRatio expanded uncertainty on the calibration certificate, as a share of the indication, 0 to 1; 0 when
 *     the specification already contains it
 * @param certificateCoverageFactor coverage factor k of it, above 0
 * @param driftRatioPerYear bound on the drift in a year since the calibration, as a share of the indication, 0 to 1
 * @param temperatureRatioPerKelvin bound on the change for each kelvin outside the temperatures, as a share of the indication, 0 to 1
 * @param fromCelsius lowest temperature for which the specification holds by itself, in degrees Celsius, -60 to 120
 * @param toCelsius highest such temperature, in degrees Celsius, fromCelsius to 120
 */
public record MeterStability(
        double certificateExpandedRatio,
        double certificateCoverageFactor,
        double driftRatioPerYear,
        double temperatureRatioPerKelvin,
        double fromCelsius,
        double toCelsius) {
    /** Nothing beyond the specification, which holds from 18 to 28 degrees Celsius. */
    public static final MeterStability NONE = new MeterStability(0, 2, 0, 0, 18, 28);

    public MeterStability {
        Checks.within(certificateExpandedRatio, 0, 1, "certificateExpandedRatio");
        Checks.positive(certificateCoverageFactor, "certificateCoverageFactor");
        Checks.within(driftRatioPerYear, 0, 1, "driftRatioPerYear");
        Checks.within(temperatureRatioPerKelvin, 0, 1, "temperatureRatioPerKelvin");
        Checks.within(fromCelsius, -60, 120, "fromCelsius");
        Checks.within(toCelsius, fromCelsius, 120, "toCelsius");
    }

    /** Returns how many kelvin a temperature in degrees Celsius lies outside fromCelsius to toCelsius; 0 within. */
    public double kelvinOutside(double celsius) {
        return Math.max(0, Math.max(fromCelsius - celsius, celsius - toCelsius));
    }

    /** Returns this stability with another expanded uncertainty of its certificate. */
    public MeterStability withCertificateExpandedRatio(double newCertificateExpandedRatio) {
        return new MeterStability(
                newCertificateExpandedRatio,
                certificateCoverageFactor,
                driftRatioPerYear,
                temperatureRatioPerKelvin,
                fromCelsius,
                toCelsius);
    }

    /** Returns this stability with another coverage factor of its certificate. */
    public MeterStability withCertificateCoverageFactor(double newCertificateCoverageFactor) {
        return new MeterStability(
                certificateExpandedRatio,
                newCertificateCoverageFactor,
                driftRatioPerYear,
                temperatureRatioPerKelvin,
                fromCelsius,
                toCelsius);
    }

    /** Returns this stability with another bound on the drift. */
    public MeterStability withDriftRatioPerYear(double newDriftRatioPerYear) {
        return new MeterStability(
                certificateExpandedRatio,
                certificateCoverageFactor,
                newDriftRatioPerYear,
                temperatureRatioPerKelvin,
                fromCelsius,
                toCelsius);
    }

    /** Returns this stability with another bound on what temperature does. */
    public MeterStability withTemperatureRatioPerKelvin(double newTemperatureRatioPerKelvin) {
        return new MeterStability(
                certificateExpandedRatio,
                certificateCoverageFactor,
                driftRatioPerYear,
                newTemperatureRatioPerKelvin,
                fromCelsius,
                toCelsius);
    }

    /** Returns this stability with another lowest temperature. */
    public MeterStability withFromCelsius(double newFromCelsius) {
        return new MeterStability(
                certificateExpandedRatio,
                certificateCoverageFactor,
                driftRatioPerYear,
                temperatureRatioPerKelvin,
                newFromCelsius,
                toCelsius);
    }

    /** Returns this stability with another highest temperature. */
    public MeterStability withToCelsius(double newToCelsius) {
        return new MeterStability(
                certificateExpandedRatio,
                certificateCoverageFactor,
                driftRatioPerYear,
                temperatureRatioPerKelvin,
                fromCelsius,
                newToCelsius);
    }
}

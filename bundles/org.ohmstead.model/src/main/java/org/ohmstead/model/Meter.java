// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;
import java.util.Optional;

/**
 * An instrument of the bench.
 *
 * @param id short name, unique among the meters
 * @param quantity what it reads
 * @param name what it is, not blank
 * @param serialNumber may be empty
 * @param accuracy its specification
 * @param calibratedOn day of its last calibration, when known
 * @param calibrationDueOn day its calibration runs out, when known
 * @param certificate number of the calibration certificate; may be empty
 * @param stability what its calibration leaves open, its drift, and what temperature does to it
 */
public record Meter(
        String id,
        MeterQuantity quantity,
        String name,
        String serialNumber,
        Accuracy accuracy,
        Optional<LocalDate> calibratedOn,
        Optional<LocalDate> calibrationDueOn,
        String certificate,
        MeterStability stability) {
    public Meter {
        Checks.named(id, "meter id");
        Checks.present(quantity, "quantity");
        Checks.named(name, "meter name");
        Checks.present(serialNumber, "serialNumber");
        Checks.present(accuracy, "accuracy");
        Checks.present(calibratedOn, "calibratedOn");
        Checks.present(calibrationDueOn, "calibrationDueOn");
        Checks.present(certificate, "certificate");
        Checks.present(stability, "stability");
    }

    /** Makes a meter of which nothing is known beyond its specification. */
    public Meter(
            String id,
            MeterQuantity quantity,
            String name,
            String serialNumber,
            Accuracy accuracy,
            Optional<LocalDate> calibratedOn,
            Optional<LocalDate> calibrationDueOn,
            String certificate) {
        this(
                id,
                quantity,
                name,
                serialNumber,
                accuracy,
                calibratedOn,
                calibrationDueOn,
                certificate,
                MeterStability.NONE);
    }

    /** Returns whether the calibration had run out before a day; false when no due day is known. */
    public boolean isOverdueOn(LocalDate day) {
        return calibrationDueOn.map(due -> due.isBefore(day)).orElse(false);
    }

    /** Returns this meter with another id. */
    public Meter withId(String newId) {
        return new Meter(
                newId, quantity, name, serialNumber, accuracy, calibratedOn, calibrationDueOn, certificate, stability);
    }

    /** Returns this meter with another quantity that it reads. */
    public Meter withQuantity(MeterQuantity newQuantity) {
        return new Meter(
                id, newQuantity, name, serialNumber, accuracy, calibratedOn, calibrationDueOn, certificate, stability);
    }

    /** Returns this meter with another name. */
    public Meter withName(String newName) {
        return new Meter(
                id, quantity, newName, serialNumber, accuracy, calibratedOn, calibrationDueOn, certificate, stability);
    }

    /** Returns this meter with another serial number. */
    public Meter withSerialNumber(String newSerialNumber) {
        return new Meter(
                id, quantity, name, newSerialNumber, accuracy, calibratedOn, calibrationDueOn, certificate, stability);
    }

    /** Returns this meter with another specification. */
    public Meter withAccuracy(Accuracy newAccuracy) {
        return new Meter(
                id, quantity, name, serialNumber, newAccuracy, calibratedOn, calibrationDueOn, certificate, stability);
    }

    /** Returns this meter with another day of its last calibration, or none. */
    public Meter withCalibratedOn(Optional<LocalDate> newCalibratedOn) {
        return new Meter(
                id, quantity, name, serialNumber, accuracy, newCalibratedOn, calibrationDueOn, certificate, stability);
    }

    /** Returns this meter with another day its calibration runs out, or none. */
    public Meter withCalibrationDueOn(Optional<LocalDate> newCalibrationDueOn) {
        return new Meter(
                id, quantity, name, serialNumber, accuracy, calibratedOn, newCalibrationDueOn, certificate, stability);
    }

    /** Returns this meter with another certificate. */
    public Meter withCertificate(String newCertificate) {
        return new Meter(
                id, quantity, name, serialNumber, accuracy, calibratedOn, calibrationDueOn, newCertificate, stability);
    }

    /** Returns this meter with another stability. */
    public Meter withStability(MeterStability newStability) {
        return new Meter(
                id, quantity, name, serialNumber, accuracy, calibratedOn, calibrationDueOn, certificate, newStability);
    }
}

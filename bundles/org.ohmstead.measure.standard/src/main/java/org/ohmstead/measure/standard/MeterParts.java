// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.Meter;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.UncertaintyPart;

/** The parts of a power's uncertainty that come from one meter. */
final class MeterParts {
    private static final double DAYS_PER_YEAR = 365.25;
    private static final String SPECIFICATION = "specification";
    private static final String CALIBRATION = "calibration";

    private final Meter meter;
    private final String quantity;
    private final BudgetInput input;
    private final double indicatedVolts;
    private final double wattsPerVolt;
    private final List<UncertaintyPart> parts = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    /**
     * Evaluates a meter.
     *
     * @param quantity what it reads, as the parts are to be called
     * @param indicatedVolts what it showed
     * @param wattsPerVolt by how much the power changes with it, as a magnitude
     */
    MeterParts(
            Meter meter,
            String quantity,
            BudgetInput input,
            double indicatedVolts,
            double wattsPerVolt,
            BudgetSetting setting) {
        this.meter = meter;
        this.quantity = quantity;
        this.input = input;
        this.indicatedVolts = indicatedVolts;
        this.wattsPerVolt = wattsPerVolt;
        addSpecification();
        addCalibration();
        addDrift(setting.day());
        addTemperature(setting);
    }

    List<UncertaintyPart> parts() {
        return List.copyOf(parts);
    }

    List<String> notes() {
        return List.copyOf(notes);
    }

    private void addSpecification() {
        double halfWidth = meter.accuracy().halfWidth(indicatedVolts);
        double factor = meter.accuracy().coverageFactor();
        if (factor > 0) {
            add(SPECIFICATION, Estimate.normal(0, halfWidth, factor), PartShape.NORMAL, true);
        } else {
            add(SPECIFICATION, Estimate.rectangular(0, halfWidth), PartShape.RECTANGULAR, true);
        }
        // The last digit is rounded anew at every reading, so it is not shared.
        addBeyondZero(
                "resolution", Estimate.resolution(0, meter.accuracy().resolution()), PartShape.RECTANGULAR, false);
    }

    private void addCalibration() {
        addBeyondZero(
                CALIBRATION,
                Estimate.normal(
                        0,
                        meter.stability().certificateExpandedRatio() * Math.abs(indicatedVolts),
                        meter.stability().certificateCoverageFactor()),
                PartShape.NORMAL,
                true);
    }

    private void addDrift(LocalDate day) {
        double ratioPerYear = meter.stability().driftRatioPerYear();
        if (ratioPerYear <= 0) {
            return;
        }
        Optional<LocalDate> calibrated = meter.calibratedOn();
        if (calibrated.isEmpty()) {
            notes.add(
                    "The drift of " + meter.name()
                            + " since its calibration is not in the uncertainty, because the day of the calibration is not known.");
            return;
        }
        double years = Math.max(0, ChronoUnit.DAYS.between(calibrated.get(), day)) / DAYS_PER_YEAR;
        addBeyondZero(
                "drift",
                Estimate.rectangular(0, ratioPerYear * years * Math.abs(indicatedVolts)),
                PartShape.RECTANGULAR,
                true);
    }

    private void addTemperature(BudgetSetting setting) {
        double ratioPerKelvin = meter.stability().temperatureRatioPerKelvin();
        if (ratioPerKelvin <= 0) {
            return;
        }
        OptionalDouble celsius = setting.ambientCelsius();
        if (celsius.isEmpty()) {
            celsius = setting.bench().ambientCelsius();
            notes.add(
                    celsius.isPresent()
                            ? String.format(
                                    Locale.ROOT,
                                    "The air temperature was not read; %s was taken to work at the bench's usual %.3g \u00b0C.",
                                    meter.name(),
                                    celsius.getAsDouble())
                            : "What temperature does to " + meter.name()
                                    + " is not in the uncertainty, because no air temperature is known.");
        }
        if (celsius.isPresent()) {
            double kelvin = meter.stability().kelvinOutside(celsius.getAsDouble());
            addBeyondZero(
                    "meter temperature",
                    Estimate.rectangular(0, ratioPerKelvin * kelvin * Math.abs(indicatedVolts)),
                    PartShape.RECTANGULAR,
                    true);
        }
    }

    private void addBeyondZero(String cause, Estimate volts, PartShape shape, boolean shared) {
        if (volts.standardUncertainty() > 0) {
            add(cause, volts, shape, shared);
        }
    }

    private void add(String cause, Estimate volts, PartShape shape, boolean shared) {
        parts.add(new UncertaintyPart(
                source(cause),
                wattsPerVolt * volts.standardUncertainty(),
                shared,
                shape,
                OptionalDouble.empty(),
                Optional.of(input)));
    }

    private String source(String cause) {
        return quantity + ", " + cause;
    }

    /**
     * Returns what moves together when two quantities were read by the same instrument: its specification and its calibration (GUM
     * F.1.2.3).
     */
    static List<PartCorrelation> correlations(MeterParts first, MeterParts second) {
        List<PartCorrelation> found = new ArrayList<>();
        if (sameInstrument(first.meter, second.meter)) {
            for (String cause : List.of(SPECIFICATION, CALIBRATION)) {
                if (first.has(cause) && second.has(cause)) {
                    found.add(new PartCorrelation(first.source(cause), second.source(cause), 1));
                }
            }
        }
        return found;
    }

    private boolean has(String cause) {
        return parts.stream().anyMatch(part -> part.source().equals(source(cause)));
    }

    /** By serial number; where one lacks it, by name and certificate. */
    static boolean sameInstrument(Meter first, Meter second) {
        if (!first.serialNumber().isBlank() && !second.serialNumber().isBlank()) {
            return first.serialNumber().equals(second.serialNumber());
        }
        return first.name().equals(second.name())
                && !first.certificate().isBlank()
                && first.certificate().equals(second.certificate());
    }
}

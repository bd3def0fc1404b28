// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterStability;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;

/** The columns of the meters for what is known of them beyond their specification. */
final class StabilityColumns {
    private static final Measure PPM_PER_KELVIN = new Measure(Unit.NONE, -6, "ppm/K");

    private StabilityColumns() {}

    static List<Column<Meter>> all() {
        return List.of(
                column(
                                "certificateExpandedRatio",
                                "Certificate \u00b1",
                                Measure.percentOfOne(),
                                MeterStability::certificateExpandedRatio,
                                MeterStability::withCertificateExpandedRatio)
                        .withHover(meter ->
                                "The expanded uncertainty that its calibration certificate states, as a share of"
                                        + " the indication; 0 when the specification already contains it."),
                column(
                                "certificateCoverageFactor",
                                "Its k",
                                Measure.named(""),
                                MeterStability::certificateCoverageFactor,
                                MeterStability::withCertificateCoverageFactor)
                        .withHover(meter -> "The coverage factor that the certificate states, usually 2."),
                column(
                                "driftRatioPerYear",
                                "Drift a year",
                                Measure.percentOfOne(),
                                MeterStability::driftRatioPerYear,
                                MeterStability::withDriftRatioPerYear)
                        .withHover(meter ->
                                "How far it may drift in a year since its calibration; 0 when the specification"
                                        + " already contains it."),
                column(
                                "temperatureRatioPerKelvin",
                                "Temperature",
                                PPM_PER_KELVIN,
                                MeterStability::temperatureRatioPerKelvin,
                                MeterStability::withTemperatureRatioPerKelvin)
                        .withHover(StabilityColumns::temperature),
                column(
                                "fromCelsius",
                                "Holds from",
                                Measure.of(Unit.CELSIUS),
                                MeterStability::fromCelsius,
                                (stability, value) -> stability.withFromCelsius(below(value, stability.toCelsius())))
                        .withHover(StabilityColumns::temperature),
                column(
                                "toCelsius",
                                "Holds to",
                                Measure.of(Unit.CELSIUS),
                                MeterStability::toCelsius,
                                (stability, value) -> stability.withToCelsius(above(value, stability.fromCelsius())))
                        .withHover(StabilityColumns::temperature));
    }

    private static Column<Meter> column(
            String field,
            String header,
            Measure measure,
            ToDoubleFunction<MeterStability> get,
            BiFunction<MeterStability, Double, MeterStability> with) {
        return Columns.quantity(
                "stability." + field,
                header,
                measure,
                meter -> get.applyAsDouble(meter.stability()),
                (meter, value) -> meter.withStability(with.apply(meter.stability(), value)));
    }

    private static String temperature(Meter meter) {
        MeterStability stability = meter.stability();
        return "From " + Words.number(stability.fromCelsius()) + " to " + Words.number(stability.toCelsius())
                + " \u00b0C its specification holds by itself. For each kelvin outside it may be off by another "
                + PPM_PER_KELVIN.shownWithUnit(stability.temperatureRatioPerKelvin()) + ".";
    }

    private static double below(double value, double limit) {
        if (value > limit) {
            throw new IllegalArgumentException(
                    "It must not be above the temperature up to which the specification holds, " + Words.number(limit)
                            + " \u00b0C.");
        }
        return value;
    }

    private static double above(double value, double limit) {
        if (value < limit) {
            throw new IllegalArgumentException(
                    "It must not be below the temperature from which the specification holds, " + Words.number(limit)
                            + " \u00b0C.");
        }
        return value;
    }
}

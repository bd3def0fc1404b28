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
                                Texts.text("stability.certificate"),
                                Measure.percentOfOne(),
                                MeterStability::certificateExpandedRatio,
                                MeterStability::withCertificateExpandedRatio)
                        .withHover(meter -> Texts.text("stability.certificate.hover")),
                column(
                                "certificateCoverageFactor",
                                Texts.text("stability.factor"),
                                Measure.named(""),
                                MeterStability::certificateCoverageFactor,
                                MeterStability::withCertificateCoverageFactor)
                        .withHover(meter -> Texts.text("stability.factor.hover")),
                column(
                                "driftRatioPerYear",
                                Texts.text("stability.drift"),
                                Measure.percentOfOne(),
                                MeterStability::driftRatioPerYear,
                                MeterStability::withDriftRatioPerYear)
                        .withHover(meter -> Texts.text("stability.drift.hover")),
                column(
                                "temperatureRatioPerKelvin",
                                Texts.text("stability.temperature"),
                                PPM_PER_KELVIN,
                                MeterStability::temperatureRatioPerKelvin,
                                MeterStability::withTemperatureRatioPerKelvin)
                        .withHover(StabilityColumns::temperature),
                column(
                                "fromCelsius",
                                Texts.text("stability.from"),
                                Measure.of(Unit.CELSIUS),
                                MeterStability::fromCelsius,
                                (stability, value) -> stability.withFromCelsius(below(value, stability.toCelsius())))
                        .withHover(StabilityColumns::temperature),
                column(
                                "toCelsius",
                                Texts.text("stability.to"),
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
        return Texts.text(
                "stability.temperature.hover",
                Words.number(stability.fromCelsius()),
                Words.number(stability.toCelsius()),
                PPM_PER_KELVIN.shownWithUnit(stability.temperatureRatioPerKelvin()));
    }

    private static double below(double value, double limit) {
        if (value > limit) {
            throw new IllegalArgumentException(Texts.text("stability.from.refused", Words.number(limit)));
        }
        return value;
    }

    private static double above(double value, double limit) {
        if (value < limit) {
            throw new IllegalArgumentException(Texts.text("stability.to.refused", Words.number(limit)));
        }
        return value;
    }
}

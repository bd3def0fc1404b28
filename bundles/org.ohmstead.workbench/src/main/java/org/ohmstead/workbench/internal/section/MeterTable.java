// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;
import org.ohmstead.workbench.table.TableSpec;

/** The table of the bench's meters: what they read, how well, and until when their calibration holds. */
final class MeterTable {
    private MeterTable() {}

    static TableSpec<Meter> spec(Supplier<LocalDate> today) {
        return TableSpec.of("meters", "meter", "meters", columns(today))
                .withNewRow(rows -> newMeter(rows))
                .withDuplicate((meter, rows) -> meter.withId(
                        FreshIds.freeOf(meter.id(), rows.stream().map(Meter::id).toList())))
                .withKey(Meter::id);
    }

    private static Meter newMeter(List<Meter> rows) {
        MeterQuantity missing = List.of(MeterQuantity.values()).stream()
                .filter(quantity -> rows.stream().noneMatch(meter -> meter.quantity() == quantity))
                .findFirst()
                .orElse(MeterQuantity.OUTPUT_VOLTS);
        return new Meter(
                FreshIds.numbered("meter", rows.stream().map(Meter::id).toList()),
                missing,
                "New meter",
                "",
                new Accuracy(0.01, 0, 0, 0),
                Optional.empty(),
                Optional.empty(),
                "");
    }

    private static List<Column<Meter>> columns(Supplier<LocalDate> today) {
        List<Column<Meter>> columns = new ArrayList<>(usualColumns(today));
        columns.addAll(StabilityColumns.all());
        return columns;
    }

    private static List<Column<Meter>> usualColumns(Supplier<LocalDate> today) {
        return List.of(
                Columns.requiredText("id", "Id", Meter::id, Meter::withId).withWidth(9),
                Columns.choice(
                                "quantity",
                                "Reads",
                                List.of(MeterQuantity.values()),
                                Words::of,
                                Meter::quantity,
                                Meter::withQuantity)
                        .withWidth(16),
                Columns.requiredText("name", "Name", Meter::name, Meter::withName)
                        .withWidth(40),
                Columns.<Meter>shown("state", "Calibration", meter -> CalibrationState.of(meter, today.get())
                                .words())
                        .withOrder(Comparator.comparing(
                                meter -> meter.calibrationDueOn().orElse(LocalDate.MAX)))
                        .withProblem(
                                meter -> CalibrationState.of(meter, today.get()).mark())
                        .withWidth(24),
                Columns.date("calibrationDueOn", "Due on", Meter::calibrationDueOn, Meter::withCalibrationDueOn)
                        .withWidth(16),
                accuracy(
                                "readingRatio",
                                "Share of reading",
                                Measure.percentOfOne(),
                                Accuracy::readingRatio,
                                Accuracy::withReadingRatio)
                        .withHover(MeterTable::specification),
                accuracy("fixed", "Fixed part", Measure.named(""), Accuracy::fixed, Accuracy::withFixed)
                        .withShown(meter -> inUnit(meter, meter.accuracy().fixed()))
                        .withHover(MeterTable::specification)
                        .withWidth(12),
                accuracy("resolution", "Resolution", Measure.named(""), Accuracy::resolution, Accuracy::withResolution)
                        .withShown(meter -> inUnit(meter, meter.accuracy().resolution()))
                        .withHover(meter -> "One step of the display; 0 when it plays no part.")
                        .withWidth(13),
                accuracy(
                                "coverageFactor",
                                "k",
                                Measure.named(""),
                                Accuracy::coverageFactor,
                                Accuracy::withCoverageFactor)
                        .withShown(meter -> meter.accuracy().coverageFactor() > 0
                                ? Words.number(meter.accuracy().coverageFactor())
                                : "bound")
                        .withHover(meter -> "The factor that the specification is stated for; 0 when it is a bound.")
                        .withWidth(9),
                Columns.date("calibratedOn", "Calibrated on", Meter::calibratedOn, Meter::withCalibratedOn)
                        .withWidth(15),
                Columns.text("serialNumber", "Serial number", Meter::serialNumber, Meter::withSerialNumber)
                        .withWidth(15),
                Columns.text("certificate", "Certificate", Meter::certificate, Meter::withCertificate));
    }

    private static Column<Meter> accuracy(
            String field,
            String header,
            Measure measure,
            ToDoubleFunction<Accuracy> get,
            BiFunction<Accuracy, Double, Accuracy> with) {
        return Columns.<Meter>quantity(
                "accuracy." + field,
                header,
                measure,
                meter -> get.applyAsDouble(meter.accuracy()),
                (meter, value) -> meter.withAccuracy(with.apply(meter.accuracy(), value)));
    }

    private static String inUnit(Meter meter, double value) {
        return Words.number(value) + " " + Words.unitOf(meter.quantity());
    }

    private static String specification(Meter meter) {
        Accuracy accuracy = meter.accuracy();
        return "\u00b1 (" + Words.percent(accuracy.readingRatio()) + " of reading + "
                + inUnit(meter, accuracy.fixed()) + "), "
                + (accuracy.coverageFactor() > 0
                        ? "stated for k = " + Words.number(accuracy.coverageFactor()) + "."
                        : "taken as a bound.");
    }
}

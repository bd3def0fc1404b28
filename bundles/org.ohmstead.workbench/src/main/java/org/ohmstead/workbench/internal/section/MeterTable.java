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
        return TableSpec.of("meters", Texts.text("table.meter"), Texts.text("table.meters"), columns(today))
                .withEditNames(Texts.edits("meter"))
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
                Texts.text("meter.new"),
                "",
                new Accuracy(0.01, 0, 0, 0),
                Optional.empty(),
                Optional.empty(),
                "");
    }

    private static List<Column<Meter>> columns(Supplier<LocalDate> today) {
        List<Column<Meter>> columns = new ArrayList<>(usualColumns(today));
        columns.addAll(specificationColumns());
        columns.addAll(paperColumns());
        columns.addAll(StabilityColumns.all());
        return columns;
    }

    private static List<Column<Meter>> usualColumns(Supplier<LocalDate> today) {
        return List.of(
                Columns.requiredText("id", Texts.text("table.id"), Meter::id, Meter::withId)
                        .withWidth(9),
                Columns.choice(
                                "quantity",
                                Texts.text("meter.quantity"),
                                List.of(MeterQuantity.values()),
                                Words::of,
                                Meter::quantity,
                                Meter::withQuantity)
                        .withWidth(20),
                Columns.requiredText("name", Texts.text("table.name"), Meter::name, Meter::withName)
                        .withWidth(40),
                Columns.<Meter>shown(
                                "state", Texts.text("meter.state"), meter -> CalibrationState.of(meter, today.get())
                                        .words())
                        .withOrder(Comparator.comparing(
                                meter -> meter.calibrationDueOn().orElse(LocalDate.MAX)))
                        .withProblem(
                                meter -> CalibrationState.of(meter, today.get()).mark())
                        .withWidth(24),
                Columns.date(
                                "calibrationDueOn",
                                Texts.text("meter.due"),
                                Meter::calibrationDueOn,
                                Meter::withCalibrationDueOn)
                        .withWidth(16));
    }

    private static List<Column<Meter>> specificationColumns() {
        return List.of(
                accuracy(
                                "readingRatio",
                                Texts.text("meter.reading"),
                                Measure.percentOfOne(),
                                Accuracy::readingRatio,
                                Accuracy::withReadingRatio)
                        .withHover(MeterTable::specification),
                accuracy("fixed", Texts.text("meter.fixed"), Measure.named(""), Accuracy::fixed, Accuracy::withFixed)
                        .withShown(meter -> inUnit(meter, meter.accuracy().fixed()))
                        .withHover(MeterTable::specification)
                        .withWidth(12),
                accuracy(
                                "resolution",
                                Texts.text("meter.resolution"),
                                Measure.named(""),
                                Accuracy::resolution,
                                Accuracy::withResolution)
                        .withShown(meter -> inUnit(meter, meter.accuracy().resolution()))
                        .withHover(meter -> Texts.text("meter.resolution.hover"))
                        .withWidth(13),
                accuracy(
                                "coverageFactor",
                                "k",
                                Measure.named(""),
                                Accuracy::coverageFactor,
                                Accuracy::withCoverageFactor)
                        .withShown(meter -> meter.accuracy().coverageFactor() > 0
                                ? Words.number(meter.accuracy().coverageFactor())
                                : Texts.text("meter.factor.bound"))
                        .withHover(meter -> Texts.text("meter.factor.hover"))
                        .withWidth(9));
    }

    private static List<Column<Meter>> paperColumns() {
        return List.of(
                Columns.date(
                                "calibratedOn",
                                Texts.text("meter.calibrated"),
                                Meter::calibratedOn,
                                Meter::withCalibratedOn)
                        .withWidth(15),
                Columns.text("serialNumber", Texts.text("meter.serial"), Meter::serialNumber, Meter::withSerialNumber)
                        .withWidth(15),
                Columns.text(
                        "certificate", Texts.text("meter.certificate"), Meter::certificate, Meter::withCertificate));
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
        String share = Words.percent(accuracy.readingRatio());
        String fixed = inUnit(meter, accuracy.fixed());
        return accuracy.coverageFactor() > 0
                ? Texts.text("meter.specification.factor", share, fixed, Words.number(accuracy.coverageFactor()))
                : Texts.text("meter.specification.bound", share, fixed);
    }
}

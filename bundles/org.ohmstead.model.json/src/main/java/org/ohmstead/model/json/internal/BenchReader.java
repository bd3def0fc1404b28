// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Bench;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Repeatability;
import org.ohmstead.model.Supply;
import org.ohmstead.model.json.ProjectFileException;

/** Reads the bench of a project. */
public final class BenchReader {
    private BenchReader() {}

    static Bench bench(FieldReader in) throws ProjectFileException {
        String place = in.text("place");
        Supply supply = supply(in.object("supply", "field.bench.supply"));
        Cable cable = cable(in.object("cable", "field.bench.cable"));
        List<Meter> meters = in.list("meters", "field.bench.meters", BenchReader::meter);
        List<Part> parts = in.list("parts", "field.bench.parts", BenchReader::part);
        OptionalDouble ambient = in.optionalNumber("ambientCelsius", "field.bench.ambient");
        Optional<Repeatability> repeatability =
                repeatability(in.optionalObject("repeatability", "field.bench.repeatability"));
        return in.build(() -> new Bench(place, supply, cable, meters, parts, ambient, repeatability));
    }

    private static Optional<Repeatability> repeatability(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        double ratio = in.number("ratio", "field.repeatability.ratio");
        double freedom = in.number("degreesOfFreedom", "field.repeatability.freedom");
        String origin = in.text("origin");
        return Optional.of(in.build(() -> new Repeatability(ratio, freedom, origin)));
    }

    private static Supply supply(FieldReader in) throws ProjectFileException {
        String name = in.requiredText("name", "field.supply.name");
        double lowestVolts = in.number("lowestVolts", "field.supply.lowestVolts");
        double highestVolts = in.number("highestVolts", "field.supply.highestVolts");
        double limit = in.number("currentLimitAmps", "field.supply.currentLimit");
        return in.build(() -> new Supply(name, lowestVolts, highestVolts, limit));
    }

    private static Cable cable(FieldReader in) throws ProjectFileException {
        double crossSection = in.number("crossSectionSquareMillimetres", "field.cable.crossSection");
        double loopMetres = in.number("loopMetres", "field.cable.loopMetres");
        OptionalDouble measured = in.optionalNumber("measuredLoopOhms", "field.cable.measured");
        return in.build(() -> new Cable(crossSection, loopMetres, measured));
    }

    private static Meter meter(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "field.meter.id");
        MeterQuantity quantity = in.choice("quantity", MeterQuantity.class, "field.meter.quantity");
        String name = in.requiredText("name", "field.meter.name");
        String serialNumber = in.text("serialNumber");
        Accuracy accuracy = accuracy(in.object("accuracy", "field.meter.accuracy"));
        Optional<LocalDate> calibratedOn = in.optionalDay("calibratedOn", "field.meter.calibratedOn");
        Optional<LocalDate> dueOn = in.optionalDay("calibrationDueOn", "field.meter.dueOn");
        String certificate = in.text("certificate");
        Optional<FieldReader> beyond = in.optionalObject("stability", "field.meter.stability");
        MeterStability stability = beyond.isPresent() ? stability(beyond.get()) : MeterStability.NONE;
        return in.build(() ->
                new Meter(id, quantity, name, serialNumber, accuracy, calibratedOn, dueOn, certificate, stability));
    }

    private static MeterStability stability(FieldReader in) throws ProjectFileException {
        double expanded = in.number("certificateExpandedRatio", "field.stability.expanded");
        double factor = in.number("certificateCoverageFactor", "field.stability.factor");
        double drift = in.number("driftRatioPerYear", "field.stability.drift");
        double temperature = in.number("temperatureRatioPerKelvin", "field.stability.temperature");
        double from = in.number("fromCelsius", "field.stability.from");
        double to = in.number("toCelsius", "field.stability.to");
        return in.build(() -> new MeterStability(expanded, factor, drift, temperature, from, to));
    }

    private static Accuracy accuracy(FieldReader in) throws ProjectFileException {
        double readingRatio = in.number("readingRatio", "field.accuracy.reading");
        double fixed = in.number("fixed", "field.accuracy.fixed");
        double resolution = in.number("resolution", "field.accuracy.resolution");
        double factor = in.number("coverageFactor", "field.accuracy.factor");
        return in.build(() -> new Accuracy(readingRatio, fixed, resolution, factor));
    }

    /** Returns the resistor that an object holds. */
    public static Part part(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "field.part.id");
        double ohms = in.number("ohms", "field.part.ohms");
        double tolerance = in.number("toleranceRatio", "field.part.tolerance");
        double ratedWatts = in.number("ratedWatts", "field.part.ratedWatts");
        double ratedTo = in.number("ratedToCelsius", "field.part.ratedTo");
        double zeroPower = in.number("zeroPowerCelsius", "field.part.zeroPower");
        Mounting mounting = in.choice("mounting", Mounting.class, "field.part.mounting");
        int count = in.whole("count", "field.part.count");
        Optional<FieldReader> more = in.optionalObject("traits", "field.part.traits");
        PartTraits traits = more.isPresent() ? traits(more.get()) : PartTraits.NONE;
        return in.build(() -> new Part(id, ohms, tolerance, ratedWatts, ratedTo, zeroPower, mounting, count, traits));
    }

    private static PartTraits traits(FieldReader in) throws ProjectFileException {
        boolean measured = in.optionalFlag("measured", "field.traits.measured");
        OptionalDouble coefficient = in.optionalNumber("temperatureCoefficientPerKelvin", "field.traits.coefficient");
        OptionalDouble inductance = in.optionalNumber("inductanceHenries", "field.traits.inductance");
        OptionalDouble sink = in.optionalNumber("sinkKelvinPerWatt", "field.traits.sink");
        OptionalDouble element = in.optionalNumber("elementKelvinPerWatt", "field.traits.element");
        Optional<FieldReader> overload = in.optionalObject("pulseRule", "field.traits.pulseRule");
        Optional<PulseRule> pulse = overload.isPresent() ? Optional.of(pulseRule(overload.get())) : Optional.empty();
        return in.build(() -> new PartTraits(measured, coefficient, inductance, sink, element, pulse));
    }

    private static PulseRule pulseRule(FieldReader in) throws ProjectFileException {
        double ratio = in.number("overloadRatio", "field.pulse.overload");
        double seconds = in.number("durationSeconds", "field.pulse.duration");
        return in.build(() -> new PulseRule(ratio, seconds));
    }
}

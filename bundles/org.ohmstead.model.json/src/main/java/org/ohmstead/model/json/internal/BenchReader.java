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
        Supply supply = supply(in.object("supply", "the bench's direct-current supply"));
        Cable cable = cable(in.object("cable", "the cable from the supply to the amplifier"));
        List<Meter> meters = in.list("meters", "an instrument of the bench", BenchReader::meter);
        List<Part> parts = in.list("parts", "a resistor of the stock", BenchReader::part);
        OptionalDouble ambient =
                in.optionalNumber("ambientCelsius", "air temperature in degrees Celsius, for example 23");
        Optional<Repeatability> repeatability =
                repeatability(in.optionalObject("repeatability", "how closely the bench finds the same power again"));
        return in.build(() -> new Bench(place, supply, cable, meters, parts, ambient, repeatability));
    }

    private static Optional<Repeatability> repeatability(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        double ratio = in.number("ratio", "standard deviation of a power as a ratio, 0.002 for 0.2 %");
        double freedom = in.number("degreesOfFreedom", "of that standard deviation, 9 for ten powers");
        String origin = in.text("origin");
        return Optional.of(in.build(() -> new Repeatability(ratio, freedom, origin)));
    }

    private static Supply supply(FieldReader in) throws ProjectFileException {
        String name = in.requiredText("name", "what the supply is");
        double lowestVolts = in.number("lowestVolts", "lowest output volts, for example 10");
        double highestVolts = in.number("highestVolts", "highest output volts, above the lowest, for example 16");
        double limit = in.number("currentLimitAmps", "current limit in amperes above 0, for example 60");
        return in.build(() -> new Supply(name, lowestVolts, highestVolts, limit));
    }

    private static Cable cable(FieldReader in) throws ProjectFileException {
        double crossSection = in.number(
                "crossSectionSquareMillimetres", "copper cross-section in square millimetres above 0, for example 25");
        double loopMetres = in.number("loopMetres", "length there and back in metres above 0, for example 3");
        OptionalDouble measured =
                in.optionalNumber("measuredLoopOhms", "measured resistance there and back in ohms, for example 0.002");
        return in.build(() -> new Cable(crossSection, loopMetres, measured));
    }

    private static Meter meter(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "a short name, unique among the meters");
        MeterQuantity quantity = in.choice("quantity", MeterQuantity.class, "what the meter reads");
        String name = in.requiredText("name", "what the meter is");
        String serialNumber = in.text("serialNumber");
        Accuracy accuracy = accuracy(in.object("accuracy", "the meter's specification"));
        Optional<LocalDate> calibratedOn = in.optionalDay("calibratedOn", "day of the last calibration");
        Optional<LocalDate> dueOn = in.optionalDay("calibrationDueOn", "day on which the calibration runs out");
        String certificate = in.text("certificate");
        Optional<FieldReader> beyond = in.optionalObject("stability", "what is known beyond the specification");
        MeterStability stability = beyond.isPresent() ? stability(beyond.get()) : MeterStability.NONE;
        return in.build(() ->
                new Meter(id, quantity, name, serialNumber, accuracy, calibratedOn, dueOn, certificate, stability));
    }

    private static MeterStability stability(FieldReader in) throws ProjectFileException {
        double expanded = in.number(
                "certificateExpandedRatio", "expanded uncertainty of the certificate as a ratio, 0.0005 for 0.05 %");
        double factor = in.number("certificateCoverageFactor", "coverage factor k of it, usually 2");
        double drift = in.number("driftRatioPerYear", "bound on the drift in a year as a ratio, 0.001 for 0.1 %");
        double temperature = in.number(
                "temperatureRatioPerKelvin", "bound on the change for each kelvin as a ratio, 0.0001 for 0.01 %");
        double from = in.number("fromCelsius", "lowest temperature of the specification, for example 18");
        double to = in.number("toCelsius", "highest temperature of the specification, for example 28");
        return in.build(() -> new MeterStability(expanded, factor, drift, temperature, from, to));
    }

    private static Accuracy accuracy(FieldReader in) throws ProjectFileException {
        double readingRatio = in.number("readingRatio", "share of the indication as a ratio, 0.005 for 0.5 %");
        double fixed = in.number("fixed", "fixed part in the unit of the quantity, at least 0");
        double resolution = in.number("resolution", "one step of the display in the unit of the quantity, or 0");
        double factor = in.number("coverageFactor", "0 when the specification is a bound, else k, for example 2");
        return in.build(() -> new Accuracy(readingRatio, fixed, resolution, factor));
    }

    /** Returns the resistor that an object holds. */
    public static Part part(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "a short name, unique among the parts");
        double ohms = in.number("ohms", "resistance in ohms above 0, for example 8.2");
        double tolerance = in.number("toleranceRatio", "tolerance as a ratio, 0.05 for 5 %");
        double ratedWatts = in.number("ratedWatts", "rated power in watts above 0, for example 100");
        double ratedTo = in.number("ratedToCelsius", "temperature up to which the rated power holds, for example 25");
        double zeroPower =
                in.number("zeroPowerCelsius", "temperature at which no power is allowed any more, for example 250");
        Mounting mounting = in.choice("mounting", Mounting.class, "how the part gets rid of its heat");
        int count = in.whole("count", "how many there are, at least 1");
        Optional<FieldReader> more = in.optionalObject("traits", "what else is known of the part");
        PartTraits traits = more.isPresent() ? traits(more.get()) : PartTraits.NONE;
        return in.build(() -> new Part(id, ohms, tolerance, ratedWatts, ratedTo, zeroPower, mounting, count, traits));
    }

    private static PartTraits traits(FieldReader in) throws ProjectFileException {
        boolean measured =
                in.optionalFlag("measured", "true when the resistance was measured, false when it is the nominal one");
        OptionalDouble coefficient = in.optionalNumber(
                "temperatureCoefficientPerKelvin", "relative change per kelvin, for example 0.0001 for 100 ppm/K");
        OptionalDouble inductance =
                in.optionalNumber("inductanceHenries", "series inductance in henries, at least 0, for example 5e-6");
        OptionalDouble sink =
                in.optionalNumber("sinkKelvinPerWatt", "thermal resistance from case to air in K/W above 0");
        OptionalDouble element =
                in.optionalNumber("elementKelvinPerWatt", "thermal resistance from wire to case in K/W above 0");
        Optional<FieldReader> overload = in.optionalObject("pulseRule", "the short overload allowed");
        Optional<PulseRule> pulse = overload.isPresent() ? Optional.of(pulseRule(overload.get())) : Optional.empty();
        return in.build(() -> new PartTraits(measured, coefficient, inductance, sink, element, pulse));
    }

    private static PulseRule pulseRule(FieldReader in) throws ProjectFileException {
        double ratio = in.number("overloadRatio", "times the rated power allowed for a short while, for example 5");
        double seconds = in.number("durationSeconds", "for how many seconds the overload is allowed, for example 5");
        return in.build(() -> new PulseRule(ratio, seconds));
    }
}

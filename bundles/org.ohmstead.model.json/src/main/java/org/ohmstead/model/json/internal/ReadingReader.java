// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.model.json.ProjectFileException;

/** Reads a reading from JSON. */
public final class ReadingReader {
    private static final String SUPPLY_VOLTS = "direct volts at the amplifier's terminals above 0";
    private static final String SUPPLY_AMPS = "supply current in amperes";
    private static final String POWER_WATTS = "output power in watts, at least 0";
    private static final String UNCERTAINTY_WATTS = "standard uncertainty in watts, at least 0";
    private static final String OUTPUT_VOLTS = "output volts, RMS, at least 0";

    private ReadingReader() {}

    /** Returns the reading that an object holds. */
    public static Reading reading(FieldReader in) throws ProjectFileException {
        String stepId = in.requiredText("stepId", "the id of a step of the plan");
        Mode mode = in.choice("mode", Mode.class, "how the channels meet the load");
        String loadId = in.requiredText("loadId", "the id of a load");
        double nominalLoadOhms = in.number("nominalLoadOhms", "nominal load in ohms above 0");
        Stimulus stimulus = StepKinds.stimulus(in.object("stimulus", "what was fed in"));
        EndPoint endPoint = StepKinds.endPoint(in.object("endPoint", "what ended the search for power"));
        Instant takenAt = in.instant("takenAt", "when the last level was recorded");
        Conditions conditions = conditions(in.object("conditions", "the surroundings"));
        List<ChannelReading> channels = in.list("channels", "what one channel gave", ReadingReader::channel);
        Provenance provenance = provenance(in.object("provenance", "what the reading depended on"));
        List<String> notes = in.texts("notes", "sentences about the reading");
        return in.build(() -> new Reading(
                stepId,
                mode,
                loadId,
                nominalLoadOhms,
                stimulus,
                endPoint,
                takenAt,
                conditions,
                channels,
                provenance,
                notes));
    }

    static Conditions conditions(FieldReader in) throws ProjectFileException {
        OptionalDouble ambient = in.optionalNumber("ambientCelsius", "air temperature in degrees Celsius");
        OptionalDouble ofCase = in.optionalNumber("caseCelsius", "temperature of the case in degrees Celsius");
        return in.build(() -> new Conditions(ambient, ofCase));
    }

    private static ChannelReading channel(FieldReader in) throws ProjectFileException {
        String channel = in.requiredText("channel", "which channel, for example \"A\"");
        EndPointOutcome outcome = in.choice("outcome", EndPointOutcome.class, "whether the end point was reached");
        double loadOhms = in.number("loadOhms", "resistance in ohms above 0");
        double powerWatts = in.number("powerWatts", POWER_WATTS);
        double uncertainty = in.number("standardUncertaintyWatts", UNCERTAINTY_WATTS);
        double outputVoltsRms = in.number("outputVoltsRms", OUTPUT_VOLTS);
        double frequencyHz = in.number("frequencyHz", "frequency in hertz above 0");
        double thdFRatio = in.number("thdFRatio", "harmonics over the fundamental, at least 0");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        OptionalDouble supplyAmps = in.optionalNumber("supplyAmps", SUPPLY_AMPS);
        List<UncertaintyPart> parts =
                in.list("uncertaintyParts", "a row of the uncertainty budget", ReadingReader::uncertaintyPart);
        List<SweepPoint> sweep = in.list("sweep", "one level of the sweep", ReadingReader::sweepPoint);
        List<HarmonicFigure> harmonics = in.list("harmonics", "a harmonic", ReadingReader::harmonic);
        List<PartCorrelation> correlations =
                in.list("correlations", "which parts of the budget move together", ReadingReader::correlation);
        return in.build(() -> new ChannelReading(
                channel,
                outcome,
                loadOhms,
                powerWatts,
                uncertainty,
                outputVoltsRms,
                frequencyHz,
                thdFRatio,
                supplyVolts,
                supplyAmps,
                parts,
                sweep,
                harmonics,
                correlations));
    }

    private static UncertaintyPart uncertaintyPart(FieldReader in) throws ProjectFileException {
        String source = in.requiredText("source", "where the uncertainty comes from");
        double uncertainty = in.number("standardUncertaintyWatts", UNCERTAINTY_WATTS);
        boolean shared = in.flag("shared", "whether other readings have the same error");
        PartShape shape = in.optionalChoice("shape", PartShape.class, "how its values are distributed")
                .orElse(PartShape.NORMAL);
        OptionalDouble freedom = in.optionalNumber("degreesOfFreedom", "how well it is known, at least 1");
        Optional<BudgetInput> input =
                in.optionalChoice("input", BudgetInput.class, "which input of the power it is about");
        return in.build(() -> new UncertaintyPart(source, uncertainty, shared, shape, freedom, input));
    }

    private static PartCorrelation correlation(FieldReader in) throws ProjectFileException {
        String first = in.requiredText("first", "source of the one part");
        String second = in.requiredText("second", "source of the other part");
        double coefficient = in.number("coefficient", "correlation coefficient, -1 to 1");
        return in.build(() -> new PartCorrelation(first, second, coefficient));
    }

    private static SweepPoint sweepPoint(FieldReader in) throws ProjectFileException {
        double driveDb = in.number("driveDb", "level in dB relative to the source's full output");
        double outputVoltsRms = in.number("outputVoltsRms", OUTPUT_VOLTS);
        double powerWatts = in.number("powerWatts", POWER_WATTS);
        double thdFRatio = in.number("thdFRatio", "harmonics over the fundamental, at least 0");
        double thdPlusNoise = in.number("thdPlusNoiseRRatio", "distortion and noise over the whole, at least 0");
        boolean clipped = in.flag("clipped", "whether the wave is clipped");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        OptionalDouble supplyAmps = in.optionalNumber("supplyAmps", SUPPLY_AMPS);
        String capture = in.requiredText("captureSha256", "hash of the capture");
        return in.build(() -> new SweepPoint(
                driveDb,
                outputVoltsRms,
                powerWatts,
                thdFRatio,
                thdPlusNoise,
                clipped,
                supplyVolts,
                supplyAmps,
                capture));
    }

    private static HarmonicFigure harmonic(FieldReader in) throws ProjectFileException {
        int order = in.whole("order", "order of the harmonic, at least 2");
        double ratio = in.number("ratioToFundamental", "amplitude over the fundamental's, at least 0");
        return in.build(() -> new HarmonicFigure(order, ratio));
    }

    static Provenance provenance(FieldReader in) throws ProjectFileException {
        String revision = in.requiredText("projectRevision", "SHA-256 of the project");
        String procedureId = in.requiredText("procedureId", "which procedure found the figures");
        String procedureVersion = in.requiredText("procedureVersion", "version of the procedure");
        String softwareVersion = in.requiredText("softwareVersion", "version of the software");
        String operator = in.text("operator");
        List<InstrumentUsed> instruments = in.list("instruments", "a meter", ReadingReader::instrument);
        List<CaptureUsed> captures = in.list("captures", "a recorded waveform", ReadingReader::capture);
        Optional<Specimen> specimen =
                specimen(in.optionalObject("specimen", "which amplifier it is about, and on which bench"));
        return in.build(() -> new Provenance(
                revision, procedureId, procedureVersion, softwareVersion, operator, instruments, captures, specimen));
    }

    private static Optional<Specimen> specimen(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        String amplifier = in.requiredText("amplifier", "maker and model of the amplifier");
        String serialNumber = in.text("serialNumber");
        String bench = in.text("bench");
        return Optional.of(in.build(() -> new Specimen(amplifier, serialNumber, bench)));
    }

    private static InstrumentUsed instrument(FieldReader in) throws ProjectFileException {
        String meterId = in.requiredText("meterId", "id of the meter");
        MeterQuantity quantity = in.choice("quantity", MeterQuantity.class, "what the meter read");
        String name = in.requiredText("name", "what the meter is");
        Optional<LocalDate> calibratedOn = in.optionalDay("calibratedOn", "day of the last calibration");
        boolean overdue = in.flag("overdue", "whether the calibration had run out");
        return in.build(() -> new InstrumentUsed(meterId, quantity, name, calibratedOn, overdue));
    }

    private static CaptureUsed capture(FieldReader in) throws ProjectFileException {
        String sha256 = in.requiredText("sha256", "hash of the file's content, 64 hexadecimal digits");
        String fileName = in.requiredText("fileName", "name under which the capture was handed in");
        List<Double> scale = in.numbers("voltsPerFullScale", "volts of full scale, one for each channel");
        return in.build(() -> new CaptureUsed(sha256, fileName, scale));
    }
}

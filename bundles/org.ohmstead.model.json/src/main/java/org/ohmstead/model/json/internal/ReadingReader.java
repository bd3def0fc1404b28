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
    private static final String SUPPLY_VOLTS = "field.reading.supplyVolts";
    private static final String SUPPLY_AMPS = "field.reading.supplyAmps";
    private static final String POWER_WATTS = "field.reading.powerWatts";
    private static final String UNCERTAINTY_WATTS = "field.reading.uncertainty";
    private static final String OUTPUT_VOLTS = "field.reading.outputVolts";

    private ReadingReader() {}

    /** Returns the reading that an object holds. */
    public static Reading reading(FieldReader in) throws ProjectFileException {
        String stepId = in.requiredText("stepId", "field.stepId");
        Mode mode = in.choice("mode", Mode.class, "field.mode");
        String loadId = in.requiredText("loadId", "field.loadId");
        double nominalLoadOhms = in.number("nominalLoadOhms", "field.reading.nominalLoad");
        Stimulus stimulus = StepKinds.stimulus(in.object("stimulus", "field.reading.stimulus"));
        EndPoint endPoint = StepKinds.endPoint(in.object("endPoint", "field.reading.endPoint"));
        Instant takenAt = in.instant("takenAt", "field.reading.takenAt");
        Conditions conditions = conditions(in.object("conditions", "field.conditions"));
        List<ChannelReading> channels = in.list("channels", "field.reading.channels", ReadingReader::channel);
        Provenance provenance = provenance(in.object("provenance", "field.reading.provenance"));
        List<String> notes = in.texts("notes", "field.reading.notes");
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
        OptionalDouble ambient = in.optionalNumber("ambientCelsius", "field.conditions.ambient");
        OptionalDouble ofCase = in.optionalNumber("caseCelsius", "field.conditions.case");
        return in.build(() -> new Conditions(ambient, ofCase));
    }

    private static ChannelReading channel(FieldReader in) throws ProjectFileException {
        String channel = in.requiredText("channel", "field.channel.channel");
        EndPointOutcome outcome = in.choice("outcome", EndPointOutcome.class, "field.channel.outcome");
        double loadOhms = in.number("loadOhms", "field.channel.loadOhms");
        double powerWatts = in.number("powerWatts", POWER_WATTS);
        double uncertainty = in.number("standardUncertaintyWatts", UNCERTAINTY_WATTS);
        double outputVoltsRms = in.number("outputVoltsRms", OUTPUT_VOLTS);
        double frequencyHz = in.number("frequencyHz", "field.channel.frequencyHz");
        double thdFRatio = in.number("thdFRatio", "field.thdFRatio");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        OptionalDouble supplyAmps = in.optionalNumber("supplyAmps", SUPPLY_AMPS);
        List<UncertaintyPart> parts =
                in.list("uncertaintyParts", "field.channel.parts", ReadingReader::uncertaintyPart);
        List<SweepPoint> sweep = in.list("sweep", "field.channel.sweep", ReadingReader::sweepPoint);
        List<HarmonicFigure> harmonics = in.list("harmonics", "field.channel.harmonics", ReadingReader::harmonic);
        List<PartCorrelation> correlations =
                in.list("correlations", "field.channel.correlations", ReadingReader::correlation);
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
        String source = in.requiredText("source", "field.part.source");
        double uncertainty = in.number("standardUncertaintyWatts", UNCERTAINTY_WATTS);
        boolean shared = in.flag("shared", "field.part.shared");
        PartShape shape =
                in.optionalChoice("shape", PartShape.class, "field.part.shape").orElse(PartShape.NORMAL);
        OptionalDouble freedom = in.optionalNumber("degreesOfFreedom", "field.part.freedom");
        Optional<BudgetInput> input = in.optionalChoice("input", BudgetInput.class, "field.part.input");
        return in.build(() -> new UncertaintyPart(source, uncertainty, shared, shape, freedom, input));
    }

    private static PartCorrelation correlation(FieldReader in) throws ProjectFileException {
        String first = in.requiredText("first", "field.correlation.first");
        String second = in.requiredText("second", "field.correlation.second");
        double coefficient = in.number("coefficient", "field.correlation.coefficient");
        return in.build(() -> new PartCorrelation(first, second, coefficient));
    }

    private static SweepPoint sweepPoint(FieldReader in) throws ProjectFileException {
        double driveDb = in.number("driveDb", "field.sweep.driveDb");
        double outputVoltsRms = in.number("outputVoltsRms", OUTPUT_VOLTS);
        double powerWatts = in.number("powerWatts", POWER_WATTS);
        double thdFRatio = in.number("thdFRatio", "field.thdFRatio");
        double thdPlusNoise = in.number("thdPlusNoiseRRatio", "field.sweep.thdPlusNoise");
        boolean clipped = in.flag("clipped", "field.sweep.clipped");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        OptionalDouble supplyAmps = in.optionalNumber("supplyAmps", SUPPLY_AMPS);
        String capture = in.requiredText("captureSha256", "field.sweep.capture");
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
        int order = in.whole("order", "field.harmonic.order");
        double ratio = in.number("ratioToFundamental", "field.harmonic.ratio");
        return in.build(() -> new HarmonicFigure(order, ratio));
    }

    static Provenance provenance(FieldReader in) throws ProjectFileException {
        String revision = in.requiredText("projectRevision", "field.provenance.revision");
        String procedureId = in.requiredText("procedureId", "field.provenance.procedureId");
        String procedureVersion = in.requiredText("procedureVersion", "field.provenance.procedureVersion");
        String softwareVersion = in.requiredText("softwareVersion", "field.provenance.softwareVersion");
        String operator = in.text("operator");
        List<InstrumentUsed> instruments =
                in.list("instruments", "field.provenance.instruments", ReadingReader::instrument);
        List<CaptureUsed> captures = in.list("captures", "field.provenance.captures", ReadingReader::capture);
        Optional<Specimen> specimen = specimen(in.optionalObject("specimen", "field.provenance.specimen"));
        return in.build(() -> new Provenance(
                revision, procedureId, procedureVersion, softwareVersion, operator, instruments, captures, specimen));
    }

    private static Optional<Specimen> specimen(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        String amplifier = in.requiredText("amplifier", "field.specimen.amplifier");
        String serialNumber = in.text("serialNumber");
        String bench = in.text("bench");
        return Optional.of(in.build(() -> new Specimen(amplifier, serialNumber, bench)));
    }

    private static InstrumentUsed instrument(FieldReader in) throws ProjectFileException {
        String meterId = in.requiredText("meterId", "field.instrument.meterId");
        MeterQuantity quantity = in.choice("quantity", MeterQuantity.class, "field.instrument.quantity");
        String name = in.requiredText("name", "field.meter.name");
        Optional<LocalDate> calibratedOn = in.optionalDay("calibratedOn", "field.meter.calibratedOn");
        boolean overdue = in.flag("overdue", "field.instrument.overdue");
        return in.build(() -> new InstrumentUsed(meterId, quantity, name, calibratedOn, overdue));
    }

    private static CaptureUsed capture(FieldReader in) throws ProjectFileException {
        String sha256 = in.requiredText("sha256", "field.capture.sha256");
        String fileName = in.requiredText("fileName", "field.capture.fileName");
        List<Double> scale = in.numbers("voltsPerFullScale", "field.capture.scale");
        return in.build(() -> new CaptureUsed(sha256, fileName, scale));
    }
}

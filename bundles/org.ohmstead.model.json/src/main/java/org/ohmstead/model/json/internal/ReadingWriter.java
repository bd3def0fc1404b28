// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.HarmonicFigure;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;

/** Turns a reading into JSON; what readings of before did not have is left out where it says nothing, so that their text stays. */
public final class ReadingWriter {
    private ReadingWriter() {}

    /** Returns a reading as an object whose fields are named as the record's components. */
    public static ObjectNode toJson(Reading reading) {
        return ObjectBuilder.begin()
                .text("stepId", reading.stepId())
                .choice("mode", reading.mode())
                .text("loadId", reading.loadId())
                .number("nominalLoadOhms", reading.nominalLoadOhms())
                .node("stimulus", StepKinds.toJson(reading.stimulus()))
                .node("endPoint", StepKinds.toJson(reading.endPoint()))
                .text("takenAt", reading.takenAt().toString())
                .node("conditions", conditions(reading.conditions()))
                .list("channels", reading.channels(), ReadingWriter::channel)
                .node("provenance", provenance(reading.provenance()))
                .texts("notes", reading.notes())
                .end();
    }

    static ObjectNode conditions(Conditions conditions) {
        return ObjectBuilder.begin()
                .number("ambientCelsius", conditions.ambientCelsius())
                .number("caseCelsius", conditions.caseCelsius())
                .end();
    }

    private static ObjectNode channel(ChannelReading channel) {
        ObjectBuilder object = ObjectBuilder.begin()
                .text("channel", channel.channel())
                .choice("outcome", channel.outcome())
                .number("loadOhms", channel.loadOhms())
                .number("powerWatts", channel.powerWatts())
                .number("standardUncertaintyWatts", channel.standardUncertaintyWatts())
                .number("outputVoltsRms", channel.outputVoltsRms())
                .number("frequencyHz", channel.frequencyHz())
                .number("thdFRatio", channel.thdFRatio())
                .number("supplyVolts", channel.supplyVolts())
                .number("supplyAmps", channel.supplyAmps())
                .list("uncertaintyParts", channel.uncertaintyParts(), ReadingWriter::uncertaintyPart)
                .list("sweep", channel.sweep(), ReadingWriter::sweepPoint)
                .list("harmonics", channel.harmonics(), ReadingWriter::harmonic);
        if (!channel.correlations().isEmpty()) {
            object.list("correlations", channel.correlations(), ReadingWriter::correlation);
        }
        return object.end();
    }

    private static ObjectNode correlation(PartCorrelation correlation) {
        return ObjectBuilder.begin()
                .text("first", correlation.first())
                .text("second", correlation.second())
                .number("coefficient", correlation.coefficient())
                .end();
    }

    private static ObjectNode uncertaintyPart(UncertaintyPart part) {
        ObjectBuilder object = ObjectBuilder.begin()
                .text("source", part.source())
                .number("standardUncertaintyWatts", part.standardUncertaintyWatts())
                .flag("shared", part.shared());
        if (part.shape() != PartShape.NORMAL) {
            object.choice("shape", part.shape());
        }
        object.number("degreesOfFreedom", part.degreesOfFreedom());
        part.input().ifPresent(input -> object.choice("input", input));
        return object.end();
    }

    private static ObjectNode sweepPoint(SweepPoint point) {
        return ObjectBuilder.begin()
                .number("driveDb", point.driveDb())
                .number("outputVoltsRms", point.outputVoltsRms())
                .number("powerWatts", point.powerWatts())
                .number("thdFRatio", point.thdFRatio())
                .number("thdPlusNoiseRRatio", point.thdPlusNoiseRRatio())
                .flag("clipped", point.clipped())
                .number("supplyVolts", point.supplyVolts())
                .number("supplyAmps", point.supplyAmps())
                .text("captureSha256", point.captureSha256())
                .end();
    }

    private static ObjectNode harmonic(HarmonicFigure harmonic) {
        return ObjectBuilder.begin()
                .whole("order", harmonic.order())
                .number("ratioToFundamental", harmonic.ratioToFundamental())
                .end();
    }

    static ObjectNode provenance(Provenance provenance) {
        ObjectBuilder object = ObjectBuilder.begin()
                .text("projectRevision", provenance.projectRevision())
                .text("procedureId", provenance.procedureId())
                .text("procedureVersion", provenance.procedureVersion())
                .text("softwareVersion", provenance.softwareVersion())
                .text("operator", provenance.operator())
                .list("instruments", provenance.instruments(), ReadingWriter::instrument)
                .list("captures", provenance.captures(), ReadingWriter::capture);
        provenance.specimen().ifPresent(specimen -> object.node("specimen", specimen(specimen)));
        return object.end();
    }

    private static ObjectNode specimen(Specimen specimen) {
        return ObjectBuilder.begin()
                .text("amplifier", specimen.amplifier())
                .text("serialNumber", specimen.serialNumber())
                .text("bench", specimen.bench())
                .end();
    }

    private static ObjectNode instrument(InstrumentUsed instrument) {
        ObjectBuilder out = ObjectBuilder.begin()
                .text("meterId", instrument.meterId())
                .choice("quantity", instrument.quantity())
                .text("name", instrument.name());
        instrument.calibratedOn().map(LocalDate::toString).ifPresent(day -> out.text("calibratedOn", day));
        return out.flag("overdue", instrument.overdue()).end();
    }

    private static ObjectNode capture(CaptureUsed capture) {
        return ObjectBuilder.begin()
                .text("sha256", capture.sha256())
                .text("fileName", capture.fileName())
                .numbers("voltsPerFullScale", capture.voltsPerFullScale())
                .end();
    }
}

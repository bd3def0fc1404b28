// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

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

/**
 * Writes a reading in its canonical form; what readings of before did not have is left out where it says nothing, so that their text
 * stays. Fields are named as the records' components.
 */
public final class ReadingWriter {
    private ReadingWriter() {}

    /**
     * Returns the canonical text of a reading.
     *
     * @throws IllegalArgumentException when a number is not finite, or a text holds half of a surrogate pair
     */
    public static String toText(Reading reading) {
        return CanonicalText.of(reading, ReadingWriter::reading);
    }

    private static void reading(Reading reading, CanonicalText to) {
        to.list("channels", reading.channels(), ReadingWriter::channel)
                .node("conditions", reading.conditions(), ReadingWriter::conditions)
                .node("endPoint", reading.endPoint(), StepKinds::endPoint)
                .text("loadId", reading.loadId())
                .choice("mode", reading.mode())
                .number("nominalLoadOhms", reading.nominalLoadOhms())
                .texts("notes", reading.notes())
                .node("provenance", reading.provenance(), ReadingWriter::provenance)
                .text("stepId", reading.stepId())
                .node("stimulus", reading.stimulus(), StepKinds::stimulus)
                .text("takenAt", reading.takenAt().toString());
    }

    static void conditions(Conditions conditions, CanonicalText to) {
        to.number("ambientCelsius", conditions.ambientCelsius()).number("caseCelsius", conditions.caseCelsius());
    }

    private static void channel(ChannelReading channel, CanonicalText to) {
        to.text("channel", channel.channel());
        if (!channel.correlations().isEmpty()) {
            to.list("correlations", channel.correlations(), ReadingWriter::correlation);
        }
        to.number("frequencyHz", channel.frequencyHz())
                .list("harmonics", channel.harmonics(), ReadingWriter::harmonic)
                .number("loadOhms", channel.loadOhms())
                .choice("outcome", channel.outcome())
                .number("outputVoltsRms", channel.outputVoltsRms())
                .number("powerWatts", channel.powerWatts())
                .number("standardUncertaintyWatts", channel.standardUncertaintyWatts())
                .number("supplyAmps", channel.supplyAmps())
                .number("supplyVolts", channel.supplyVolts())
                .list("sweep", channel.sweep(), ReadingWriter::sweepPoint)
                .number("thdFRatio", channel.thdFRatio())
                .list("uncertaintyParts", channel.uncertaintyParts(), ReadingWriter::uncertaintyPart);
    }

    private static void correlation(PartCorrelation correlation, CanonicalText to) {
        to.number("coefficient", correlation.coefficient())
                .text("first", correlation.first())
                .text("second", correlation.second());
    }

    private static void uncertaintyPart(UncertaintyPart part, CanonicalText to) {
        to.number("degreesOfFreedom", part.degreesOfFreedom());
        part.input().ifPresent(input -> to.choice("input", input));
        if (part.shape() != PartShape.NORMAL) {
            to.choice("shape", part.shape());
        }
        to.flag("shared", part.shared())
                .text("source", part.source())
                .number("standardUncertaintyWatts", part.standardUncertaintyWatts());
    }

    private static void sweepPoint(SweepPoint point, CanonicalText to) {
        to.text("captureSha256", point.captureSha256())
                .flag("clipped", point.clipped())
                .number("driveDb", point.driveDb())
                .number("outputVoltsRms", point.outputVoltsRms())
                .number("powerWatts", point.powerWatts())
                .number("supplyAmps", point.supplyAmps())
                .number("supplyVolts", point.supplyVolts())
                .number("thdFRatio", point.thdFRatio())
                .number("thdPlusNoiseRRatio", point.thdPlusNoiseRRatio());
    }

    private static void harmonic(HarmonicFigure harmonic, CanonicalText to) {
        to.number("order", harmonic.order()).number("ratioToFundamental", harmonic.ratioToFundamental());
    }

    static void provenance(Provenance provenance, CanonicalText to) {
        to.list("captures", provenance.captures(), ReadingWriter::capture)
                .list("instruments", provenance.instruments(), ReadingWriter::instrument)
                .text("operator", provenance.operator())
                .text("procedureId", provenance.procedureId())
                .text("procedureVersion", provenance.procedureVersion())
                .text("projectRevision", provenance.projectRevision())
                .text("softwareVersion", provenance.softwareVersion());
        provenance.specimen().ifPresent(specimen -> to.node("specimen", specimen, ReadingWriter::specimen));
    }

    private static void specimen(Specimen specimen, CanonicalText to) {
        to.text("amplifier", specimen.amplifier())
                .text("bench", specimen.bench())
                .text("serialNumber", specimen.serialNumber());
    }

    private static void instrument(InstrumentUsed instrument, CanonicalText to) {
        instrument.calibratedOn().ifPresent(day -> to.text("calibratedOn", day.toString()));
        to.text("meterId", instrument.meterId())
                .text("name", instrument.name())
                .flag("overdue", instrument.overdue())
                .choice("quantity", instrument.quantity());
    }

    private static void capture(CaptureUsed capture, CanonicalText to) {
        to.text("fileName", capture.fileName())
                .text("sha256", capture.sha256())
                .numbers("voltsPerFullScale", capture.voltsPerFullScale());
    }
}

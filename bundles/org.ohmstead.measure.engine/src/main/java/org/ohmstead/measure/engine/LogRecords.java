// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.Observation;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Step;
import org.ohmstead.model.SweepPoint;

/** What the log keeps of a run: its result, with all that it depended on. */
final class LogRecords {
    private final RunRecord run;
    private final PlanSetup setup;
    private final List<String> remarks;
    private final Instant now;
    private final Map<String, CaptureUsed> byContent = new HashMap<>();

    LogRecords(RunRecord run, PlanSetup setup, List<String> remarks, Instant now) {
        this.run = run;
        this.setup = setup;
        this.remarks = remarks;
        this.now = now;
        for (KeptCapture kept : run.captures()) {
            byContent.put(kept.contentSha256(), kept.used());
            byContent.put(kept.used().sha256(), kept.used());
        }
    }

    MeasuredFigures figures() {
        Step step = run.subject().step();
        Instant takenAt = run.last().map(Observation::at).orElse(now);
        LocalDate day = takenAt.atZone(ZoneOffset.UTC).toLocalDate();
        List<InstrumentUsed> instruments = run.driver().kind() == BenchKind.SIMULATED
                ? List.of()
                : setup.project().bench().meters().stream()
                        .map(meter -> new InstrumentUsed(
                                meter.id(),
                                meter.quantity(),
                                meter.name(),
                                meter.calibratedOn(),
                                meter.isOverdueOn(day)))
                        .toList();
        return new MeasuredFigures(
                step.id(),
                step.mode(),
                step.loadId(),
                step.supplyVolts(),
                takenAt,
                run.driver(),
                run.settings(),
                run.result().figures().stream().map(LogRecords::figure).toList(),
                new Conditions(
                        run.last().map(Observation::ambientCelsius).orElse(OptionalDouble.empty()),
                        run.last().map(Observation::caseCelsius).orElse(OptionalDouble.empty())),
                provenance(
                        instruments,
                        run.captures().stream().map(KeptCapture::used).toList()),
                notes(run.result().notes()));
    }

    private static MeasuredFigure figure(Figure figure) {
        return new MeasuredFigure(
                figure.id(),
                Contained.clean(figure.channel()),
                Contained.clean(figure.at()),
                figure.value(),
                figure.unit().symbol(),
                figure.standardUncertainty());
    }

    private Provenance provenance(List<InstrumentUsed> instruments, List<CaptureUsed> captures) {
        return new Provenance(
                setup.projectRevision(),
                run.measurement().id(),
                run.measurement().version(),
                setup.softwareVersion(),
                setup.operator(),
                instruments,
                captures,
                Optional.of(Specimen.of(setup.project())));
    }

    private List<String> notes(List<String> first) {
        List<String> notes = new ArrayList<>(first);
        if (run.driver().kind() == BenchKind.SIMULATED) {
            notes.add("Nothing was measured: the bench was simulated by "
                    + run.driver().id() + ".");
        } else if (run.driver().kind() == BenchKind.REPLAYED) {
            notes.add("Measured on recordings that were made before, by "
                    + run.driver().id() + ".");
        }
        notes.addAll(remarks);
        return notes.stream().map(Contained::clean).toList();
    }

    /** Returns the reading of power, with its recordings named as they lie in the store. */
    Optional<Reading> reading() {
        return run.result().power().map(reading -> reading.withChannels(
                        reading.channels().stream().map(this::channel).toList())
                .withProvenance(provenance(
                        reading.provenance().instruments(),
                        reading.provenance().captures().stream()
                                .map(capture -> byContent.get(capture.sha256()))
                                .toList()))
                .withNotes(notes(reading.notes())));
    }

    private ChannelReading channel(ChannelReading channel) {
        return new ChannelReading(
                channel.channel(),
                channel.outcome(),
                channel.loadOhms(),
                channel.powerWatts(),
                channel.standardUncertaintyWatts(),
                channel.outputVoltsRms(),
                channel.frequencyHz(),
                channel.thdFRatio(),
                channel.supplyVolts(),
                channel.supplyAmps(),
                channel.uncertaintyParts(),
                channel.sweep().stream().map(this::point).toList(),
                channel.harmonics(),
                channel.correlations());
    }

    private SweepPoint point(SweepPoint point) {
        return new SweepPoint(
                point.driveDb(),
                point.outputVoltsRms(),
                point.powerWatts(),
                point.thdFRatio(),
                point.thdPlusNoiseRRatio(),
                point.clipped(),
                point.supplyVolts(),
                point.supplyAmps(),
                byContent.get(point.captureSha256()).sha256());
    }
}

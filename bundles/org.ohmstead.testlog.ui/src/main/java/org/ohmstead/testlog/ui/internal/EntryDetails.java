// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Meter;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.testlog.ArchiveNote;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.budget.BudgetLine;
import org.ohmstead.testlog.ui.internal.Details.Cell;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** Writes down everything that is known of one entry. */
final class EntryDetails {
    private static final Messages TEXTS = Messages.of(EntryDetails.class);

    private final LogEntry entry;
    private final Project project;
    private final String revisionNow;
    private final Details.Builder text = new Details.Builder();

    private EntryDetails(LogEntry entry, Project project, String revisionNow) {
        this.entry = entry;
        this.project = project;
        this.revisionNow = revisionNow;
    }

    /**
     * Returns the details of an entry.
     *
     * @param project the open project, for what the plan aimed at and when calibrations run out
     * @param revisionNow hash of the project as it was last saved
     */
    static Details of(LogEntry entry, Project project, String revisionNow) {
        return new EntryDetails(entry, project, revisionNow).write();
    }

    private Details write() {
        text.title(title());
        if (entry.joined()) {
            text.paragraph(TEXTS.text("details.joined", entry.chain()), false);
        }
        entry.voidedBy().ifPresent(this::voided);
        entry.reading().ifPresent(this::reading);
        entry.note().ifPresent(note -> {
            text.paragraph(note.text(), false);
            text.fact(TEXTS.text("details.written"), Figures.time(entry.recordedAt()) + " UTC");
            text.fact(TEXTS.text("details.by"), orNone(note.who()));
        });
        entry.voids().ifPresent(this::voiding);
        entry.join().ifPresent(this::joining);
        entry.archive().ifPresent(this::archiving);
        entry.figures().ifPresent(this::figures);
        if (!entry.readable()) {
            text.paragraph(TEXTS.text("details.unreadable.why"), true);
            text.heading(TEXTS.text("details.stored")).paragraph(entry.bodyText(), false);
        }
        hashes();
        return text.build();
    }

    private String title() {
        String rest = entry.reading()
                .map(reading -> Words.of(reading.mode()) + ", " + Numbers.shown(reading.nominalLoadOhms()) + " \u03a9, "
                        + Figures.fixed(reading.weakestChannel().supplyVolts(), 2) + " V")
                .or(() -> entry.figures().map(figures -> figures.stepId() + ", " + figures.measurementId()))
                .orElseGet(() ->
                        TEXTS.text(entry.readable() ? "kind." + entry.kind().name() : "details.unreadable"));
        return entry.id() + "  \u00b7  " + rest;
    }

    private void voided(VoidNote note) {
        text.paragraph(voidedBy(note), true);
    }

    /** Returns who took an entry back, when and why. */
    static String voidedBy(VoidNote note) {
        return TEXTS.text(
                note.who().isEmpty() ? "details.voided" : "details.voided.who",
                note.voidId(),
                Figures.time(note.recordedAt()),
                note.reason(),
                note.who());
    }

    private void voiding(VoidNote note) {
        text.fact(TEXTS.text("details.void.target"), note.targetId());
        text.fact(TEXTS.text("details.void.reason"), note.reason());
        text.fact(TEXTS.text("details.void.who"), orNone(note.who()));
        text.fact(TEXTS.text("details.on"), Figures.time(note.recordedAt()) + " UTC");
    }

    private void joining(JoinNote note) {
        text.paragraph(TEXTS.text("details.join"), false);
        text.fact(TEXTS.text("details.join.bench"), TEXTS.text("details.join.bench.value", note.name(), note.label()));
        text.fact(
                TEXTS.text("details.join.entries"),
                TEXTS.text(
                        "details.join.entries.value",
                        Long.toString(note.afterSequence() + 1),
                        Long.toString(note.lastSequence())));
        text.fact(TEXTS.text("details.join.head"), Cell.hash(note.headHash()));
        text.fact(TEXTS.text("details.join.first"), Cell.hash(note.chain()));
        text.fact(TEXTS.text("details.join.who"), orNone(note.who()));
        text.fact(TEXTS.text("details.on"), Figures.time(entry.recordedAt()) + " UTC");
    }

    private void archiving(ArchiveNote note) {
        text.paragraph(TEXTS.text("details.archive"), false);
        text.fact(TEXTS.text("details.archive.file"), note.fileName());
        text.fact("SHA-256", Cell.hash(note.fileSha256()));
        text.fact(TEXTS.text("details.archive.head"), Cell.hash(note.headHash()));
        text.fact(
                TEXTS.text("details.archive.captures"),
                Integer.toString(note.capturesTakenOut().size()));
        text.fact(TEXTS.text("details.by"), orNone(note.who()));
        text.fact(TEXTS.text("details.on"), Figures.time(entry.recordedAt()) + " UTC");
    }

    private void specimen(Provenance provenance) {
        provenance.specimen().ifPresent(specimen -> {
            text.fact(TEXTS.text("details.amplifier"), specimen.amplifier());
            text.fact(TEXTS.text("details.serial"), orNone(specimen.serialNumber()));
            text.fact(TEXTS.text("details.place"), orNone(specimen.bench()));
        });
    }

    private void figures(MeasuredFigures figures) {
        text.heading(TEXTS.text("details.figures"));
        for (MeasuredFigure figure : figures.figures()) {
            String place = figure.channel().isEmpty()
                    ? figure.id()
                    : TEXTS.text("details.figure.channel", figure.id(), figure.channel());
            text.fact(
                    place + (figure.at().isEmpty() ? "" : ", " + figure.at()),
                    (Numbers.shown(figure.value()) + " " + figure.unit()).strip());
        }
        figures.notes().forEach(note -> text.paragraph(note, false));
        text.fact(
                TEXTS.text("details.bench"),
                figures.driver().id() + " " + figures.driver().version());
        provenance(figures.provenance());
    }

    private void reading(Reading reading) {
        text.heading(TEXTS.text("details.output")).grid(channels(reading));
        conditions(reading);
        budget(reading);
        provenance(reading.provenance());
        if (!reading.notes().isEmpty()) {
            text.heading(TEXTS.text("details.notes"));
            reading.notes().forEach(note -> text.paragraph(note, false));
        }
    }

    private static List<List<Cell>> channels(Reading reading) {
        List<List<Cell>> rows = new ArrayList<>();
        rows.add(row(reading, TEXTS.text("details.channel"), channel -> Cell.of(channel.channel())));
        rows.add(row(
                reading,
                TEXTS.text("details.power", Coverage.words()),
                channel -> Cell.of(power(channel), powerHover(channel))));
        rows.add(row(
                reading,
                TEXTS.text("details.outcome"),
                channel -> Cell.of(Words.of(channel.outcome()), Words.explain(channel.outcome()))));
        rows.add(row(
                reading,
                TEXTS.text("details.outputVolts"),
                channel -> figure(Figures.fixed(channel.outputVoltsRms(), 3))));
        rows.add(
                row(reading, TEXTS.text("details.loadOhms"), channel -> figure(Numbers.digits(channel.loadOhms(), 4))));
        rows.add(row(reading, TEXTS.text("details.thd"), channel -> figure(Figures.percent(channel.thdFRatio()))));
        rows.add(row(
                reading, TEXTS.text("details.frequency"), channel -> figure(Numbers.digits(channel.frequencyHz(), 6))));
        rows.add(row(
                reading,
                TEXTS.text("details.supplyVolts"),
                channel -> figure(Figures.fixed(channel.supplyVolts(), 3))));
        rows.add(row(
                reading, TEXTS.text("details.supplyAmps"), channel -> figure(Figures.fixed(channel.supplyAmps(), 2))));
        return rows;
    }

    private static List<Cell> row(Reading reading, String label, Function<ChannelReading, Cell> value) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.of(label));
        reading.channels().forEach(channel -> cells.add(value.apply(channel)));
        return cells;
    }

    private static Cell figure(String value) {
        return Cell.of(value, TEXTS.text("details.noUncertainty"));
    }

    private static String power(ChannelReading channel) {
        return Words.bound(channel.outcome())
                + Figures.stated(channel.powerWatts(), channel.standardUncertaintyWatts())
                        .text();
    }

    /** Returns a channel's power with both uncertainties, in watts and in percent. */
    static String powerHover(ChannelReading channel) {
        double standard = channel.standardUncertaintyWatts();
        return channel.powerWatts() > 0
                ? TEXTS.text(
                        "details.power.hover.share",
                        power(channel),
                        Coverage.words(),
                        Numbers.digits(standard, 2),
                        Figures.percent(standard / channel.powerWatts()))
                : TEXTS.text("details.power.hover", power(channel), Coverage.words(), Numbers.digits(standard, 2));
    }

    private void conditions(Reading reading) {
        text.heading(TEXTS.text("details.conditions"));
        text.fact(TEXTS.text("details.taken"), Figures.time(reading.takenAt()) + " UTC");
        text.fact(TEXTS.text("details.recorded"), Figures.time(entry.recordedAt()) + " UTC");
        text.fact(TEXTS.text("details.step"), reading.stepId());
        text.fact(
                TEXTS.text("details.aimed"),
                project.step(reading.stepId())
                        .map(Step::supplyVolts)
                        .map(volts -> Numbers.shown(volts) + " V")
                        .orElseGet(() -> TEXTS.text("details.aimed.none")));
        text.fact(
                TEXTS.text("details.load"),
                TEXTS.text("details.load.value", reading.loadId(), Numbers.shown(reading.nominalLoadOhms())));
        text.fact(TEXTS.text("details.stimulus"), Words.of(reading.stimulus()));
        text.fact(TEXTS.text("details.endPoint"), Words.of(reading.endPoint()));
        text.fact(
                TEXTS.text("details.air"),
                degrees(Figures.fixed(reading.conditions().ambientCelsius(), 1)));
        text.fact(
                TEXTS.text("details.case"),
                degrees(Figures.fixed(reading.conditions().caseCelsius(), 1)));
    }

    private static String degrees(String figure) {
        return figure.equals(Figures.NONE) ? TEXTS.text("details.notRead") : figure + " \u00b0C";
    }

    private void budget(Reading reading) {
        Set<String> sources = new LinkedHashSet<>();
        reading.channels().forEach(channel -> channel.uncertaintyParts().forEach(part -> sources.add(part.source())));
        text.heading(TEXTS.text("details.budget"));
        if (sources.isEmpty()) {
            text.paragraph(TEXTS.text("details.budget.none"), false);
            return;
        }
        List<List<Cell>> rows = new ArrayList<>();
        rows.add(row(reading, TEXTS.text("details.budget.from"), channel -> Cell.of(channel.channel())));
        for (String source : sources) {
            rows.add(row(reading, BudgetLine.label(source, TEXTS.locale()), channel -> share(channel, source)));
        }
        rows.add(row(
                reading,
                TEXTS.text("details.budget.together"),
                channel -> Cell.of(Figures.fixed(channel.standardUncertaintyWatts(), places(channel)))));
        rows.add(row(
                reading,
                Coverage.adjective() + ", " + Coverage.words(),
                channel -> Cell.of(
                        Figures.fixed(Coverage.expanded(channel.standardUncertaintyWatts()), places(channel)))));
        text.grid(rows);
    }

    /** All shares of a channel end at the same decimal place, so that they stand well under one another. */
    private static int places(ChannelReading channel) {
        return Figures.places(channel.standardUncertaintyWatts(), 3);
    }

    private static Cell share(ChannelReading channel, String source) {
        Optional<UncertaintyPart> part = channel.uncertaintyParts().stream()
                .filter(each -> each.source().equals(source))
                .findFirst();
        if (part.isEmpty()) {
            return Cell.of(Figures.NONE);
        }
        double watts = part.get().standardUncertaintyWatts();
        double all = channel.standardUncertaintyWatts();
        String whose = TEXTS.text(part.get().shared() ? "details.budget.shared" : "details.budget.own");
        return Cell.of(
                Figures.fixed(watts, places(channel)),
                all > 0
                        ? TEXTS.text(
                                "details.budget.share",
                                Long.toString(Math.round(100 * watts * watts / (all * all))),
                                whose)
                        : whose);
    }

    private void provenance(Provenance provenance) {
        text.heading(TEXTS.text("details.provenance"));
        specimen(provenance);
        String revision = provenance.projectRevision();
        String same = TEXTS.text(revision.equals(revisionNow) ? "details.revision.same" : "details.revision.other");
        text.fact(
                TEXTS.text("details.revision"),
                new Cell(Figures.shortHash(revision), same + "\n" + revision, revision));
        text.fact(
                TEXTS.text("details.procedure"),
                TEXTS.text("details.procedure.value", provenance.procedureId(), provenance.procedureVersion()));
        text.fact(TEXTS.text("details.software"), provenance.softwareVersion());
        text.fact(TEXTS.text("details.operator"), orNone(provenance.operator()));
        provenance.instruments().forEach(this::instrument);
        if (!provenance.captures().isEmpty()) {
            text.heading(TEXTS.text(
                    "details.captures", Integer.toString(provenance.captures().size())));
            provenance.captures().forEach(this::capture);
        }
    }

    private void instrument(InstrumentUsed used) {
        Optional<Meter> meter = project.bench().meters().stream()
                .filter(each -> each.id().equals(used.meterId()))
                .findFirst();
        List<String> told = new ArrayList<>();
        told.add(used.name());
        told.add(used.calibratedOn()
                .map(day -> TEXTS.text("details.instrument.calibrated", day.toString()))
                .orElseGet(() -> TEXTS.text("details.instrument.uncalibrated")));
        meter.flatMap(Meter::calibrationDueOn)
                .ifPresent(day -> told.add(TEXTS.text("details.instrument.due", day.toString())));
        String line = String.join(", ", told);
        String hover = meter.map(each ->
                        TEXTS.text("details.instrument.hover", orNone(each.serialNumber()), orNone(each.certificate())))
                .orElseGet(() -> TEXTS.text("details.instrument.gone"));
        text.fact(
                Words.of(used.quantity()),
                Cell.of(used.overdue() ? TEXTS.text("details.instrument.overdue", line) : line, hover));
    }

    private void capture(CaptureUsed used) {
        String scale = String.join(
                " / ", used.voltsPerFullScale().stream().map(Numbers::shown).toList());
        text.row(List.of(
                Cell.hash(used.sha256()), Cell.of(used.fileName(), "SHA-256 " + used.sha256()), Cell.of(scale + " V")));
    }

    private void hashes() {
        text.heading(TEXTS.text("details.chain"));
        text.fact(TEXTS.text("details.chain.entry"), Long.toString(entry.sequence()));
        text.fact(TEXTS.text("details.chain.hash"), Cell.hash(entry.hash()));
        text.fact(TEXTS.text("details.chain.before"), Cell.hash(entry.previousHash()));
    }

    private static String orNone(String value) {
        return value.isBlank() ? Figures.NONE : value;
    }
}

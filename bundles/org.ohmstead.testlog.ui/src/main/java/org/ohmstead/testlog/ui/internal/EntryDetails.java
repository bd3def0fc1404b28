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
import org.ohmstead.testlog.ui.internal.Details.Cell;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** Writes down everything that is known of one entry. */
final class EntryDetails {
    private static final String NO_UNCERTAINTY =
            "The log keeps no uncertainty of its own for this figure; its share is in the budget of the power.";

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
            text.paragraph(
                    "Written on another bench; it came with the joined chain " + entry.chain() + ", unchanged.", false);
        }
        entry.voidedBy().ifPresent(this::voided);
        entry.reading().ifPresent(this::reading);
        entry.note().ifPresent(note -> {
            text.paragraph(note.text(), false);
            text.fact("Written", Figures.time(entry.recordedAt()) + " UTC");
            text.fact("By", orNone(note.who()));
        });
        entry.voids().ifPresent(this::voiding);
        entry.join().ifPresent(this::joining);
        entry.archive().ifPresent(this::archiving);
        entry.figures().ifPresent(this::figures);
        if (!entry.readable()) {
            text.paragraph(
                    "The stored text of this entry cannot be understood. Verify the log to learn what is wrong; take"
                            + " the log from a backup if it was changed outside Ohmstead.",
                    true);
            text.heading("Stored text").paragraph(entry.bodyText(), false);
        }
        hashes();
        return text.build();
    }

    private String title() {
        String rest = entry.reading()
                .map(reading -> Words.of(reading.mode()) + ", " + Numbers.shown(reading.nominalLoadOhms()) + " \u03a9, "
                        + Figures.fixed(reading.weakestChannel().supplyVolts(), 2) + " V")
                .or(() -> entry.figures().map(figures -> figures.stepId() + ", " + figures.measurementId()))
                .orElse(entry.readable() ? entry.kind().word() : "unreadable");
        return entry.id() + "  \u00b7  " + rest;
    }

    private void voided(VoidNote note) {
        text.paragraph(
                "Voided by " + note.voidId() + " on " + Figures.time(note.recordedAt()) + " UTC"
                        + (note.who().isEmpty() ? "" : " (" + note.who() + ")") + ": " + note.reason(),
                true);
    }

    private void voiding(VoidNote note) {
        text.fact("Takes back", note.targetId());
        text.fact("Reason", note.reason());
        text.fact("Decided by", orNone(note.who()));
        text.fact("On", Figures.time(note.recordedAt()) + " UTC");
    }

    private void joining(JoinNote note) {
        text.paragraph(
                "Here entries of another bench's log were joined to this one. They stand in the log directly before this"
                        + " entry, which holds their head.",
                false);
        text.fact("Other bench", note.name() + ", chain " + note.label());
        text.fact("Its entries", (note.afterSequence() + 1) + " to " + note.lastSequence());
        text.fact("Its head then", Cell.hash(note.headHash()));
        text.fact("Its first entry", Cell.hash(note.chain()));
        text.fact("Joined by", orNone(note.who()));
        text.fact("On", Figures.time(entry.recordedAt()) + " UTC");
    }

    private void archiving(ArchiveNote note) {
        text.paragraph("Here the project was put away in an archive.", false);
        text.fact("File", note.fileName());
        text.fact("SHA-256", Cell.hash(note.fileSha256()));
        text.fact("Head in it", Cell.hash(note.headHash()));
        text.fact(
                "Captures only there", Integer.toString(note.capturesTakenOut().size()));
        text.fact("By", orNone(note.who()));
        text.fact("On", Figures.time(entry.recordedAt()) + " UTC");
    }

    private void specimen(Provenance provenance) {
        provenance.specimen().ifPresent(specimen -> {
            text.fact("Amplifier", specimen.amplifier());
            text.fact("Serial number", orNone(specimen.serialNumber()));
            text.fact("Place", orNone(specimen.bench()));
        });
    }

    private void figures(MeasuredFigures figures) {
        text.heading("Figures");
        for (MeasuredFigure figure : figures.figures()) {
            String place = (figure.channel().isEmpty() ? "" : ", channel " + figure.channel())
                    + (figure.at().isEmpty() ? "" : ", " + figure.at());
            text.fact(figure.id() + place, (Numbers.shown(figure.value()) + " " + figure.unit()).strip());
        }
        figures.notes().forEach(note -> text.paragraph(note, false));
        text.fact("Bench", figures.driver().id() + " " + figures.driver().version());
        provenance(figures.provenance());
    }

    private void reading(Reading reading) {
        text.heading("Output at the end point").grid(channels(reading));
        conditions(reading);
        budget(reading);
        provenance(reading.provenance());
        if (!reading.notes().isEmpty()) {
            text.heading("Notes");
            reading.notes().forEach(note -> text.paragraph(note, false));
        }
    }

    private static List<List<Cell>> channels(Reading reading) {
        List<List<Cell>> rows = new ArrayList<>();
        rows.add(row(reading, "Channel", channel -> Cell.of(channel.channel())));
        rows.add(row(
                reading, "Power (W), " + Coverage.words(), channel -> Cell.of(power(channel), powerHover(channel))));
        rows.add(row(
                reading, "Outcome", channel -> Cell.of(Words.of(channel.outcome()), Words.explain(channel.outcome()))));
        rows.add(row(reading, "Output (V RMS)", channel -> figure(Figures.fixed(channel.outputVoltsRms(), 3))));
        rows.add(row(reading, "Load (\u03a9)", channel -> figure(Numbers.digits(channel.loadOhms(), 4))));
        rows.add(row(reading, "THD_F (%)", channel -> figure(Figures.percent(channel.thdFRatio()))));
        rows.add(row(reading, "Frequency (Hz)", channel -> figure(Numbers.digits(channel.frequencyHz(), 6))));
        rows.add(row(reading, "Supply (V)", channel -> figure(Figures.fixed(channel.supplyVolts(), 3))));
        rows.add(row(reading, "Supply current (A)", channel -> figure(Figures.fixed(channel.supplyAmps(), 2))));
        return rows;
    }

    private static List<Cell> row(Reading reading, String label, Function<ChannelReading, Cell> value) {
        List<Cell> cells = new ArrayList<>();
        cells.add(Cell.of(label));
        reading.channels().forEach(channel -> cells.add(value.apply(channel)));
        return cells;
    }

    private static Cell figure(String value) {
        return Cell.of(value, NO_UNCERTAINTY);
    }

    private static String power(ChannelReading channel) {
        return Words.bound(channel.outcome())
                + Figures.stated(channel.powerWatts(), channel.standardUncertaintyWatts())
                        .text();
    }

    /** Returns a channel's power with both uncertainties, in watts and in percent. */
    static String powerHover(ChannelReading channel) {
        double standard = channel.standardUncertaintyWatts();
        String share = channel.powerWatts() > 0 ? ", " + Figures.percent(standard / channel.powerWatts()) + " %" : "";
        return power(channel) + " W (" + Coverage.words() + "); standard uncertainty " + Numbers.digits(standard, 2)
                + " W" + share;
    }

    private void conditions(Reading reading) {
        text.heading("Conditions");
        text.fact("Taken", Figures.time(reading.takenAt()) + " UTC");
        text.fact("Recorded", Figures.time(entry.recordedAt()) + " UTC");
        text.fact("Step", reading.stepId());
        text.fact(
                "Supply aimed for",
                project.step(reading.stepId())
                        .map(Step::supplyVolts)
                        .map(volts -> Numbers.shown(volts) + " V")
                        .orElse("the plan no longer has this step"));
        text.fact("Load", reading.loadId() + ", stands for " + Numbers.shown(reading.nominalLoadOhms()) + " \u03a9");
        text.fact("Stimulus", Words.of(reading.stimulus()));
        text.fact("End point", Words.of(reading.endPoint()));
        text.fact("Air", degrees(Figures.fixed(reading.conditions().ambientCelsius(), 1)));
        text.fact("Case", degrees(Figures.fixed(reading.conditions().caseCelsius(), 1)));
    }

    private static String degrees(String figure) {
        return figure.equals(Figures.NONE) ? "not read" : figure + " \u00b0C";
    }

    private void budget(Reading reading) {
        Set<String> sources = new LinkedHashSet<>();
        reading.channels().forEach(channel -> channel.uncertaintyParts().forEach(part -> sources.add(part.source())));
        text.heading("Uncertainty budget of the power (W)");
        if (sources.isEmpty()) {
            text.paragraph("The reading came without a budget.", false);
            return;
        }
        List<List<Cell>> rows = new ArrayList<>();
        rows.add(row(reading, "Standard uncertainty from", channel -> Cell.of(channel.channel())));
        for (String source : sources) {
            rows.add(row(reading, source, channel -> share(channel, source)));
        }
        rows.add(row(
                reading,
                "Together",
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
        String ofVariance = all > 0 ? Math.round(100 * watts * watts / (all * all)) + " % of the variance. " : "";
        return Cell.of(
                Figures.fixed(watts, places(channel)),
                ofVariance
                        + (part.get().shared()
                                ? "Shared: readings with the same instruments have the same error, so it does not"
                                        + " average out."
                                : "This reading's own: it averages out over several readings."));
    }

    private void provenance(Provenance provenance) {
        text.heading("Provenance");
        specimen(provenance);
        String revision = provenance.projectRevision();
        String same = revision.equals(revisionNow)
                ? "The project is still as it was then."
                : "The project has been changed since, or is not saved.";
        text.fact("Project revision", new Cell(Figures.shortHash(revision), same + "\n" + revision, revision));
        text.fact("Procedure", provenance.procedureId() + ", version " + provenance.procedureVersion());
        text.fact("Software", provenance.softwareVersion());
        text.fact("Operator", orNone(provenance.operator()));
        provenance.instruments().forEach(this::instrument);
        if (!provenance.captures().isEmpty()) {
            text.heading("Captures (" + provenance.captures().size() + "), volts per full scale");
            provenance.captures().forEach(this::capture);
        }
    }

    private void instrument(InstrumentUsed used) {
        Optional<Meter> meter = project.bench().meters().stream()
                .filter(each -> each.id().equals(used.meterId()))
                .findFirst();
        String calibrated = used.calibratedOn().map(day -> "calibrated " + day).orElse("calibration day not known");
        String due = meter.flatMap(Meter::calibrationDueOn)
                .map(day -> ", due " + day)
                .orElse("");
        String overdue = used.overdue() ? " \u2014 its calibration had run out" : "";
        String hover = meter.map(each ->
                        "Serial number " + orNone(each.serialNumber()) + ", certificate " + orNone(each.certificate()))
                .orElse("The bench no longer has this meter.");
        text.fact(capital(Words.of(used.quantity())), Cell.of(used.name() + ", " + calibrated + due + overdue, hover));
    }

    private void capture(CaptureUsed used) {
        String scale = String.join(
                " / ", used.voltsPerFullScale().stream().map(Numbers::shown).toList());
        text.row(List.of(
                Cell.hash(used.sha256()), Cell.of(used.fileName(), "SHA-256 " + used.sha256()), Cell.of(scale + " V")));
    }

    private void hashes() {
        text.heading("Place in the chain");
        text.fact("Entry", Long.toString(entry.sequence()));
        text.fact("Hash", Cell.hash(entry.hash()));
        text.fact("Hash before", Cell.hash(entry.previousHash()));
    }

    private static String orNone(String value) {
        return value.isBlank() ? Figures.NONE : value;
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;

/**
 * The values of a check standard in a log, the oldest first: those that were typed in, and those that its step of the plan gave. What was
 * voided or set aside does not count, nor does power that did not reach its end point. Where the log also holds values of a real bench or
 * of recordings, those of a simulated one do not count.
 *
 * @param own found on the bench of the project
 * @param elsewhere found on other benches
 * @param notes whole sentences about what does not count
 */
public record CheckValues(List<CheckValue> own, List<CheckValue> elsewhere, List<String> notes) {
    private static final Messages TEXTS = Messages.of(CheckValues.class);

    /** Copies the lists. */
    public CheckValues {
        own = List.copyOf(own);
        elsewhere = List.copyOf(elsewhere);
        notes = List.copyOf(notes);
    }

    private record Found(CheckValue value, boolean simulated, boolean here) {}

    /**
     * Picks the values out of a log.
     *
     * @param project whose check standard it is
     * @param standard which
     * @param entries what the log holds, in its order; a reading is directly before what else its run found
     */
    public static CheckValues of(Project project, CheckStandard standard, List<LogEntry> entries) {
        List<Found> all = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        int otherUnit = 0;
        for (int i = 0; i < entries.size(); i++) {
            LogEntry entry = entries.get(i);
            if (entry.voided() || project.reasonSetAside(entry.id()).isPresent()) {
                continue;
            }
            Optional<LogEntry> next = i + 1 < entries.size() ? Optional.of(entries.get(i + 1)) : Optional.empty();
            reading(project, standard, entry, next)
                    .or(() -> figure(project, standard, entry))
                    .ifPresent(all::add);
            if (hasOtherUnit(standard, entry)) {
                otherUnit++;
            }
        }
        if (otherUnit > 0) {
            notes.add(TEXTS.text(
                    otherUnit == 1 ? "note.otherUnit.one" : "note.otherUnit.many",
                    standard.unit(),
                    Integer.toString(otherUnit)));
        }
        long simulated = all.stream().filter(Found::simulated).count();
        boolean mixed = simulated > 0 && simulated < all.size();
        if (mixed) {
            notes.add(TEXTS.text(
                    simulated == 1 ? "note.simulated.one" : "note.simulated.many", Long.toString(simulated)));
        }
        List<Found> counted = all.stream()
                .filter(found -> !mixed || !found.simulated())
                .sorted(Comparator.comparing(found -> found.value().takenAt()))
                .toList();
        return new CheckValues(values(counted, true), values(counted, false), notes);
    }

    private static List<CheckValue> values(List<Found> all, boolean here) {
        return all.stream()
                .filter(found -> found.here() == here)
                .map(Found::value)
                .toList();
    }

    /** Returns the newest value of the project's bench. */
    public Optional<CheckValue> newest() {
        return own.isEmpty() ? Optional.empty() : Optional.of(own.get(own.size() - 1));
    }

    private static Optional<Found> reading(
            Project project, CheckStandard standard, LogEntry entry, Optional<LogEntry> next) {
        if (!standard.figureId().equals(CheckStandard.POWER)) {
            return Optional.empty();
        }
        return entry.reading()
                .filter(reading -> isOfStep(standard, reading.stepId()))
                .flatMap(reading -> channel(standard, reading)
                        .map(channel -> found(
                                project,
                                entry,
                                value(
                                        entry,
                                        reading,
                                        channel.powerWatts(),
                                        OptionalDouble.of(channel.standardUncertaintyWatts())),
                                next.filter(after -> after.recordedAt().equals(entry.recordedAt()))
                                        .flatMap(LogEntry::figures)
                                        .filter(CheckValues::isSimulated)
                                        .isPresent())));
    }

    private static boolean isOfStep(CheckStandard standard, String stepId) {
        return !standard.isTypedIn() && standard.stepId().equals(stepId);
    }

    private static Optional<ChannelReading> channel(CheckStandard standard, Reading reading) {
        Optional<ChannelReading> wanted = standard.channel().isEmpty()
                ? Optional.of(reading.weakestChannel())
                : reading.channels().stream()
                        .filter(channel -> channel.channel().equals(standard.channel()))
                        .findFirst();
        return wanted.filter(channel -> channel.outcome() == EndPointOutcome.REACHED);
    }

    private static CheckValue value(LogEntry entry, Reading reading, double value, OptionalDouble uncertainty) {
        return new CheckValue(
                entry.id(),
                reading.takenAt(),
                value,
                uncertainty,
                reading.provenance().operator(),
                bench(entry, reading.provenance()));
    }

    private static Optional<Found> figure(Project project, CheckStandard standard, LogEntry entry) {
        return entry.figures()
                .filter(figures -> isWanted(standard, entry, figures))
                .flatMap(figures -> figure(standard, figures)
                        .map(figure -> found(
                                project,
                                entry,
                                new CheckValue(
                                        entry.id(),
                                        figures.takenAt(),
                                        figure.value(),
                                        figure.standardUncertainty(),
                                        figures.provenance().operator(),
                                        bench(entry, figures.provenance())),
                                isSimulated(figures))));
    }

    private static boolean isWanted(CheckStandard standard, LogEntry entry, MeasuredFigures figures) {
        // The power of a run stands in its reading already.
        boolean inReading = standard.figureId().equals(CheckStandard.POWER);
        return TypedCheck.isOf(entry, standard) || !inReading && isOfStep(standard, figures.stepId());
    }

    /** The first figure of that id, channel and unit; a figure that holds for all channels will do for any. */
    private static Optional<MeasuredFigure> figure(CheckStandard standard, MeasuredFigures figures) {
        return named(standard, figures)
                .filter(figure -> figure.unit().equals(standard.unit()))
                .findFirst();
    }

    private static Stream<MeasuredFigure> named(CheckStandard standard, MeasuredFigures figures) {
        return figures.figures().stream()
                .filter(figure -> figure.id().equals(standard.figureId()))
                .filter(figure -> standard.channel().isEmpty()
                        || figure.channel().isEmpty()
                        || figure.channel().equals(standard.channel()));
    }

    private static boolean hasOtherUnit(CheckStandard standard, LogEntry entry) {
        return entry.figures()
                .filter(figures -> isWanted(standard, entry, figures))
                .filter(figures -> figure(standard, figures).isEmpty()
                        && named(standard, figures).findAny().isPresent())
                .isPresent();
    }

    private static boolean isSimulated(MeasuredFigures figures) {
        return figures.driver().kind() == BenchKind.SIMULATED;
    }

    private static String bench(LogEntry entry, Provenance provenance) {
        String named = provenance.specimen().map(Specimen::bench).orElse("");
        String label = entry.chain();
        return named.isEmpty() && !label.isEmpty() ? TEXTS.text("bench.label", label) : named;
    }

    private static Found found(Project project, LogEntry entry, CheckValue value, boolean simulated) {
        String place = project.bench().place();
        boolean here = entry.chain().isEmpty()
                ? place.isEmpty() || value.bench().isEmpty() || value.bench().equals(place)
                : !place.isEmpty() && value.bench().equals(place);
        CheckValue named = here && value.bench().isEmpty()
                ? new CheckValue(
                        value.entryId(),
                        value.takenAt(),
                        value.value(),
                        value.standardUncertainty(),
                        value.operator(),
                        place)
                : value;
        return new Found(named, simulated, here);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.ohmstead.measure.standard.LoggedGain;
import org.ohmstead.measure.standard.SourceFullScale;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.signal.gain.ChannelBalance;
import org.ohmstead.testlog.LogEntry;

/** What the entries of a log that count say about gain, the newest first. */
final class LogFacts {
    /** Nothing is open. */
    static final LogFacts NONE = new LogFacts(Optional.empty(), List.of());

    private final Optional<Project> project;
    private final List<LogEntry> entries;

    /**
     * A fact and the entry that it comes from.
     *
     * @param entryId which entry
     * @param fact what it says
     */
    record Found<T>(String entryId, T fact) {}

    /** Entries of a log, oldest first. */
    LogFacts(Optional<Project> project, List<LogEntry> entries) {
        this.project = project;
        this.entries = entries;
    }

    /** Returns the newest gain of an amplifier that is bridged or not. */
    Optional<Found<LoggedGain>> gain(boolean bridged, double fullScaleVoltsRms) {
        return newest(entry -> entry.figures()
                .filter(figures -> bridged == (figures.mode() == Mode.BRIDGED))
                .flatMap(LoggedGain::of)
                .or(() -> entry.reading()
                        .filter(reading -> bridged == (reading.mode() == Mode.BRIDGED))
                        .flatMap(reading ->
                                LoggedGain.of(reading, fullScaleVoltsRms, project.flatMap(open -> open.bench()
                                        .meterFor(MeterQuantity.OUTPUT_VOLTS))))));
    }

    /** Returns how alike the channels were in the newest reading that tells it. */
    Optional<Found<ChannelBalance>> balance(double toleranceDb) {
        return newest(entry -> entry.reading().flatMap(reading -> LoggedGain.balance(reading, toleranceDb)));
    }

    /** Returns what the source of the newest run on a bench gave at full scale, in volts RMS. */
    Optional<Found<Double>> fullScaleVoltsRms() {
        return newest(entry -> {
            OptionalDouble volts =
                    entry.figures().map(SourceFullScale::voltsRms).orElse(OptionalDouble.empty());
            return volts.isPresent() ? Optional.of(volts.getAsDouble()) : Optional.empty();
        });
    }

    private <T> Optional<Found<T>> newest(Function<LogEntry, Optional<T>> question) {
        for (int i = entries.size() - 1; i >= 0; i--) {
            LogEntry entry = entries.get(i);
            if (!entry.voided() && !setAside(entry)) {
                Optional<T> fact = question.apply(entry);
                if (fact.isPresent()) {
                    return Optional.of(new Found<>(entry.id(), fact.get()));
                }
            }
        }
        return Optional.empty();
    }

    private boolean setAside(LogEntry entry) {
        return project.flatMap(open -> open.reasonSetAside(entry.id())).isPresent();
    }
}

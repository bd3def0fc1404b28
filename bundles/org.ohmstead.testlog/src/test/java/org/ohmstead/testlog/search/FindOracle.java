// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.LogEntry;

/** What a search must find, worked out on the whole entries without an index. */
final class FindOracle {
    private FindOracle() {}

    static List<String> ids(List<LogEntry> entries, Find find, FindOrder order) {
        List<LogEntry> found = new ArrayList<>(
                entries.stream().filter(entry -> matches(entry, find)).toList());
        if (order.column() == IndexColumn.PLACE) {
            if (order.falling()) {
                java.util.Collections.reverse(found);
            }
        } else {
            List<LogEntry> lacking = found.stream()
                    .filter(entry -> key(entry, order.column()).isEmpty())
                    .toList();
            found.removeAll(lacking);
            found.sort(Comparator.comparing(entry -> key(entry, order.column()).orElseThrow()));
            if (order.falling()) {
                java.util.Collections.reverse(found);
            }
            found.addAll(lacking);
        }
        return found.stream().map(LogEntry::id).toList();
    }

    private static boolean matches(LogEntry entry, Find find) {
        boolean asEntry = (find.kinds().isEmpty() || find.kinds().contains(entry.kind()))
                && (find.states().isEmpty() || find.states().contains(state(entry)))
                && (find.chain().isEmpty()
                        || (find.chain().equals(Find.OWN_CHAIN)
                                ? entry.chain().isEmpty()
                                : like(entry.chain(), find.chain())))
                && find.from().map(from -> !when(entry).isBefore(from)).orElse(true)
                && find.to().map(to -> when(entry).isBefore(to)).orElse(true);
        boolean asNamed = like(amplifier(entry), find.amplifier())
                && like(serial(entry), find.serialNumber())
                && like(bench(entry), find.bench())
                && like(operator(entry), find.operator())
                && like(load(entry), find.loadId())
                && like(step(entry), find.stepId());
        boolean asMeasured = (find.mode().isEmpty() || find.mode().equals(mode(entry)))
                && (find.loadOhms().isEmpty()
                        || entry.reading()
                                .map(Reading::nominalLoadOhms)
                                .equals(Optional.of(find.loadOhms().getAsDouble())))
                && (!find.overdueOnly() || overdue(entry))
                && find.ranges().stream().allMatch(range -> inRange(entry, range));
        return asEntry && asNamed && asMeasured && find.words().stream().allMatch(word -> says(entry, word));
    }

    private static boolean like(String text, String wanted) {
        if (wanted.isEmpty()) {
            return true;
        }
        String pattern = Pattern.quote(wanted.toLowerCase(Locale.ROOT)).replace("*", "\\E.*\\Q");
        return Pattern.matches(pattern, text.toLowerCase(Locale.ROOT));
    }

    private static boolean says(LogEntry entry, String word) {
        String wanted = word.toLowerCase(Locale.ROOT);
        return entry.id().equalsIgnoreCase(word)
                || Stream.of(
                                text(entry),
                                amplifier(entry),
                                serial(entry),
                                bench(entry),
                                operator(entry),
                                step(entry),
                                load(entry),
                                measurement(entry))
                        .anyMatch(text -> text.toLowerCase(Locale.ROOT).contains(wanted));
    }

    private static boolean inRange(LogEntry entry, FigureRange range) {
        return switch (range.figureId()) {
            case "power" ->
                weakest(entry)
                        .map(ChannelReading::powerWatts)
                        .filter(range::holds)
                        .isPresent();
            case "thd" ->
                weakest(entry)
                        .map(ChannelReading::thdFRatio)
                        .filter(range::holds)
                        .isPresent();
            case "supply" -> supply(entry).filter(range::holds).isPresent();
            default ->
                entry.figures().stream()
                        .flatMap(figures -> figures.figures().stream())
                        .anyMatch(figure -> figure.id().equals(range.figureId()) && range.holds(figure.value()));
        };
    }

    /** What an entry is ordered by; of one column all keys use the same part. */
    private record Key(double number, Instant moment, String text) implements Comparable<Key> {
        private static final Comparator<Key> ORDER = Comparator.comparingDouble(Key::number)
                .thenComparing(Key::moment)
                .thenComparing(Key::text);

        static Key of(double number) {
            return new Key(number, Instant.EPOCH, "");
        }

        static Key of(Instant moment) {
            return new Key(0, moment, "");
        }

        static Key of(String text) {
            return new Key(0, Instant.EPOCH, text);
        }

        static Key of(Enum<?> constant) {
            return of(constant.ordinal());
        }

        @Override
        public int compareTo(Key other) {
            return ORDER.compare(this, other);
        }
    }

    private static Optional<Key> key(LogEntry entry, IndexColumn column) {
        return switch (column) {
            case PLACE -> Optional.empty();
            case CHAIN -> Optional.of(Key.of(entry.chain().toLowerCase(Locale.ROOT)));
            case ID ->
                Optional.of(Key.of(
                        entry.kind().ordinal() * 1e9 + Long.parseLong(entry.id().replaceAll("^.*[A-Z]", ""))));
            case KIND -> Optional.of(Key.of(entry.kind()));
            case RECORDED_AT -> Optional.of(Key.of(entry.recordedAt()));
            case TAKEN_AT -> Optional.of(Key.of(when(entry)));
            case AMPLIFIER -> text(FindOracle::amplifier, entry).map(Key::of);
            case SERIAL_NUMBER -> text(FindOracle::serial, entry).map(Key::of);
            case BENCH -> text(FindOracle::bench, entry).map(Key::of);
            case OPERATOR -> text(FindOracle::operator, entry).map(Key::of);
            case MODE -> mode(entry).map(Key::of);
            case LOAD_ID -> text(FindOracle::load, entry).map(Key::of);
            case LOAD_OHMS -> entry.reading().map(reading -> Key.of(reading.nominalLoadOhms()));
            case SUPPLY_VOLTS -> supply(entry).map(Key::of);
            case STEP_ID -> text(FindOracle::step, entry).map(Key::of);
            case STIMULUS ->
                entry.reading()
                        .map(reading -> (reading.stimulus() instanceof org.ohmstead.model.Stimulus.ToneBurst
                                        ? "burst "
                                        : "sine ")
                                + (long) reading.stimulus().frequencyHz() + " hz")
                        .map(Key::of);
            case MEASUREMENT -> text(FindOracle::measurement, entry).map(Key::of);
            case POWER_WATTS -> weakest(entry).map(channel -> Key.of(channel.powerWatts()));
            case UNCERTAINTY_WATTS -> weakest(entry).map(channel -> Key.of(channel.standardUncertaintyWatts()));
            case THD_F_RATIO -> weakest(entry).map(channel -> Key.of(channel.thdFRatio()));
            case OUTCOME -> weakest(entry).map(channel -> Key.of(channel.outcome()));
            case STATE -> Optional.of(Key.of(state(entry)));
            case OVERDUE -> provenance(entry).map(any -> Key.of(overdue(entry) ? 1 : 0));
            case TEXT -> text(FindOracle::text, entry).map(Key::of);
        };
    }

    private static Optional<String> text(Function<LogEntry, String> text, LogEntry entry) {
        return Optional.of(text.apply(entry).toLowerCase(Locale.ROOT)).filter(word -> !word.isEmpty());
    }

    static EntryState state(LogEntry entry) {
        if (entry.voided()) {
            return EntryState.VOIDED;
        }
        return switch (entry.kind()) {
            case READING, FIGURES -> EntryState.VALID;
            case NOTE -> EntryState.NOTE;
            default -> EntryState.ABOUT;
        };
    }

    private static Instant when(LogEntry entry) {
        return entry.reading()
                .map(Reading::takenAt)
                .or(() -> entry.figures().map(MeasuredFigures::takenAt))
                .orElse(entry.recordedAt());
    }

    private static Optional<ChannelReading> weakest(LogEntry entry) {
        return entry.reading().flatMap(reading -> reading.channels().stream()
                .min(Comparator.comparingDouble(ChannelReading::powerWatts)));
    }

    private static Optional<Double> supply(LogEntry entry) {
        return weakest(entry).map(ChannelReading::supplyVolts).or(() -> entry.figures()
                .map(MeasuredFigures::supplyVolts));
    }

    private static Optional<Provenance> provenance(LogEntry entry) {
        return entry.reading().map(Reading::provenance).or(() -> entry.figures().map(MeasuredFigures::provenance));
    }

    private static boolean overdue(LogEntry entry) {
        return provenance(entry).stream()
                .flatMap(provenance -> provenance.instruments().stream())
                .anyMatch(InstrumentUsed::overdue);
    }

    private static Optional<org.ohmstead.model.Mode> mode(LogEntry entry) {
        return entry.reading().map(Reading::mode).or(() -> entry.figures().map(MeasuredFigures::mode));
    }

    private static String step(LogEntry entry) {
        return entry.reading()
                .map(Reading::stepId)
                .or(() -> entry.figures().map(MeasuredFigures::stepId))
                .orElse("");
    }

    private static String load(LogEntry entry) {
        return entry.reading()
                .map(Reading::loadId)
                .or(() -> entry.figures().map(MeasuredFigures::loadId))
                .orElse("");
    }

    private static String measurement(LogEntry entry) {
        return provenance(entry).map(Provenance::procedureId).orElse("");
    }

    private static String specimen(LogEntry entry, Function<Specimen, String> part) {
        return provenance(entry).flatMap(Provenance::specimen).map(part).orElse("");
    }

    private static String amplifier(LogEntry entry) {
        return specimen(entry, Specimen::amplifier);
    }

    private static String serial(LogEntry entry) {
        return specimen(entry, Specimen::serialNumber);
    }

    private static String bench(LogEntry entry) {
        return specimen(entry, Specimen::bench);
    }

    private static String operator(LogEntry entry) {
        return provenance(entry)
                .map(Provenance::operator)
                .or(() -> entry.note().map(note -> note.who()))
                .or(() -> entry.voids().map(note -> note.who()))
                .or(() -> entry.join().map(note -> note.who()))
                .or(() -> entry.archive().map(note -> note.who()))
                .orElse("");
    }

    private static String text(LogEntry entry) {
        return entry.reading()
                .map(reading -> String.join(" ", reading.notes()))
                .or(() -> entry.figures().map(figures -> String.join(" ", figures.notes())))
                .or(() -> entry.note().map(note -> note.text()))
                .or(() -> entry.voids().map(note -> "Voids " + note.targetId() + ": " + note.reason()))
                .or(() -> entry.join().map(note -> "Joins " + note.label() + ": " + note.name()))
                .or(() -> entry.archive().map(note -> "Archived in " + note.fileName()))
                .orElse("");
    }
}

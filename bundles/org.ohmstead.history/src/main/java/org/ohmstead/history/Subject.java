// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.history.internal.Words;
import org.ohmstead.model.Price;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.LogEntry;

/**
 * What is compared: a specimen of an amplifier, or the same one in a period.
 *
 * @param name what it is called beside the others
 * @param source project or log that it comes from
 * @param specimen which amplifier, with the bench of its first reading
 * @param period in which its readings were taken
 * @param readings those that count
 * @param price what it cost, when known
 * @param channelCount how many channels it has; 0 when not known
 */
public record Subject(
        String name,
        String source,
        Specimen specimen,
        Period period,
        List<Reading> readings,
        Optional<Price> price,
        int channelCount) {
    /** Checks that it has a name, and copies the list. */
    public Subject {
        if (name.isBlank()) {
            throw new IllegalArgumentException("name is blank; it needs a text");
        }
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(specimen, "specimen");
        Objects.requireNonNull(period, "period");
        readings = List.copyOf(readings);
        Objects.requireNonNull(price, "price");
        if (channelCount < 0) {
            throw new IllegalArgumentException("channelCount is " + channelCount + "; it must be at least 0");
        }
    }

    /** Returns this with another name. */
    public Subject withName(String newName) {
        return new Subject(newName, source, specimen, period, readings, price, channelCount);
    }

    private record Key(String amplifier, String serialNumber) {}

    /**
     * Returns the specimens whose readings lie in the log of a project: one for each amplifier and serial number. A reading that does not
     * say which counts for the project's own amplifier. Price and channels are known of that one only.
     *
     * @param source what the project is called
     * @param project the project
     * @param entries what its log holds
     * @param period in which the readings were taken
     */
    public static List<Subject> of(String source, Project project, List<LogEntry> entries, Period period) {
        Specimen own = Specimen.of(project);
        Key ownKey = new Key(own.amplifier(), own.serialNumber());
        List<LogEntry> counted = entries.stream()
                .filter(entry -> project.reasonSetAside(entry.id()).isEmpty())
                .toList();
        return grouped(source, counted, Optional.of(own), period).stream()
                .map(subject -> new Key(
                                        subject.specimen().amplifier(),
                                        subject.specimen().serialNumber())
                                .equals(ownKey)
                        ? new Subject(
                                subject.name(),
                                source,
                                subject.specimen(),
                                period,
                                subject.readings(),
                                project.amplifier().price(),
                                project.amplifier().channelCount())
                        : subject)
                .toList();
    }

    /**
     * Returns the specimens whose readings lie in a log without a project, such as a shared one. A reading that does not say which does
     * not count, and neither prices nor channels are known.
     */
    public static List<Subject> of(String source, List<LogEntry> entries, Period period) {
        return grouped(source, entries, Optional.empty(), period);
    }

    private static List<Subject> grouped(
            String source, List<LogEntry> entries, Optional<Specimen> unsaid, Period period) {
        Map<Key, List<Reading>> readings = new LinkedHashMap<>();
        Map<Key, Specimen> specimens = new LinkedHashMap<>();
        for (LogEntry entry : entries) {
            Optional<Reading> reading =
                    entry.reading().filter(each -> !entry.voided() && period.contains(each.takenAt()));
            Optional<Specimen> specimen =
                    reading.flatMap(each -> each.provenance().specimen().or(() -> unsaid));
            if (specimen.isPresent()) {
                Key key = new Key(specimen.get().amplifier(), specimen.get().serialNumber());
                specimens.putIfAbsent(key, specimen.get());
                readings.computeIfAbsent(key, any -> new ArrayList<>()).add(reading.get());
            }
        }
        List<Subject> subjects = new ArrayList<>();
        readings.forEach((key, its) -> subjects.add(new Subject(
                name(specimens.get(key), period), source, specimens.get(key), period, its, Optional.empty(), 0)));
        return List.copyOf(subjects);
    }

    private static String name(Specimen specimen, Period period) {
        String when = period.words();
        return Words.specimen(specimen) + (when.isEmpty() ? "" : ", " + when);
    }

    /** Returns subjects of which no two have the same name: those that had get that of their source behind theirs, or a number. */
    public static List<Subject> withOwnNames(List<Subject> subjects) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        subjects.forEach(subject -> counts.merge(subject.name(), 1, Integer::sum));
        Map<String, Integer> given = new LinkedHashMap<>();
        List<Subject> named = new ArrayList<>();
        for (Subject subject : subjects) {
            String name =
                    counts.get(subject.name()) > 1 ? subject.name() + " (" + subject.source() + ")" : subject.name();
            int number = given.merge(name, 1, Integer::sum);
            named.add(subject.withName(number > 1 ? name + " " + number : name));
        }
        return List.copyOf(named);
    }
}

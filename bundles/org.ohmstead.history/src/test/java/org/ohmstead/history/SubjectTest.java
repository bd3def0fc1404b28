// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Price;
import org.ohmstead.model.Project;
import org.ohmstead.model.SetAside;
import org.ohmstead.testlog.LogEntry;

class SubjectTest {
    private static final Price PRICE = new Price(480, "EUR", LocalDate.of(2019, 6, 15));

    private static Project project() {
        Project project = SampleProject.with();
        return project.withAmplifier(project.amplifier().withPrice(Optional.of(PRICE)));
    }

    private static LogEntry entry(int number, SampleReading reading) {
        return SampleProject.entry(number, reading.channel(14.4, 100, 0.5, 0.5).reading());
    }

    @Test
    void aReadingThatDoesNotSayWhichIsOfTheProjectsAmplifier() {
        List<Subject> subjects = Subject.of(
                "kestrel",
                project(),
                List.of(
                        entry(1, SampleReading.at("2026-01-01T09:00:00Z")),
                        entry(
                                2,
                                SampleReading.at("2026-01-02T09:00:00Z").of("Made-up Workshop M-1", "0001", "Bench 1")),
                        entry(
                                3,
                                SampleReading.at("2026-01-03T09:00:00Z")
                                        .of("Made-up Workshop M-1", "0002", "Bench 1"))),
                Period.ALWAYS);
        assertEquals(
                List.of("Made-up Workshop M-1 no. 0001", "Made-up Workshop M-1 no. 0002"),
                subjects.stream().map(Subject::name).toList());
        assertEquals(2, subjects.get(0).readings().size());
        assertEquals(Optional.of(PRICE), subjects.get(0).price());
        assertEquals(2, subjects.get(0).channelCount());
        assertTrue(subjects.get(1).price().isEmpty(), "what the other one cost is not known");
    }

    @Test
    void countsOnlyWhatCountsAndWasTakenInThePeriod() throws HistoryException {
        Project project = project().withSetAside(List.of(new SetAside("R0003", "load was hot")));
        List<LogEntry> entries = List.of(
                entry(1, SampleReading.at("2025-12-31T23:00:00Z")),
                entry(2, SampleReading.at("2026-01-01T09:00:00Z")),
                entry(3, SampleReading.at("2026-01-02T09:00:00Z")),
                SampleProject.voided(entry(4, SampleReading.at("2026-01-03T09:00:00Z"))));
        List<Subject> subjects = Subject.of("kestrel", project, entries, Period.parse("2026"));
        assertEquals(1, subjects.get(0).readings().size());
        assertEquals(
                "Made-up Workshop M-1 no. 0001, 2026-01-01 to 2026-12-31",
                subjects.get(0).name());
        assertTrue(Subject.of("kestrel", project, entries, Period.parse("2020")).isEmpty());
    }

    @Test
    void namesakesGetTheNameOfTheirSource() {
        List<LogEntry> entries = List.of(entry(1, SampleReading.at("2026-01-01T09:00:00Z")));
        Subject here = Subject.of("kestrel", project(), entries, Period.ALWAYS).get(0);
        Subject there = Subject.of("heron", project(), entries, Period.ALWAYS).get(0);
        assertEquals(
                List.of(
                        "Made-up Workshop M-1 no. 0001 (kestrel)",
                        "Made-up Workshop M-1 no. 0001 (heron)",
                        "Made-up Workshop M-1 no. 0001 (heron) 2"),
                Subject.withOwnNames(List.of(here, there, there)).stream()
                        .map(Subject::name)
                        .toList());
        assertEquals(List.of(here), Subject.withOwnNames(List.of(here)));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Project;
import org.ohmstead.report.ResultsSheet;

/** The facts about a test that stand above every sheet. */
final class Facts {
    private static final int FOOTER_CHARACTERS = 60;

    private final ResultsSheet sheet;
    private final Speech speech;

    Facts(ResultsSheet sheet, Speech speech) {
        this.sheet = sheet;
        this.speech = speech;
    }

    static String amplifierName(Amplifier amplifier) {
        return amplifier.maker().isBlank() ? amplifier.model() : amplifier.maker() + " " + amplifier.model();
    }

    static String author(Project project) {
        String laboratory = project.sheet().laboratory();
        return laboratory.isBlank() ? project.sheet().preparedBy() : laboratory;
    }

    /** Returns what a technician looks for first; each value has no more than so many characters. */
    List<Item> brief(int characters) {
        Project project = sheet.project();
        Amplifier amplifier = project.amplifier();
        List<Item> items = new ArrayList<>();
        add(items, "fact.serial", amplifier.serialNumber(), characters);
        add(items, "fact.tested", tested(), characters);
        add(items, "fact.readings", readings(), characters);
        add(items, "fact.lowestLoads", lowestLoads(amplifier), characters);
        add(items, "fact.fuses", fuses(amplifier), characters);
        add(items, "fact.place", project.bench().place(), characters);
        add(items, "fact.laboratory", project.sheet().laboratory(), characters);
        add(items, "fact.preparedBy", project.sheet().preparedBy(), characters);
        add(items, "fact.made", Figures.minute(sheet.producedAt()) + " UTC", characters);
        return items;
    }

    private void add(List<Item> items, String key, String value, int characters) {
        if (!value.isBlank()) {
            items.add(new Item(speech.text(key), PlainText.shortened(value, characters)));
        }
    }

    private String readings() {
        long standing = sheet.standingReadings().size();
        long left = sheet.readings().size() - standing;
        return left == 0 ? Long.toString(standing) : speech.text("fact.readingsLeftOut", standing + "", left + "");
    }

    private String lowestLoads(Amplifier amplifier) {
        return amplifier.lowestLoads().stream()
                .map(lowest -> speech.of(lowest.mode()) + " " + speech.ohms(lowest.loadOhms()))
                .collect(Collectors.joining(", "));
    }

    private String fuses(Amplifier amplifier) {
        return amplifier.fuses().stream()
                .map(fuse -> speech.brief(fuse.ratedAmps(), 4) + "\u00a0A")
                .collect(Collectors.joining(", "));
    }

    /** Returns the day of the readings, or the first and the last; empty without readings. */
    String tested() {
        List<Instant> times = sheet.readings().stream()
                .map(entry -> entry.reading().takenAt())
                .sorted()
                .toList();
        if (times.isEmpty()) {
            return "";
        }
        String first = Figures.day(times.get(0));
        String last = Figures.day(times.get(times.size() - 1));
        return first.equals(last) ? first : speech.text("fromTo", first, last);
    }

    /** Returns what stands at the foot of each page. */
    String footer() {
        String hash = sheet.log().headHash();
        String log = hash.isEmpty() ? speech.text("footer.empty") : speech.text("footer.log", Figures.shortHash(hash));
        String name = PlainText.shortened(amplifierName(sheet.project().amplifier()), FOOTER_CHARACTERS);
        return name + " \u00b7 " + Figures.day(sheet.producedAt()) + " \u00b7 " + log;
    }
}

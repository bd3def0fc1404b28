// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.Reading;
import org.ohmstead.report.SheetReading;

/** The record of all readings, the voided ones among them. */
final class ReadingBlocks {
    private static final int CAPTURES_SHOWN = 1;
    private final Evidence evidence;
    private final Speech speech;

    ReadingBlocks(Evidence evidence) {
        this.evidence = evidence;
        this.speech = evidence.speech();
    }

    List<ReadingBlock> of(List<SheetReading> readings) {
        List<ReadingBlock> blocks = new ArrayList<>();
        String before = "";
        for (SheetReading entry : readings) {
            String shared = shared(entry.reading());
            blocks.add(block(entry, shared.equals(before) ? "" : shared));
            before = shared;
        }
        return blocks;
    }

    /** What is said once above all readings that have it in common. */
    private String shared(Reading reading) {
        return speech.text(
                "full.readings.shared",
                Figures.day(reading.takenAt()),
                speech.whole(reading.stimulus()),
                speech.of(reading.endPoint()));
    }

    private ReadingBlock block(SheetReading entry, String heading) {
        Reading reading = entry.reading();
        return new ReadingBlock(
                heading,
                entry.entryId(),
                Figures.clock(reading.takenAt()),
                speech.of(reading.mode()) + ", " + speech.ohms(reading.nominalLoadOhms()),
                temperatures(reading.conditions()),
                reading.channels().stream().map(this::line).toList(),
                captures(reading.provenance().captures()),
                !entry.stands(),
                note(entry));
    }

    private ReadingBlock.ChannelLine line(ChannelReading channel) {
        return new ReadingBlock.ChannelLine(
                channel.channel(),
                speech.fixed(channel.supplyVolts(), 2),
                speech.fixed(channel.supplyAmps(), 1),
                speech.fixed(channel.endPointDriveDb(), 1),
                evidence.power(channel),
                speech.significant(channel.thdFRatio() * 100, 3),
                speech.of(channel.outcome()));
    }

    private String temperatures(Conditions conditions) {
        return speech.fixed(conditions.ambientCelsius(), 0) + "\u00a0/\u00a0"
                + speech.fixed(conditions.caseCelsius(), 0);
    }

    private String captures(List<CaptureUsed> captures) {
        if (captures.isEmpty()) {
            return speech.text("full.typedIn");
        }
        String shown = captures.stream()
                .limit(CAPTURES_SHOWN)
                .map(capture -> Figures.shortHash(capture.sha256()))
                .collect(Collectors.joining(" "));
        int more = captures.size() - CAPTURES_SHOWN;
        return more > 0 ? shown + " +" + more : shown;
    }

    private String note(SheetReading entry) {
        List<String> sentences = new ArrayList<>();
        entry.voidReason().ifPresent(reason -> sentences.add(speech.text("full.voided", reason)));
        entry.setAsideReason().ifPresent(reason -> sentences.add(speech.text("full.setAside", reason)));
        sentences.addAll(entry.reading().notes());
        return String.join(" ", sentences);
    }
}

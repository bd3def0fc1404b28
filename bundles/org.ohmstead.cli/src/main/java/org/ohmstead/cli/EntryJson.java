// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogNote;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.units.text.Language;

/** Entries of the log as JSON, and the remark that goes with them. */
final class EntryJson {
    private EntryJson() {}

    static ObjectNode summary(LogEntry entry) {
        // Programs read it, also where a person's words would be said in another language.
        return Language.speaking(Locale.ENGLISH, () -> made(entry));
    }

    private static ObjectNode made(LogEntry entry) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("id", entry.id());
        node.put("sequence", entry.sequence());
        node.put("kind", entry.kind().word());
        node.put("recordedAt", entry.recordedAt().toString());
        node.put("hash", entry.hash());
        node.put("voided", entry.voided());
        if (!remark(entry).isEmpty()) {
            node.put("remark", remark(entry));
        }
        entry.reading().ifPresent(reading -> {
            node.put("step", reading.stepId());
            node.put("mode", reading.mode().name());
            node.put("loadOhms", reading.nominalLoadOhms());
            node.put("takenAt", reading.takenAt().toString());
            ArrayNode channels = node.putArray("channels");
            for (ChannelReading channel : reading.channels()) {
                ObjectNode item = channels.addObject();
                item.put("channel", channel.channel());
                item.put("outcome", channel.outcome().name());
                item.put("powerWatts", channel.powerWatts());
                item.put("standardUncertaintyWatts", channel.standardUncertaintyWatts());
                item.put("supplyVolts", channel.supplyVolts());
                channel.supplyAmps().ifPresent(amps -> item.put("supplyAmps", amps));
                item.put("thdFRatio", channel.thdFRatio());
            }
        });
        entry.figures().ifPresent(figures -> {
            node.put("step", figures.stepId());
            node.put("mode", figures.mode().name());
            node.put("measurement", figures.measurementId());
            node.put("takenAt", figures.takenAt().toString());
            ArrayNode list = node.putArray("figures");
            for (MeasuredFigure figure : figures.figures()) {
                ObjectNode item = list.addObject();
                item.put("id", figure.id());
                item.put("channel", figure.channel());
                item.put("at", figure.at());
                item.put("value", figure.value());
                item.put("unit", figure.unit());
                figure.standardUncertainty().ifPresent(value -> item.put("standardUncertainty", value));
            }
        });
        return node;
    }

    /** Returns why an entry does not count, what a note says, or which measurement found figures; empty for a valid reading. */
    static String remark(LogEntry entry) {
        if (entry.voided()) {
            return Texts.of("entry.void", entry.voidedBy().map(VoidNote::reason).orElse(""));
        }
        return entry.voids()
                .map(voided -> Texts.of("entry.voids", voided.targetId(), voided.reason()))
                .or(() -> entry.note().map(LogNote::text))
                .or(() -> entry.figures().map(MeasuredFigures::measurementId))
                .orElse("");
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogNote;
import org.ohmstead.testlog.VoidNote;

/** Entries of the log as JSON, and the remark that goes with them. */
final class EntryJson {
    private EntryJson() {}

    static ObjectNode summary(LogEntry entry) {
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
        return node;
    }

    /** Returns why an entry does not count, or what a note says; empty for a valid reading. */
    static String remark(LogEntry entry) {
        if (entry.voided()) {
            return "void: " + entry.voidedBy().map(VoidNote::reason).orElse("");
        }
        return entry.voids()
                .map(voided -> "voids " + voided.targetId() + ": " + voided.reason())
                .or(() -> entry.note().map(LogNote::text))
                .orElse("");
    }
}

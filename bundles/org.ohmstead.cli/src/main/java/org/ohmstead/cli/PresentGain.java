// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.standard.LoggedGain;
import org.ohmstead.model.Meter;
import org.ohmstead.testlog.LogEntry;

/**
 * What gain an amplifier has now.
 *
 * @param gainDb in dB
 * @param standardUncertaintyDb of it, when it is known
 * @param from where it comes from
 * @param channel of which channel; empty when it was typed
 * @param entryId of which entry of the log; empty when it was typed
 */
record PresentGain(double gainDb, OptionalDouble standardUncertaintyDb, String from, String channel, String entryId) {
    static PresentGain typed(double gainDb) {
        return new PresentGain(gainDb, OptionalDouble.empty(), Texts.of("gain.typed"), "", "");
    }

    /** Returns the gain that the newest fitting entry of those that count tells, that of the channel with most of it; empty when none does. */
    static Optional<PresentGain> logged(
            List<LogEntry> entries, boolean bridged, double fullScaleVoltsRms, Optional<Meter> meter) {
        for (int i = entries.size() - 1; i >= 0; i--) {
            LogEntry entry = entries.get(i);
            Optional<LoggedGain> gain = entry.figures()
                    .flatMap(LoggedGain::of)
                    .or(() -> entry.reading().flatMap(reading -> LoggedGain.of(reading, fullScaleVoltsRms, meter)))
                    .filter(found -> found.bridged() == bridged);
            if (gain.isPresent()) {
                return Optional.of(of(gain.get(), entry.id()));
            }
        }
        return Optional.empty();
    }

    private static PresentGain of(LoggedGain gain, String entryId) {
        LoggedGain.Channel channel = gain.highest();
        String how = gain.measured() ? Texts.of("gain.measured") : Texts.count("gain.levels", channel.levels());
        return new PresentGain(
                channel.gainDb(),
                channel.standardUncertaintyDb(),
                Texts.of("gain.from", entryId, gain.stepId(), channel.name(), how),
                channel.name(),
                entryId);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;

/**
 * What the index knows of an entry: enough for a line of a table. The figures are those of the reading's weakest channel.
 *
 * @param chain label of the chain it came with; empty for the log's own
 * @param sequence place in its chain, counted from 1
 * @param id its id, such as R0001 or B/R0001
 * @param kind what it is
 * @param recordedAt when it was added
 * @param takenAt when it was taken, of readings and figures
 * @param amplifier which amplifier it is about; empty when it does not say
 * @param serialNumber which specimen; may be empty
 * @param bench on which bench; may be empty
 * @param operator who found or wrote it; may be empty
 * @param mode how the channels met the load, of readings and figures
 * @param loadId which load, of readings and figures; else empty
 * @param nominalLoadOhms what the load stands for in ohms, of readings
 * @param supplyVolts direct volts at the amplifier, of readings and figures
 * @param stepId which step of the plan, of readings and figures; else empty
 * @param stimulus what was fed in, of readings, such as "sine 1000 Hz"; else empty
 * @param measurement which measurement or procedure found it, of readings and figures; else empty
 * @param powerWatts power in watts, of readings
 * @param standardUncertaintyWatts standard uncertainty of it in watts, of readings
 * @param thdFRatio harmonics over the fundamental, of readings
 * @param outcome whether the end point was reached, of readings
 * @param state whether it counts
 * @param overdue whether the calibration of an instrument had run out
 * @param text what it says in words, in one line and shortened; may be empty
 */
public record IndexedEntry(
        String chain,
        long sequence,
        String id,
        EntryKind kind,
        Instant recordedAt,
        Optional<Instant> takenAt,
        String amplifier,
        String serialNumber,
        String bench,
        String operator,
        Optional<Mode> mode,
        String loadId,
        OptionalDouble nominalLoadOhms,
        OptionalDouble supplyVolts,
        String stepId,
        String stimulus,
        String measurement,
        OptionalDouble powerWatts,
        OptionalDouble standardUncertaintyWatts,
        OptionalDouble thdFRatio,
        Optional<EndPointOutcome> outcome,
        EntryState state,
        boolean overdue,
        String text) {}

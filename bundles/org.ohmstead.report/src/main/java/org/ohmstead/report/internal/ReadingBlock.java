// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.List;

/**
 * A reading with its conditions, every text ready for print.
 *
 * @param heading day, tone and end point where they differ from those of the reading before; else empty
 * @param entry id of the log's entry
 * @param time of day when it was taken
 * @param setting mode and load
 * @param temperatures air and case
 * @param channels one line for each channel
 * @param capture beginning of the capture's hash
 * @param struck whether it was voided
 * @param note reason of the voiding, and the reading's own notes; may be empty
 */
public record ReadingBlock(
        String heading,
        String entry,
        String time,
        String setting,
        String temperatures,
        List<ChannelLine> channels,
        String capture,
        boolean struck,
        String note) {
    /** Copies the list. */
    public ReadingBlock {
        channels = List.copyOf(channels);
    }

    /**
     * One channel's figures.
     *
     * @param channel its name
     * @param supplyVolts at the terminals
     * @param supplyAmps supply current
     * @param drive in dB relative to the source's full output
     * @param power with expanded uncertainty
     * @param distortion in percent
     * @param outcome whether the end point was reached
     */
    public record ChannelLine(
            String channel,
            String supplyVolts,
            String supplyAmps,
            String drive,
            String power,
            String distortion,
            String outcome) {}
}

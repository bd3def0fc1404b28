// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Optional;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;

/**
 * One of two readings that are compared.
 *
 * @param entry the entry that holds it
 * @param reading the reading
 * @param channelIndex which of its channels is looked at
 * @param wave the capture nearest to its end point; empty when it cannot be shown
 * @param whyNoWave why it cannot be shown, as whole sentences; empty when it can
 */
record PairSide(LogEntry entry, Reading reading, int channelIndex, Optional<PairWave> wave, String whyNoWave) {
    ChannelReading channel() {
        return reading.channels().get(channelIndex);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.ohmstead.signal.Capture;

/**
 * A stretch of output that was recorded, in volts, with what the meters showed meanwhile.
 *
 * @param output one waveform for each channel; a single one of a bridged output
 * @param input what was really fed in, when the bench records or knows it; one waveform for each channel, or one for all
 * @param voltsPerFullScale the range that each channel of the output was recorded in, above 0: what clips the recorder itself
 * @param during the meters while it was recorded
 */
public record Acquisition(Capture output, Optional<Capture> input, List<Double> voltsPerFullScale, Observation during) {
    public Acquisition {
        Checks.present(output, "output");
        Checks.present(input, "input");
        voltsPerFullScale = List.copyOf(voltsPerFullScale);
        if (voltsPerFullScale.size() != output.channels().size()) {
            throw new IllegalArgumentException(
                    "voltsPerFullScale holds " + voltsPerFullScale.size() + " values; it must hold one for each of the "
                            + output.channels().size() + " channels of output");
        }
        voltsPerFullScale.forEach(range -> Checks.positive(range, "voltsPerFullScale"));
        Checks.present(during, "during");
    }

    /**
     * Returns an acquisition without the input, all channels of which were recorded in the same range.
     *
     * @param voltsPerFullScale the range, above 0
     */
    public static Acquisition of(Capture output, double voltsPerFullScale, Observation during) {
        int channels = Checks.present(output, "output").channels().size();
        return new Acquisition(output, Optional.empty(), Collections.nCopies(channels, voltsPerFullScale), during);
    }

    /** Returns this with what was fed in. */
    public Acquisition withInput(Capture newInput) {
        return new Acquisition(output, Optional.of(newInput), voltsPerFullScale, during);
    }
}

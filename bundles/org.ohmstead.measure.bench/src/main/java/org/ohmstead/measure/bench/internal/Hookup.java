// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.List;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;

/**
 * How the load meets the channels.
 *
 * @param mode which way
 * @param branches the load's resistances; their inductance plays no part in the simulation
 */
record Hookup(Mode mode, List<LoadBranch> branches) {
    /** Number of waveforms that the recorder sees. */
    int outputs(AmplifierTraits traits) {
        return mode == Mode.STEREO ? traits.channelCount() : 1;
    }

    /** Number of channels that work. */
    int working(AmplifierTraits traits) {
        return mode == Mode.BRIDGED ? 2 : outputs(traits);
    }

    /** What a working channel sees. */
    double ohms(int channel) {
        return mode == Mode.BRIDGED
                ? branches.get(0).ohms() / 2
                : branches.get(channel).ohms();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import java.util.List;
import java.util.Objects;
import org.ohmstead.model.Problem;

/**
 * A list of recorded waveform files, as handed in with them.
 *
 * @param formatVersion version of the file format it was read from
 * @param operator who recorded; may be empty
 * @param recordings the recordings in the order of the file
 * @param problems what was noticed while reading, such as unknown fields; empty when nothing was
 */
public record RecordingsList(int formatVersion, String operator, List<Recording> recordings, List<Problem> problems) {
    public RecordingsList {
        Objects.requireNonNull(operator, "operator");
        recordings = List.copyOf(recordings);
        problems = List.copyOf(problems);
    }
}

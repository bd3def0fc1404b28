// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import org.ohmstead.model.json.internal.FieldReader;
import org.ohmstead.model.json.internal.Findings;
import org.ohmstead.model.json.internal.FormatVersions;
import org.ohmstead.model.json.internal.JsonSource;
import org.ohmstead.model.json.internal.RecordingsReader;

/**
 * Reads {@code recordings.json}, which says of each recorded waveform file which step it belongs to and how the bench stood.
 *
 * <pre>{@code
 * {"formatVersion": 1, "operator": "N. N.", "recordings": [
 *   {"step": "stereo-4ohm-13V5", "file": "a.wav", "driveDb": -3.0, "voltsPerFullScale": [50, 50], "supplyVolts": 13.36,
 *    "supplyAmps": 17.52, "caseCelsius": 41.2, "ambientCelsius": 22.6, "recordedAt": "2026-03-02T09:14:05Z"}]}
 * }</pre>
 */
public final class RecordingsFile {
    /** The version of the file format. */
    public static final int FORMAT_VERSION = 1;

    private static final FormatVersions VERSIONS = new FormatVersions(FORMAT_VERSION, List.of());

    private RecordingsFile() {}

    /**
     * Returns the content of a list of recordings. The recorded files themselves are not looked at.
     *
     * @param recordingsJson the file
     * @throws ProjectFileException when it cannot be read or is wrong; the message names the place and the remedy
     */
    public static RecordingsList read(Path recordingsJson) throws ProjectFileException {
        JsonSource source = JsonSource.ofFile(recordingsJson);
        Findings findings = new Findings();
        ObjectNode root = VERSIONS.migrate(source, source.parse(), findings);
        FieldReader in = FieldReader.root(source, root, findings);
        String operator = RecordingsReader.operator(in);
        List<Recording> recordings = RecordingsReader.recordings(in);
        in.finish();
        return new RecordingsList(FORMAT_VERSION, operator, recordings, findings.problems());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;
import java.util.Optional;

/**
 * What a reading depended on, so that it can be repeated.
 *
 * @param projectRevision SHA-256 of the project as it was, 64 hexadecimal digits
 * @param procedureId which procedure found the figures
 * @param procedureVersion its version
 * @param softwareVersion version of the software
 * @param operator who ran it; may be empty
 * @param instruments the meters
 * @param captures the recorded waveforms
 * @param specimen which amplifier it is about, and on which bench; empty in readings of before this was recorded
 */
public record Provenance(
        String projectRevision,
        String procedureId,
        String procedureVersion,
        String softwareVersion,
        String operator,
        List<InstrumentUsed> instruments,
        List<CaptureUsed> captures,
        Optional<Specimen> specimen) {
    public Provenance {
        Checks.named(projectRevision, "projectRevision");
        Checks.named(procedureId, "procedureId");
        Checks.named(procedureVersion, "procedureVersion");
        Checks.named(softwareVersion, "softwareVersion");
        Checks.present(operator, "operator");
        instruments = List.copyOf(instruments);
        captures = List.copyOf(captures);
        Checks.present(specimen, "specimen");
    }

    /** Makes what a reading depended on, without saying which amplifier it is about. */
    public Provenance(
            String projectRevision,
            String procedureId,
            String procedureVersion,
            String softwareVersion,
            String operator,
            List<InstrumentUsed> instruments,
            List<CaptureUsed> captures) {
        this(
                projectRevision,
                procedureId,
                procedureVersion,
                softwareVersion,
                operator,
                instruments,
                captures,
                Optional.empty());
    }

    /** Returns this with the specimen that the reading is about. */
    public Provenance withSpecimen(Specimen newSpecimen) {
        return new Provenance(
                projectRevision,
                procedureId,
                procedureVersion,
                softwareVersion,
                operator,
                instruments,
                captures,
                Optional.of(newSpecimen));
    }
}

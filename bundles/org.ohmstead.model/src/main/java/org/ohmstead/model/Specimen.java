// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * Which specimen of which amplifier a reading is about, and on which bench it was found, so that readings of several projects can be
 * put beside each other.
 *
 * @param amplifier maker and model of the amplifier, not blank
 * @param serialNumber of the specimen; may be empty
 * @param bench place of the bench; may be empty
 */
public record Specimen(String amplifier, String serialNumber, String bench) {
    public Specimen {
        Checks.named(amplifier, "amplifier");
        Checks.present(serialNumber, "serialNumber");
        Checks.present(bench, "bench");
    }

    /** Returns the specimen that a project tests, with the place of its bench. */
    public static Specimen of(Project project) {
        return new Specimen(
                project.amplifier().fullName(),
                project.amplifier().serialNumber(),
                project.bench().place());
    }
}

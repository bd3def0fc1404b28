// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * One claim of the amplifier's maker about output power.
 *
 * @param id short name, unique among the ratings
 * @param kind steady tone or burst
 * @param mode how the channels meet the load
 * @param loadOhms rated load in ohms, above 0
 * @param powerWatts rated power in watts, above 0: per channel in {@link Mode#STEREO}, in the load otherwise
 * @param supplyVolts direct volts at the amplifier's terminals that the rating is stated for, above 0
 * @param distortionRatio distortion that the rating allows, 0 (exclusive) to 1: 0.01 is 1 %
 * @param frequencyHz test frequency in hertz, above 0
 * @param wording the claim as the maker prints it; may be empty
 */
public record Rating(
        String id,
        PowerKind kind,
        Mode mode,
        double loadOhms,
        double powerWatts,
        double supplyVolts,
        double distortionRatio,
        double frequencyHz,
        String wording) {
    public Rating {
        Checks.named(id, "rating id");
        Checks.present(kind, "kind");
        Checks.present(mode, "mode");
        Checks.positive(loadOhms, "loadOhms");
        Checks.positive(powerWatts, "powerWatts");
        Checks.positive(supplyVolts, "supplyVolts");
        Checks.within(distortionRatio, Double.MIN_NORMAL, 1, "distortionRatio");
        Checks.positive(frequencyHz, "frequencyHz");
        Checks.present(wording, "wording");
    }

    /** Returns this rating with another id. */
    public Rating withId(String newId) {
        return new Rating(newId, kind, mode, loadOhms, powerWatts, supplyVolts, distortionRatio, frequencyHz, wording);
    }

    /** Returns this rating with another kind. */
    public Rating withKind(PowerKind newKind) {
        return new Rating(id, newKind, mode, loadOhms, powerWatts, supplyVolts, distortionRatio, frequencyHz, wording);
    }

    /** Returns this rating with another mode. */
    public Rating withMode(Mode newMode) {
        return new Rating(id, kind, newMode, loadOhms, powerWatts, supplyVolts, distortionRatio, frequencyHz, wording);
    }

    /** Returns this rating with another load in ohms. */
    public Rating withLoadOhms(double newLoadOhms) {
        return new Rating(id, kind, mode, newLoadOhms, powerWatts, supplyVolts, distortionRatio, frequencyHz, wording);
    }

    /** Returns this rating with another rated power in watts. */
    public Rating withPowerWatts(double newPowerWatts) {
        return new Rating(id, kind, mode, loadOhms, newPowerWatts, supplyVolts, distortionRatio, frequencyHz, wording);
    }

    /** Returns this rating with other supply volts. */
    public Rating withSupplyVolts(double newSupplyVolts) {
        return new Rating(id, kind, mode, loadOhms, powerWatts, newSupplyVolts, distortionRatio, frequencyHz, wording);
    }

    /** Returns this rating with another distortion, 0 (exclusive) to 1. */
    public Rating withDistortionRatio(double newDistortionRatio) {
        return new Rating(id, kind, mode, loadOhms, powerWatts, supplyVolts, newDistortionRatio, frequencyHz, wording);
    }

    /** Returns this rating with another frequency in hertz. */
    public Rating withFrequencyHz(double newFrequencyHz) {
        return new Rating(id, kind, mode, loadOhms, powerWatts, supplyVolts, distortionRatio, newFrequencyHz, wording);
    }

    /** Returns this rating with another wording. */
    public Rating withWording(String newWording) {
        return new Rating(id, kind, mode, loadOhms, powerWatts, supplyVolts, distortionRatio, frequencyHz, newWording);
    }
}

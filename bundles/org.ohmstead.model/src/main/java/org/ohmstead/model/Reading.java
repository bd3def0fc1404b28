// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/**
 * One result of a step, with what it was found under and what it depended on. An entry of the test log.
 *
 * @param stepId which step of the plan
 * @param mode how the channels met the load
 * @param loadId which load
 * @param nominalLoadOhms the value the load stands for, in ohms, above 0
 * @param stimulus what was fed in
 * @param endPoint what ended the search for power
 * @param takenAt when the last level was recorded
 * @param conditions the surroundings
 * @param channels what each channel gave; at least one
 * @param provenance what it depended on
 * @param notes plain sentences about the reading
 */
public record Reading(
        String stepId,
        Mode mode,
        String loadId,
        double nominalLoadOhms,
        Stimulus stimulus,
        EndPoint endPoint,
        Instant takenAt,
        Conditions conditions,
        List<ChannelReading> channels,
        Provenance provenance,
        List<String> notes) {
    public Reading {
        Checks.named(stepId, "stepId");
        Checks.present(mode, "mode");
        Checks.named(loadId, "loadId");
        Checks.positive(nominalLoadOhms, "nominalLoadOhms");
        Checks.present(stimulus, "stimulus");
        Checks.present(endPoint, "endPoint");
        Checks.present(takenAt, "takenAt");
        Checks.present(conditions, "conditions");
        channels = List.copyOf(channels);
        if (channels.isEmpty()) {
            throw new IllegalArgumentException("channels is empty; a reading needs at least one channel");
        }
        Checks.present(provenance, "provenance");
        notes = List.copyOf(notes);
    }

    /** Returns the channel that gave the least power. */
    public ChannelReading weakestChannel() {
        return channels.stream()
                .min(Comparator.comparingDouble(ChannelReading::powerWatts))
                .orElseThrow();
    }

    /** Returns this reading with other channels. */
    public Reading withChannels(List<ChannelReading> newChannels) {
        return new Reading(
                stepId,
                mode,
                loadId,
                nominalLoadOhms,
                stimulus,
                endPoint,
                takenAt,
                conditions,
                newChannels,
                provenance,
                notes);
    }

    /** Returns this reading with another account of what it depended on. */
    public Reading withProvenance(Provenance newProvenance) {
        return new Reading(
                stepId,
                mode,
                loadId,
                nominalLoadOhms,
                stimulus,
                endPoint,
                takenAt,
                conditions,
                channels,
                newProvenance,
                notes);
    }

    /** Returns this reading with other notes. */
    public Reading withNotes(List<String> newNotes) {
        return new Reading(
                stepId,
                mode,
                loadId,
                nominalLoadOhms,
                stimulus,
                endPoint,
                takenAt,
                conditions,
                channels,
                provenance,
                newNotes);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.ohmstead.model.Bench;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;

/**
 * What the uncertainty of a power depends on beside the readings themselves.
 *
 * @param bench whose meters read, with their specifications, and how closely it repeats
 * @param supplyType what the amplifier does with its supply volts
 * @param day on which the reading was taken
 * @param ambientCelsius air temperature then, when it was read
 * @param dutyRatio mean power over the power stated, above 0 and at most 1: below 1 for bursts
 * @param sharing tells how the power of a load falls on its parts
 */
public record BudgetSetting(
        Bench bench,
        SupplyType supplyType,
        LocalDate day,
        OptionalDouble ambientCelsius,
        double dutyRatio,
        PartSharing sharing) {
    /** Tells nothing of how power falls on parts. */
    public static final PartSharing NO_SHARING = (stock, branch) -> List.of();

    /** Checks the ranges given above. */
    public BudgetSetting {
        Objects.requireNonNull(bench, "bench");
        Objects.requireNonNull(supplyType, "supplyType");
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(ambientCelsius, "ambientCelsius");
        Objects.requireNonNull(sharing, "sharing");
        if (!(dutyRatio > 0 && dutyRatio <= 1)) {
            throw new IllegalArgumentException("dutyRatio is " + dutyRatio + "; it must be above 0 and at most 1");
        }
    }

    /** Returns the setting of levels that were recorded, at least one; the last of them counts. */
    static BudgetSetting of(Project project, Stimulus stimulus, List<LevelFacts> facts, PartSharing sharing) {
        LevelFacts last =
                facts.stream().max(Comparator.comparing(LevelFacts::recordedAt)).orElseThrow();
        return new BudgetSetting(
                project.bench(),
                project.amplifier().supplyType(),
                last.recordedAt().atZone(ZoneOffset.UTC).toLocalDate(),
                last.ambientCelsius(),
                dutyRatio(stimulus),
                sharing);
    }

    /** Returns the setting of a reading, of whose load's parts nothing is known. */
    public static BudgetSetting of(Project project, Reading reading) {
        return new BudgetSetting(
                project.bench(),
                project.amplifier().supplyType(),
                reading.takenAt().atZone(ZoneOffset.UTC).toLocalDate(),
                reading.conditions().ambientCelsius(),
                dutyRatio(reading.stimulus()),
                NO_SHARING);
    }

    /** Returns the mean power of a stimulus over that of its loud part. */
    static double dutyRatio(Stimulus stimulus) {
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            double on = burst.onSeconds() / burst.periodSeconds();
            return on + (1 - on) * Math.pow(10, burst.lowLevelDb() / 10);
        }
        return 1;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Limits that rules for workplaces set to daily exposure to noise, as each of them states it. They are quoted to warn: none is a level
 * to aim at, none makes a level below it safe for everybody, and which applies is for local rules and qualified people to say. All
 * levels are A-weighted; that of low bass read with C-weighting or none must not be put in.
 */
public enum ExposureCriterion {
    /** NIOSH criteria for a recommended standard, 1998 (publication 98-126): 85 dBA for 8 h, 3 dB exchange rate, ceiling of 140 dBA. */
    NIOSH_1998(85, 3, OptionalDouble.empty(), OptionalDouble.of(140)),
    /** Directive 2003/10/EC, article 3, lower exposure action values: 80 dB(A) over 8 h, peak 135 dB(C). */
    EU_LOWER_ACTION(80, 10 * Math.log10(2), OptionalDouble.of(135), OptionalDouble.empty()),
    /** Directive 2003/10/EC, article 3, upper exposure action values: 85 dB(A) over 8 h, peak 137 dB(C). */
    EU_UPPER_ACTION(85, 10 * Math.log10(2), OptionalDouble.of(137), OptionalDouble.empty()),
    /** Directive 2003/10/EC, article 3, exposure limit values: 87 dB(A) over 8 h, peak 140 dB(C), at the ear behind any protector. */
    EU_LIMIT(87, 10 * Math.log10(2), OptionalDouble.of(140), OptionalDouble.empty()),
    /** OSHA 29 CFR 1910.95, table G-16: 90 dBA (slow) for 8 h, 5 dB exchange rate, nothing listed above 115 dBA. */
    OSHA_1910_95(90, 5, OptionalDouble.empty(), OptionalDouble.of(115));

    private static final double SHIFT_SECONDS = 8 * 3600;

    private final double levelDb;
    private final double exchangeDb;
    private final OptionalDouble peakCDb;
    private final OptionalDouble ceilingDb;

    ExposureCriterion(double levelDb, double exchangeDb, OptionalDouble peakCDb, OptionalDouble ceilingDb) {
        this.levelDb = levelDb;
        this.exchangeDb = exchangeDb;
        this.peakCDb = peakCDb;
        this.ceilingDb = ceilingDb;
    }

    /** Returns the A-weighted level for eight hours a day. */
    public double levelDb() {
        return levelDb;
    }

    /** Returns by how many dB a level must be lower to be counted for twice the time; 10 lg 2 = 3.01 dB is equal energy. */
    public double exchangeDb() {
        return exchangeDb;
    }

    /** Returns the peak level in dB(C), where the rule states one. */
    public OptionalDouble peakCDb() {
        return peakCDb;
    }

    /** Returns the A-weighted level above which the rule lists no time at all, where it states one. */
    public OptionalDouble ceilingDb() {
        return ceilingDb;
    }

    /**
     * Returns after how long a steady level reaches this criterion: 8 h / 2^((L - criterion) / exchange).
     *
     * @param levelDbA A-weighted level
     * @return in seconds, at most a day; 0 above the ceiling
     */
    public double seconds(double levelDbA) {
        Checks.finite("levelDbA", levelDbA);
        if (ceilingDb.isPresent() && levelDbA > ceilingDb.getAsDouble()) {
            return 0;
        }
        return Math.min(24 * 3600, SHIFT_SECONDS / Math.pow(2, (levelDbA - levelDb) / exchangeDb));
    }

    /**
     * Returns the share of this criterion that a day of several levels uses up: the sum of each time over the time for its level. Above
     * 1 the criterion is passed.
     *
     * @param day A-weighted levels and times, at least one; of those above the ceiling none may be there
     * @throws IllegalArgumentException if a level is above the ceiling
     */
    public double doseRatio(List<TimedLevel> day) {
        double ratio = 0;
        for (TimedLevel part : day) {
            if (ceilingDb.isPresent() && part.levelDb() > ceilingDb.getAsDouble()) {
                throw new IllegalArgumentException("day must hold no level above " + ceilingDb.getAsDouble()
                        + " dB for this criterion, but holds " + part.levelDb());
            }
            ratio += part.seconds() / (SHIFT_SECONDS / Math.pow(2, (part.levelDb() - levelDb) / exchangeDb));
        }
        return ratio;
    }

    /** Returns the level over eight hours (LEX,8h) that has the energy of a day of several levels. */
    public static double dailyLevelDb(List<TimedLevel> day) {
        double seconds = day.stream().mapToDouble(TimedLevel::seconds).sum();
        return LevelSums.equivalentDb(day) + 10 * Math.log10(seconds / SHIFT_SECONDS);
    }

    /** Returns where it is from, in a language: document, clause, and what it counts. */
    public String source(Locale locale) {
        return Texts.sayIn(locale, "exposure." + name());
    }
}

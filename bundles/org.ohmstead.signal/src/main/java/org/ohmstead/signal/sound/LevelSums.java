// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.List;

/** Sums, means and differences of levels in dB. */
public final class LevelSums {
    private static final double DB_PER_NEPER_OF_POWER = 10 / Math.log(10);

    private LevelSums() {}

    /**
     * Returns the level of several sounds that have nothing to do with one another: 10 lg of the sum of 10^(L/10). Two equal ones give
     * 3.01 dB more than one.
     *
     * @param levelsDb at least one, each finite
     */
    public static double incoherentDb(List<Double> levelsDb) {
        requireSome(levelsDb);
        double loudest =
                loudest(levelsDb.stream().mapToDouble(Double::doubleValue).toArray());
        double sum = 0;
        for (double levelDb : levelsDb) {
            Checks.finite("levelsDb", levelDb);
            sum += Math.pow(10, (levelDb - loudest) / 10);
        }
        return loudest + 10 * Math.log10(sum);
    }

    /**
     * Returns the level of several sounds of one frequency with fixed phases: 20 lg of the sum of the phasors. Two equal ones in phase
     * give 6.02 dB more than one, in opposition none.
     *
     * @param sounds at least one
     * @throws IllegalArgumentException if they cancel to less than a millionth of the loudest, so that no level is left
     */
    public static double coherentDb(List<Phasor> sounds) {
        requireSome(sounds);
        double loudest = loudest(sounds.stream().mapToDouble(Phasor::levelDb).toArray());
        double real = 0;
        double imaginary = 0;
        for (Phasor sound : sounds) {
            double amplitude = Math.pow(10, (sound.levelDb() - loudest) / 20);
            real += amplitude * Math.cos(Math.toRadians(sound.phaseDegrees()));
            imaginary += amplitude * Math.sin(Math.toRadians(sound.phaseDegrees()));
        }
        double sum = Math.hypot(real, imaginary);
        if (sum < 1e-6) {
            throw new IllegalArgumentException("sounds cancel one another, so that no level is left: " + sounds);
        }
        return loudest + 20 * Math.log10(sum);
    }

    /**
     * Returns the equivalent level (Leq) of levels that followed one another: 10 lg of the mean of 10^(L/10), weighted by time.
     *
     * @param parts at least one
     */
    public static double equivalentDb(List<TimedLevel> parts) {
        requireSome(parts);
        double loudest = loudest(parts.stream().mapToDouble(TimedLevel::levelDb).toArray());
        double energy = 0;
        double seconds = 0;
        for (TimedLevel part : parts) {
            energy += part.seconds() * Math.pow(10, (part.levelDb() - loudest) / 10);
            seconds += part.seconds();
        }
        return loudest + 10 * Math.log10(energy / seconds);
    }

    /**
     * Returns the level of a source without the background: 10 lg (10^(L/10) - 10^(B/10)), with the uncertainties of both carried
     * through by the law of propagation (GUM, JCGM 100, 5.1). Within 3 dB of the background the result is little more than a bound.
     *
     * @param total with the source on
     * @param background with the source off, below the total
     * @throws IllegalArgumentException if the background is not below the total
     */
    public static Level withoutBackground(Level total, Level background) {
        double difference = total.valueDb() - background.valueDb();
        if (!(difference > 0)) {
            throw new IllegalArgumentException("background must be below the total of " + total.valueDb()
                    + " dB, but is " + background.valueDb() + " dB");
        }
        double share = Math.pow(10, -difference / 10);
        double valueDb = total.valueDb() + DB_PER_NEPER_OF_POWER * Math.log1p(-share);
        double ofTotal = total.standardUncertaintyDb() / (1 - share);
        double ofBackground = background.standardUncertaintyDb() * share / (1 - share);
        return new Level(valueDb, Math.hypot(ofTotal, ofBackground));
    }

    /** Returns the first level less the second, with the uncertainty of two levels that have no error in common. */
    public static Level difference(Level first, Level second) {
        return new Level(
                first.valueDb() - second.valueDb(),
                Math.hypot(first.standardUncertaintyDb(), second.standardUncertaintyDb()));
    }

    private static double loudest(double[] levelsDb) {
        double loudest = levelsDb[0];
        for (double levelDb : levelsDb) {
            loudest = Math.max(loudest, levelDb);
        }
        return loudest;
    }

    private static void requireSome(List<?> list) {
        if (list.isEmpty()) {
            throw new IllegalArgumentException("there must be at least one level, but the list is empty");
        }
    }
}

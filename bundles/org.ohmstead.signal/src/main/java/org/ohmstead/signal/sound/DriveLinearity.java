// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Whether the level rises as the drive does, at one frequency. In the lower third of the drives the level less the drive is averaged; a
 * level that falls short of that by more than a threshold, and by more than can be told from chance, is compressed: something limits
 * (the amplifier, its supply, a hot voice coil, the cone's travel) or the meter does.
 *
 * @param frequencyHz of all points
 * @param points by rising drive
 * @param thresholdDb shortfall from which it counts, above 0
 * @param first the lowest drive from which on all points fall short; empty when the highest does not
 */
public record DriveLinearity(double frequencyHz, List<Point> points, double thresholdDb, Optional<Point> first) {
    /** The usual threshold, in dB. */
    public static final double USUAL_THRESHOLD_DB = 1;

    private static final int LEAST_POINTS = 3;

    public DriveLinearity {
        Checks.positive("frequencyHz", frequencyHz);
        points = List.copyOf(points);
        Checks.positive("thresholdDb", thresholdDb);
        Checks.given("first", first);
    }

    /**
     * A level at a drive.
     *
     * @param driveDb drive in dB
     * @param levelDb level that was read
     * @param shortfall expected less read; below 0 where it is louder than expected
     */
    public record Point(double driveDb, double levelDb, Level shortfall) {}

    /**
     * Returns what the points of a series at one frequency, weighting and position tell, those with a drive.
     *
     * @param series all of one meter, so that its common error cancels
     * @param frequencyHz within 0.5 %
     * @param thresholdDb above 0
     * @return empty when there are fewer than three such points, or they differ in weighting
     */
    public static Optional<DriveLinearity> of(SoundSeries series, double frequencyHz, double thresholdDb) {
        List<SoundPoint> chosen = series.points().stream()
                .filter(point -> point.driveDb().isPresent())
                .filter(point -> Math.abs(point.frequencyHz() - frequencyHz) <= 0.005 * frequencyHz)
                .sorted(Comparator.comparingDouble(point -> point.driveDb().getAsDouble()))
                .toList();
        boolean alike = chosen.stream().map(SoundPoint::weighting).distinct().count() == 1
                && chosen.stream()
                                .map(point -> point.position().strip())
                                .distinct()
                                .count()
                        == 1;
        if (chosen.size() < LEAST_POINTS || !alike) {
            return Optional.empty();
        }
        int lower = Math.max(1, chosen.size() / 3);
        double gainDb = chosen.stream()
                .limit(lower)
                .mapToDouble(point -> point.levelDb() - point.driveDb().getAsDouble())
                .average()
                .orElseThrow();
        double uncertaintyDb = series.repeatDb() * Math.sqrt(1 + 1.0 / lower);
        List<Point> points = chosen.stream()
                .map(point -> point(point, gainDb, uncertaintyDb))
                .toList();
        int from = points.size();
        while (from > lower && compressed(points.get(from - 1), thresholdDb)) {
            from--;
        }
        Optional<Point> first = from < points.size() ? Optional.of(points.get(from)) : Optional.empty();
        return Optional.of(new DriveLinearity(frequencyHz, points, thresholdDb, first));
    }

    private static Point point(SoundPoint read, double gainDb, double uncertaintyDb) {
        double driveDb = read.driveDb().getAsDouble();
        return new Point(driveDb, read.levelDb(), new Level(gainDb + driveDb - read.levelDb(), uncertaintyDb));
    }

    private static boolean compressed(Point point, double thresholdDb) {
        return point.shortfall().valueDb() >= thresholdDb
                && point.shortfall().valueDb() > point.shortfall().expandedUncertaintyDb();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * The time-current band of fuses of a kind and rating. Between its rows the logarithm of the time goes straight with
 * that of the current; above the last row I^2 t stays, as for an element that loses no heat meanwhile, where that row
 * is a short time, otherwise the last time stays. Below the first row the table says nothing.
 *
 * @param kind of fuse
 * @param bands rows in order of rising current, at least one
 */
public record FuseCurve(FuseKind kind, List<FuseBand> bands) {
    private static final List<SupplyTable.Row> ROWS = SupplyTable.rows("fuses.csv");

    /** From here on a fuse of any kind opens so soon that little heat leaves its element. */
    private static final double SHORT_TIME_RATIO = 3.5;

    public FuseCurve {
        Checks.present(kind, "kind");
        bands = List.copyOf(bands);
        if (bands.isEmpty()) {
            throw new IllegalArgumentException("bands is empty; a curve needs at least one row");
        }
        for (int i = 1; i < bands.size(); i++) {
            if (bands.get(i).currentRatio() <= bands.get(i - 1).currentRatio()) {
                throw new IllegalArgumentException("bands are not in order: row " + (i + 1) + " has a currentRatio of "
                        + bands.get(i).currentRatio() + "; it must be above the one before");
            }
        }
    }

    /** Returns the curve of a kind and a rating in amperes, above 0; empty when there is no table for such a rating. */
    public static Optional<FuseCurve> of(FuseKind kind, double ratedAmps) {
        Checks.present(kind, "kind");
        Checks.positive(ratedAmps, "ratedAmps");
        List<FuseBand> bands = ROWS.stream()
                .filter(row -> row.text("kind").equals(kind.name()))
                .filter(row -> ratedAmps > row.number("fromAmps") && ratedAmps <= row.number("toAmps"))
                .map(row -> new FuseBand(
                        row.number("currentRatio"),
                        row.numberIfAny("earliestSeconds"),
                        row.numberIfAny("latestSeconds"),
                        FuseProvenance.valueOf(row.text("provenance")),
                        row.text("source")))
                .toList();
        return bands.isEmpty() ? Optional.empty() : Optional.of(new FuseCurve(kind, bands));
    }

    /** Returns the highest rating in amperes that there is a table for. */
    public static double highestRatedAmps(FuseKind kind) {
        return ROWS.stream()
                .filter(row -> row.text("kind").equals(kind.name()))
                .mapToDouble(row -> row.number("toAmps"))
                .max()
                .orElseThrow();
    }

    /**
     * Returns when a fuse opens.
     *
     * @param currentRatio current over rating, RMS, at least 0
     */
    public FuseOpening opening(double currentRatio) {
        Checks.notNegative(currentRatio, "currentRatio");
        FuseBand first = bands.get(0);
        if (currentRatio < first.currentRatio()) {
            return new FuseOpening.NotInTable(first.currentRatio(), first.citation());
        }
        FuseBand last = bands.get(bands.size() - 1);
        return new FuseOpening.Within(
                seconds(currentRatio, FuseBand::earliestSeconds),
                seconds(currentRatio, FuseBand::latestSeconds),
                currentRatio > last.currentRatio(),
                last.citation());
    }

    private OptionalDouble seconds(double currentRatio, Function<FuseBand, OptionalDouble> which) {
        int above = 0;
        while (above < bands.size() && bands.get(above).currentRatio() < currentRatio) {
            above++;
        }
        if (above == bands.size()) {
            return beyond(currentRatio, which);
        }
        OptionalDouble high = which.apply(bands.get(above));
        if (bands.get(above).currentRatio() == currentRatio || high.isEmpty()) {
            return high;
        }
        OptionalDouble low = which.apply(bands.get(above - 1));
        if (low.isEmpty()) {
            return low;
        }
        double lowRatio = Math.log(bands.get(above - 1).currentRatio());
        double share =
                (Math.log(currentRatio) - lowRatio) / (Math.log(bands.get(above).currentRatio()) - lowRatio);
        double lowSeconds = Math.log(low.getAsDouble());
        return OptionalDouble.of(Math.exp(lowSeconds + share * (Math.log(high.getAsDouble()) - lowSeconds)));
    }

    private OptionalDouble beyond(double currentRatio, Function<FuseBand, OptionalDouble> which) {
        FuseBand last = bands.get(bands.size() - 1);
        OptionalDouble seconds = which.apply(last);
        if (seconds.isEmpty() || last.currentRatio() < SHORT_TIME_RATIO) {
            return seconds;
        }
        double ratio = last.currentRatio() / currentRatio;
        return OptionalDouble.of(seconds.getAsDouble() * ratio * ratio);
    }
}

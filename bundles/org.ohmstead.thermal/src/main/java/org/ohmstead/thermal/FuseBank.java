// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Fuses of one kind side by side, as amplifiers have them. They are taken to share the current alike; when one opens
 * the others follow.
 *
 * @param kind of fuse
 * @param ratedAmps of each, above 0
 * @param count how many, at least 1
 */
public record FuseBank(FuseKind kind, double ratedAmps, int count) {
    /**
     * Which part of its rating a fuse is to carry for ever at most. A rating by UL standards is meant so; one by IEC
     * standards may be carried whole, so that the rule is cautious for it.
     */
    public static final double CONTINUOUS_RATIO = 0.75;

    /** What to print beside {@link #continuousAmps}. */
    public static final String CONTINUOUS_RULE = "at most 75 % of the rating for ever, as for ratings by UL"
            + " standards; those by IEC standards may be carried whole";

    /** What to print beside several fuses. */
    public static final String SHARING_NOTE = "Fuses side by side are taken to share the current alike; holders and"
            + " contacts that differ make one of them carry more.";

    private static final int MOST = 20;
    private static final String REMEDY = "Lower the level, shorten the step, or shorten the bursts; never fit a"
            + " larger fuse than the cable and the amplifier's maker allow.";

    public FuseBank {
        Checks.present(kind, "kind");
        Checks.positive(ratedAmps, "ratedAmps");
        Checks.within(count, 1, MOST, "count");
    }

    /** Returns the rating of all of them together in amperes. */
    public double totalRatedAmps() {
        return ratedAmps * count;
    }

    /** Returns the current that all of them together are to carry for ever at most, in amperes. */
    public double continuousAmps() {
        return CONTINUOUS_RATIO * totalRatedAmps();
    }

    /** Returns the table of one of them; empty when there is none for its rating. */
    public Optional<FuseCurve> curve() {
        return FuseCurve.of(kind, ratedAmps);
    }

    /** Returns what a steady current through all of them together does, in amperes, RMS, at least 0. */
    public FuseAnswer steady(double ampsRms) {
        Checks.notNegative(ampsRms, "ampsRms");
        Optional<FuseCurve> curve = curve();
        if (curve.isEmpty()) {
            return noTable();
        }
        double ratio = ampsRms / totalRatedAmps();
        if (ratio <= CONTINUOUS_RATIO) {
            return new FuseAnswer.Carries(ratio);
        }
        FuseOpening opening = curve.get().opening(ratio);
        return opening instanceof FuseOpening.Within within
                ? opens(ratio, within, false)
                : aboveContinuous(ratio, (FuseOpening.NotInTable) opening);
    }

    /**
     * Returns what bursts that come again and again do: their RMS decides in the long run, and each burst alone must
     * be shorter than the earliest time at which its current opens a fuse.
     *
     * @param onAmpsRms during the burst, at least 0
     * @param betweenAmpsRms between the bursts, at least 0
     * @param onSeconds length of a burst, above 0
     * @param periodSeconds from one burst to the next, above {@code onSeconds}
     */
    public FuseAnswer bursts(double onAmpsRms, double betweenAmpsRms, double onSeconds, double periodSeconds) {
        Checks.notNegative(onAmpsRms, "onAmpsRms");
        Checks.notNegative(betweenAmpsRms, "betweenAmpsRms");
        double duty = SupplyCurrent.dutyRatio(onSeconds, periodSeconds);
        double rms = Math.sqrt(duty * onAmpsRms * onAmpsRms + (1 - duty) * betweenAmpsRms * betweenAmpsRms);
        FuseAnswer lasting = steady(rms);
        if (lasting instanceof SupplyNoSolution) {
            return lasting;
        }
        double ratio = onAmpsRms / totalRatedAmps();
        FuseOpening single = curve().orElseThrow().opening(ratio);
        if (single instanceof FuseOpening.Within within && mayOpen(within, onSeconds)) {
            return opens(ratio, within, true);
        }
        return lasting;
    }

    /**
     * Returns the I^2 t that melts one fuse at the soonest, in ampere squared seconds, from the last row of its
     * table; empty when it states no earliest time. A surge of less, spent within milliseconds, leaves it whole.
     */
    public OptionalDouble meltingAmpsSquaredSeconds() {
        Optional<FuseCurve> curve = curve();
        if (curve.isEmpty()) {
            return OptionalDouble.empty();
        }
        FuseBand last = curve.get().bands().get(curve.get().bands().size() - 1);
        double amps = last.currentRatio() * ratedAmps;
        return last.earliestSeconds().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(amps * amps * last.earliestSeconds().getAsDouble());
    }

    /** A burst may open the fuse when it lasts past the earliest time; where the table has none, past the latest. */
    private static boolean mayOpen(FuseOpening.Within within, double onSeconds) {
        OptionalDouble from = within.earliestSeconds().isPresent() ? within.earliestSeconds() : within.latestSeconds();
        return from.isPresent() && onSeconds >= from.getAsDouble();
    }

    private FuseAnswer.Opens opens(double ratio, FuseOpening.Within within, boolean withinBurst) {
        StringBuilder reason = new StringBuilder((withinBurst ? "During the burst the " : "The ") + name() + " carries "
                + SupplyFigures.three(100 * ratio) + " % of its rating and opens");
        within.earliestSeconds().ifPresent(seconds -> reason.append(" after ")
                .append(SupplyFigures.time(seconds))
                .append(" at the soonest"));
        String joint = within.earliestSeconds().isPresent() ? ", " : " ";
        if (within.latestSeconds().isPresent()) {
            reason.append(joint)
                    .append("within ")
                    .append(SupplyFigures.time(within.latestSeconds().getAsDouble()))
                    .append(" at the latest");
        } else {
            reason.append(", if at all");
        }
        reason.append(within.extrapolated() ? ", beyond the table's currents" : "")
                .append("; ")
                .append(within.citation());
        return new FuseAnswer.Opens(
                ratio,
                within.earliestSeconds(),
                within.latestSeconds(),
                withinBurst,
                within.citation(),
                reason.append('.').toString(),
                REMEDY);
    }

    private FuseAnswer.AboveContinuous aboveContinuous(double ratio, FuseOpening.NotInTable table) {
        return new FuseAnswer.AboveContinuous(
                ratio,
                "The " + name() + " carries " + SupplyFigures.three(100 * ratio)
                        + " % of its rating, more than the 75 % for ever; below "
                        + SupplyFigures.three(100 * table.lowestRatio())
                        + " % it never opens within the table, but it gets hot and ages; " + table.citation() + ".",
                REMEDY);
    }

    private SupplyNoSolution noTable() {
        return new SupplyNoSolution(
                "There is no table for a " + kind.words() + " of " + SupplyFigures.three(ratedAmps) + " A; it ends at "
                        + SupplyFigures.three(FuseCurve.highestRatedAmps(kind)) + " A.",
                "Check the rating and the kind, or read the curve of the fuse's maker.");
    }

    private String name() {
        return kind.words() + (count > 1 ? " bank of " + count + " x " : " of ") + SupplyFigures.three(ratedAmps)
                + " A";
    }
}

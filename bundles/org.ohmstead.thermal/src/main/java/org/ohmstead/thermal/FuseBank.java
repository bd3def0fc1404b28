// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.units.text.Messages;

/**
 * Fuses of one kind side by side, as amplifiers have them. They are taken to share the current alike; when one opens
 * the others follow.
 *
 * @param kind of fuse
 * @param ratedAmps of each, above 0
 * @param count how many, at least 1
 */
public record FuseBank(FuseKind kind, double ratedAmps, int count) {
    private static final Messages TEXTS = Messages.of(FuseBank.class);

    /**
     * Which part of its rating a fuse is to carry for ever at most. A rating by UL standards is meant so; one by IEC
     * standards may be carried whole, so that the rule is cautious for it.
     */
    public static final double CONTINUOUS_RATIO = 0.75;

    /** What to print beside {@link #continuousAmps}. */
    public static String continuousRule() {
        return TEXTS.text("fuse.rule");
    }

    /** What to print beside several fuses. */
    public static String sharingNote() {
        return TEXTS.text("fuse.sharing");
    }

    private static final int MOST = 20;

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
        String when = within.extrapolated() ? TEXTS.text("fuse.beyond", when(within)) : when(within);
        return new FuseAnswer.Opens(
                ratio,
                within.earliestSeconds(),
                within.latestSeconds(),
                withinBurst,
                within.citation(),
                TEXTS.text(
                        withinBurst ? "fuse.opens.burst" : "fuse.opens",
                        name(),
                        SupplyFigures.three(100 * ratio),
                        when,
                        within.citation()),
                TEXTS.text("fuse.remedy"));
    }

    private static String when(FuseOpening.Within within) {
        OptionalDouble earliest = within.earliestSeconds();
        OptionalDouble latest = within.latestSeconds();
        if (latest.isEmpty()) {
            return earliest.isEmpty()
                    ? TEXTS.text("fuse.when.never")
                    : TEXTS.text("fuse.when.earliest", SupplyFigures.time(earliest.getAsDouble()));
        }
        String last = SupplyFigures.time(latest.getAsDouble());
        return earliest.isEmpty()
                ? TEXTS.text("fuse.when.latest", last)
                : TEXTS.text("fuse.when.both", SupplyFigures.time(earliest.getAsDouble()), last);
    }

    private FuseAnswer.AboveContinuous aboveContinuous(double ratio, FuseOpening.NotInTable table) {
        return new FuseAnswer.AboveContinuous(
                ratio,
                TEXTS.text(
                        "fuse.above",
                        name(),
                        SupplyFigures.three(100 * ratio),
                        SupplyFigures.three(100 * table.lowestRatio()),
                        table.citation()),
                TEXTS.text("fuse.remedy"));
    }

    private SupplyNoSolution noTable() {
        return new SupplyNoSolution(
                TEXTS.text(
                        "fuse.noTable",
                        kind.words(),
                        SupplyFigures.three(ratedAmps),
                        SupplyFigures.three(FuseCurve.highestRatedAmps(kind))),
                TEXTS.text("fuse.noTable.remedy"));
    }

    private String name() {
        return TEXTS.text(
                count > 1 ? "fuse.name.bank" : "fuse.name",
                kind.words(),
                SupplyFigures.three(ratedAmps),
                Integer.toString(count));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.ohmstead.metrology.AdaptiveMonteCarlo;
import org.ohmstead.metrology.Contribution;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.IntervalKind;
import org.ohmstead.metrology.MethodComparison;
import org.ohmstead.metrology.UncertaintyBudget;
import org.ohmstead.metrology.UncertaintyBudget.Correlation;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.CombinedParts;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.Reading;
import org.ohmstead.plot.Plot;
import org.ohmstead.units.text.Language;

/**
 * The uncertainty budget of the power that one channel of a reading gave. Works for every reading: parts of older ones, which say neither
 * input nor shape, are taken as normally distributed and placed by their names, or as adding to the power itself.
 *
 * <p>The model is P = V^2 / R, held to the supply volts stated for amplifiers whose power follows them: P (Us0/Us)^2.
 */
public final class ReadingBudget {
    /** The seed of the random numbers that makes figures the same everywhere. */
    public static final long USUAL_SEED = 20_260_301;

    private static final int MOST_TRIALS = 1_000_000;
    private static final double SECOND_DIGIT_BELOW = 3;
    private static final double SAME_RATIO = 1e-6;

    private final ChannelReading channel;
    private final List<BudgetPart> parts;
    private final UncertaintyBudget gum;
    private final Estimate result;
    private final BudgetDraws draws;
    private final BudgetCorrelations found;
    private final List<InstrumentUsed> overdue;

    private ReadingBudget(ChannelReading channel, List<InstrumentUsed> overdue) {
        this.channel = channel;
        this.parts = BudgetPart.of(channel);
        this.overdue = List.copyOf(overdue);
        this.found = BudgetCorrelations.of(channel);
        List<Correlation> correlations = found.pairs();
        this.gum = new UncertaintyBudget(
                channel.powerWatts(),
                parts.stream().map(BudgetPart::contribution).toList(),
                correlations);
        this.result = result(gum);
        this.draws = new BudgetDraws(channel, parts, correlations);
    }

    /** Returns the budget of a channel; of its instruments nothing is known. */
    public static ReadingBudget of(ChannelReading channel) {
        return new ReadingBudget(Objects.requireNonNull(channel, "channel"), List.of());
    }

    /**
     * Returns the budget of a channel of a reading, with a note for each instrument whose calibration had run out.
     *
     * @param reading for its instruments
     * @param channel one of its channels
     */
    public static ReadingBudget of(Reading reading, ChannelReading channel) {
        List<InstrumentUsed> overdue = reading.provenance().instruments().stream()
                .filter(InstrumentUsed::overdue)
                .toList();
        return new ReadingBudget(Objects.requireNonNull(channel, "channel"), overdue);
    }

    /** Returns the channel. */
    public ChannelReading channel() {
        return channel;
    }

    /** Returns the budget by the law of propagation, each part with its sensitivity and the standard uncertainty of its input. */
    public UncertaintyBudget gum() {
        return gum;
    }

    /**
     * Returns the power with its combined standard uncertainty and effective degrees of freedom (Welch-Satterthwaite, GUM G.4.1).
     * Correlated parts that are exactly known count together as one such part there; if one of them is not, the smallest degrees of
     * freedom are taken.
     */
    public Estimate result() {
        return result;
    }

    /** Returns the effective degrees of freedom; {@link Double#POSITIVE_INFINITY} when every part is taken as exactly known. */
    public double effectiveDegreesOfFreedom() {
        return result.degreesOfFreedom();
    }

    /** Returns the coverage factor from Student's t distribution (GUM G.3) at a coverage strictly between 0 and 1, such as 0.95. */
    public double coverageFactor(double coverage) {
        return result.coverageFactor(coverage);
    }

    /** Returns the expanded uncertainty in watts at a coverage strictly between 0 and 1. */
    public double expandedWatts(double coverage) {
        return result.expandedUncertainty(coverage);
    }

    /** Returns the interval of the law of propagation at a coverage strictly between 0 and 1. */
    public CoverageInterval interval(double coverage) {
        return result.interval(coverage);
    }

    /** Returns the lines in the order in which the reading has its parts. */
    public List<BudgetLine> lines() {
        List<UncertaintyBudget.Row> rows = gum.rows();
        List<BudgetLine> lines = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            BudgetPart part = parts.get(i);
            lines.add(new BudgetLine(
                    part.name(),
                    part.input(),
                    part.shape(),
                    part.degreesOfFreedom(),
                    part.inputUncertainty(),
                    part.sensitivity(),
                    rows.get(i).effect(),
                    rows.get(i).varianceShare(),
                    part.shared()));
        }
        return List.copyOf(lines);
    }

    /** Returns which lines move together, by their names. */
    public List<Correlation> correlations() {
        return gum.correlations();
    }

    /**
     * Returns the distribution of the power by drawing its inputs (JCGM 101): shapes, t distributions of finite degrees of freedom and
     * correlations are kept, and the power is worked out anew from V, R and the supply volts in every trial.
     *
     * @param settings when the figures are steady enough
     * @param seed of the random numbers; the same seed always gives the same figures
     */
    public AdaptiveMonteCarlo draw(AdaptiveMonteCarlo.Settings settings, long seed) {
        return draws.run(settings, seed);
    }

    /**
     * Returns both methods side by side, the interval of Monte Carlo leaving out as much below as above (JCGM 101, clause 8). They are
     * compared to the first digit of the standard uncertainty, to the second where the first is 1 or 2. Takes up to a few seconds.
     *
     * @param coverage coverage probability, strictly between 0 and 1
     * @param seed of the random numbers, such as {@link #USUAL_SEED}
     */
    public MethodComparison monteCarlo(double coverage, long seed) {
        int digits = comparedDigits(result.standardUncertainty());
        // The draws stand still to one digit more, so that they add nothing to the comparison.
        AdaptiveMonteCarlo drawn =
                draw(new AdaptiveMonteCarlo.Settings(coverage, digits + 1, IntervalKind.SYMMETRIC, MOST_TRIALS), seed);
        return MethodComparison.of(result, drawn.result(), IntervalKind.SYMMETRIC, coverage, digits);
    }

    /** Returns what is to be known of the budget, in whole sentences: what was assumed, overdue instruments, what is missing. */
    public List<String> notes() {
        return notes(Language.current());
    }

    /** Returns what is to be known of the budget in a language. */
    public List<String> notes(Locale language) {
        BudgetWords words = new BudgetWords(language);
        BudgetNotes made = new BudgetNotes(words);
        List<String> all = new ArrayList<>(overdue.stream().map(made::overdue).toList());
        all.addAll(made.of(channel, found));
        if (!draws.keepsShapes()) {
            all.add(words.text("note.shapesLost"));
        }
        return List.copyOf(all);
    }

    /** Returns the effects of the lines and the combined standard uncertainty as horizontal bars, the longest at the top. */
    public Plot bars() {
        return bars(Language.current());
    }

    /** Returns the same bars with words of a language. */
    public Plot bars(Locale language) {
        return BudgetBars.of(this, new BudgetWords(language));
    }

    /** Digits that matter: a second one where the first alone would be coarse, 1 or 2. */
    private static int comparedDigits(double standardUncertainty) {
        double leading = standardUncertainty / Math.pow(10, Math.floor(Math.log10(standardUncertainty)));
        return leading < SECOND_DIGIT_BELOW ? 2 : 1;
    }

    /** Returns whether the parts give the standard uncertainty that was logged with the power, to rounding. */
    static boolean agrees(ChannelReading channel) {
        double combined = CombinedParts.of(channel).watts();
        return channel.uncertaintyParts().isEmpty()
                || Math.abs(combined - channel.standardUncertaintyWatts())
                        <= SAME_RATIO * Math.max(combined, channel.standardUncertaintyWatts());
    }

    private static Estimate result(UncertaintyBudget budget) {
        Set<String> together = new HashSet<>();
        for (Correlation correlation : budget.correlations()) {
            if (correlation.coefficient() != 0) {
                together.add(correlation.first());
                together.add(correlation.second());
            }
        }
        List<Contribution> correlated = budget.contributions().stream()
                .filter(line -> together.contains(line.name()))
                .toList();
        if (correlated.isEmpty() || correlated.stream().anyMatch(line -> Double.isFinite(line.degreesOfFreedom()))) {
            return budget.combined();
        }
        UncertaintyBudget group = new UncertaintyBudget(0, correlated, budget.correlations());
        List<Contribution> lines = new ArrayList<>(budget.contributions());
        lines.removeAll(correlated);
        lines.add(new Contribution(
                "correlated parts", 1, group.combined().standardUncertainty(), Double.POSITIVE_INFINITY));
        return new UncertaintyBudget(budget.value(), lines, List.of()).combined();
    }
}

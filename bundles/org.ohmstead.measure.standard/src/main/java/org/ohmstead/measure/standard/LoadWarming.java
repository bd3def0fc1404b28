// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartShare;
import org.ohmstead.model.PartTraits;

/**
 * How far a load's resistance may have moved by its own heat: the bound that is reached when the power goes on until nothing gets
 * warmer. To first order the resistance of a network changes by the sum of the relative changes of its resistors, each weighted with its
 * share of the power: a resistor r that carries the share s of the power has dR/R = s dr/r.
 *
 * @param ratio relative change of the resistance when warm, with its sign
 * @param hottestKelvin rise of the hottest resistor above the air
 * @param known how many resistors have a temperature coefficient and a thermal resistance
 * @param all how many resistors there are
 */
record LoadWarming(double ratio, double hottestKelvin, int known, int all) {
    /** Returns the bound; empty when nothing is known of any resistor of the branch. */
    static Optional<LoadWarming> of(double meanWatts, LoadBranch branch, BudgetSetting setting) {
        List<PartShare> shares = setting.sharing().shares(setting.bench().parts(), branch);
        double ratio = 0;
        double hottest = 0;
        int known = 0;
        for (PartShare share : shares) {
            Optional<PartTraits> traits = share.part().map(Part::traits).filter(LoadWarming::tells);
            if (traits.isPresent()) {
                double kelvin = meanWatts * share.powerRatio() * kelvinPerWatt(traits.get());
                ratio += share.powerRatio()
                        * traits.get().temperatureCoefficientPerKelvin().getAsDouble()
                        * kelvin;
                hottest = Math.max(hottest, kelvin);
                known++;
            }
        }
        return known == 0 ? Optional.empty() : Optional.of(new LoadWarming(ratio, hottest, known, shares.size()));
    }

    /**
     * Returns whether the bound that a branch states counts in place of the one reckoned: when nothing could be reckoned, or when some
     * resistors are unknown and what the others give is less.
     */
    static boolean isStatedInstead(Optional<LoadWarming> reckoned, LoadBranch branch) {
        return branch.heatingRatio() > 0
                && reckoned.filter(
                                warm -> warm.known() == warm.all() || Math.abs(warm.ratio()) >= branch.heatingRatio())
                        .isEmpty();
    }

    /** Returns what was assumed when the bound of the branch counts, in a whole sentence. */
    static String statedSentence(LoadBranch branch) {
        return String.format(
                Locale.ROOT,
                "The load's resistance is taken to change by anything up to %.2g %% when it is hot, as stated for it; the power is not"
                        + " corrected for it, the bound is in its uncertainty.",
                100 * branch.heatingRatio());
    }

    private static boolean tells(PartTraits traits) {
        return traits.temperatureCoefficientPerKelvin().isPresent() && kelvinPerWatt(traits) > 0;
    }

    private static double kelvinPerWatt(PartTraits traits) {
        return traits.sinkKelvinPerWatt().orElse(0)
                + traits.elementKelvinPerWatt().orElse(0);
    }

    /** Returns what was assumed, in a whole sentence. */
    String sentence() {
        String some = known == all ? "" : ", of " + known + " of its " + all + " resistors, the others being unknown";
        return String.format(
                Locale.ROOT,
                "The load is taken to warm by anything up to a lasting rise of %.3g K at its hottest resistor, which changes its"
                        + " resistance by %.2g %%%s; the power is not corrected for it, the bound is in its uncertainty.",
                hottestKelvin,
                100 * ratio,
                some);
    }
}

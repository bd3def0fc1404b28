// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.metrology.AdaptiveMonteCarlo;
import org.ohmstead.metrology.Covariance;
import org.ohmstead.metrology.Distribution;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.UncertaintyBudget.Correlation;
import org.ohmstead.model.ChannelReading;

/**
 * Draws the power from its model: P = V^2 / R at the supply volts stated, so P0 (V/V0)^2 (R0/R) (Us0/Us)^2, to which the other parts add.
 * Each part is drawn in its own shape. Of two correlated parts the second takes the first one's draw with a probability of |r| and a draw
 * of its own else, which gives both their shape and their correlation.
 */
final class BudgetDraws {
    /** A divisor is never drawn below this share of its value; only absurd uncertainties reach there. */
    private static final double LEAST_DIVISOR = 1e-3;

    private final ChannelReading channel;
    private final List<BudgetPart> parts;
    private final List<Correlation> correlations;

    /** How a part gets its error out of the inputs drawn. */
    private record Follower(int own, int leader, int coin, double coefficient) {
        double error(double[] drawn) {
            if (leader < 0) {
                return drawn[own];
            }
            boolean follows = coin < 0 || drawn[coin] < Math.abs(coefficient);
            return follows ? Math.signum(coefficient) * drawn[leader] : drawn[own];
        }
    }

    BudgetDraws(ChannelReading channel, List<BudgetPart> parts, List<Correlation> correlations) {
        this.channel = channel;
        this.parts = parts;
        this.correlations = correlations.stream()
                .filter(correlation -> correlation.coefficient() != 0)
                .toList();
    }

    AdaptiveMonteCarlo run(AdaptiveMonteCarlo.Settings settings, long seed) {
        if (keepsShapes()) {
            List<Distribution> inputs = new ArrayList<>();
            List<Follower> followers = followers(inputs);
            double[] drawnUncertainties =
                    parts.stream().mapToDouble(BudgetPart::inputUncertainty).toArray();
            return AdaptiveMonteCarlo.run(
                    drawn -> {
                        double[] errors = new double[drawnUncertainties.length];
                        for (int i = 0; i < errors.length; i++) {
                            errors[i] = drawnUncertainties[i] * followers.get(i).error(drawn);
                        }
                        return powerWatts(errors);
                    },
                    inputs,
                    settings,
                    seed);
        }
        return AdaptiveMonteCarlo.run(this::powerWatts, new double[parts.size()], covariance(), settings, seed);
    }

    /** Returns whether each part is correlated with at most one other, of the same shape where they are to agree wholly. */
    boolean keepsShapes() {
        for (Correlation correlation : correlations) {
            boolean others = correlations.stream()
                    .anyMatch(other -> other != correlation
                            && (touches(other, correlation.first()) || touches(other, correlation.second())));
            if (others || !alike(part(correlation.first()), part(correlation.second()))) {
                return false;
            }
        }
        return true;
    }

    private static boolean touches(Correlation correlation, String name) {
        return correlation.first().equals(name) || correlation.second().equals(name);
    }

    private static boolean alike(BudgetPart first, BudgetPart second) {
        return first.shape() == second.shape() && first.degreesOfFreedom().equals(second.degreesOfFreedom());
    }

    private BudgetPart part(String name) {
        return parts.stream()
                .filter(part -> part.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private List<Follower> followers(List<Distribution> inputs) {
        parts.forEach(part -> inputs.add(standardised(part)));
        List<Follower> followers = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Follower follower = new Follower(i, -1, -1, 0);
            for (Correlation correlation : correlations) {
                int first = indexOf(correlation.first());
                int second = indexOf(correlation.second());
                if (i == Math.max(first, second)) {
                    boolean whole = Math.abs(correlation.coefficient()) >= 1;
                    follower = new Follower(
                            i, Math.min(first, second), whole ? -1 : inputs.size(), correlation.coefficient());
                    if (!whole) {
                        inputs.add(new Distribution.Rectangular(0, 1));
                    }
                }
            }
            followers.add(follower);
        }
        return followers;
    }

    private int indexOf(String name) {
        return parts.indexOf(part(name));
    }

    /** A distribution about 0 whose standard uncertainty is 1. */
    private static Distribution standardised(BudgetPart part) {
        return switch (part.shape()) {
            case NORMAL ->
                part.degreesOfFreedom().isPresent()
                        ? new Distribution.ScaledStudent(
                                new Estimate(0, 1, part.degreesOfFreedom().getAsDouble()))
                        : new Distribution.Normal(0, 1);
            case RECTANGULAR -> new Distribution.Rectangular(-Math.sqrt(3), Math.sqrt(3));
            case TRIANGULAR -> new Distribution.Triangular(-Math.sqrt(6), Math.sqrt(6));
        };
    }

    private double powerWatts(double[] errors) {
        double outputVolts = channel.outputVoltsRms();
        double loadOhms = channel.loadOhms();
        double supplyVolts = channel.supplyVolts();
        double addedWatts = 0;
        for (int i = 0; i < errors.length; i++) {
            switch (parts.get(i).input()) {
                case OUTPUT_VOLTS -> outputVolts += errors[i];
                case LOAD_OHMS -> loadOhms += errors[i];
                case SUPPLY_VOLTS -> supplyVolts += errors[i];
                case POWER_WATTS -> addedWatts += errors[i];
            }
        }
        double voltsRatio = channel.outputVoltsRms() > 0 ? outputVolts / channel.outputVoltsRms() : 1;
        double loadRatio = Math.max(LEAST_DIVISOR, loadOhms / channel.loadOhms());
        double supplyRatio = Math.max(LEAST_DIVISOR, supplyVolts / channel.supplyVolts());
        return channel.powerWatts() * voltsRatio * voltsRatio / loadRatio / (supplyRatio * supplyRatio) + addedWatts;
    }

    private Covariance covariance() {
        int count = parts.size();
        double[][] entries = new double[count][count];
        for (int i = 0; i < count; i++) {
            entries[i][i] = Math.pow(parts.get(i).inputUncertainty(), 2);
        }
        for (Correlation correlation : correlations) {
            int i = indexOf(correlation.first());
            int j = indexOf(correlation.second());
            entries[i][j] = correlation.coefficient()
                    * parts.get(i).inputUncertainty()
                    * parts.get(j).inputUncertainty();
            entries[j][i] = entries[i][j];
        }
        return Covariance.of(entries);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** The end point that a set-up aims for: typed, or a rating of a project. */
final class TargetOptions {
    private static final double MOST_WATTS = 100_000;
    private static final double LEAST_OHMS = 0.01;
    private static final double MOST_OHMS = 10_000;

    @Option(names = "--power-watts", paramLabel = "P", description = "The wanted power in the load, of a sine.")
    private String power;

    @Option(names = "--load-ohms", paramLabel = "R", description = "The load.")
    private String load;

    @Option(
            names = "--bridged",
            description = "The load lies between two channels; each sees half of it and gives half of the volts.")
    private boolean bridged;

    @Option(
            names = "--rating",
            paramLabel = "ID",
            description = "The project's rating to reach (its first if left out).")
    private String ratingId;

    @Option(
            names = "--clip-watts",
            paramLabel = "P",
            description = "Where the amplifier begins to clip in this load (at the wanted power if left out).")
    private String clip;

    /** The end point, and which rating it is, if any. */
    record Chosen(GainTarget target, Optional<Rating> rating) {}

    /** Returns the end point that the options name, else that of a rating. */
    Chosen chosen(Optional<Project> project) throws InputException {
        if (power == null && load == null) {
            return rated(project);
        }
        if (ratingId != null) {
            throw new InputException(
                    "Both --rating and a typed end point are given; leave --rating, or --power-watts and --load-ohms, out.");
        }
        if (power == null || load == null) {
            throw new InputException("An end point needs both --power-watts and --load-ohms.");
        }
        double watts = Quantities.within(power, Unit.WATT, Double.MIN_NORMAL, MOST_WATTS, "--power-watts");
        double ohms = Quantities.within(load, Unit.OHM, LEAST_OHMS, MOST_OHMS, "--load-ohms");
        return new Chosen(new GainTarget(watts, ohms, bridged), Optional.empty());
    }

    /** Returns where clipping begins, when it was said. */
    OptionalDouble clipWatts() throws InputException {
        return Quantities.optionalPositive(clip, Unit.WATT, "--clip-watts");
    }

    private Chosen rated(Optional<Project> project) throws InputException {
        if (project.isEmpty()) {
            throw new InputException("The end point is missing. Give --power-watts and --load-ohms, or a project.");
        }
        if (bridged) {
            throw new InputException(
                    "--bridged belongs to a typed end point; name a bridged rating with --rating instead.");
        }
        List<Rating> ratings = project.get().amplifier().ratings();
        Rating rating = ratings.stream()
                .filter(each -> ratingId == null || each.id().equals(ratingId))
                .findFirst()
                .orElseThrow(() -> new InputException(
                        ratings.isEmpty()
                                ? "The project's amplifier has no rating. Give --power-watts and --load-ohms."
                                : "The project has no rating \"" + ratingId + "\". It has: "
                                        + Texts.some(
                                                ratings.stream().map(Rating::id).toList()) + "."));
        GainTarget target = new GainTarget(rating.powerWatts(), rating.loadOhms(), rating.mode() == Mode.BRIDGED);
        return new Chosen(target, Optional.of(rating));
    }
}

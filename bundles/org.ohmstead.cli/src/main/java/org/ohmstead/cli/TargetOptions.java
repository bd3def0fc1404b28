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

    @Option(names = "--power-watts", paramLabel = "P", descriptionKey = "target.power-watts")
    private String power;

    @Option(names = "--load-ohms", paramLabel = "R", descriptionKey = "target.load-ohms")
    private String load;

    @Option(names = "--bridged", descriptionKey = "target.bridged")
    private boolean bridged;

    @Option(names = "--rating", paramLabel = "ID", descriptionKey = "target.rating")
    private String ratingId;

    @Option(names = "--clip-watts", paramLabel = "P", descriptionKey = "target.clip-watts")
    private String clip;

    /** The end point, and which rating it is, if any. */
    record Chosen(GainTarget target, Optional<Rating> rating) {}

    /** Returns the end point that the options name, else that of a rating. */
    Chosen chosen(Optional<Project> project) throws InputException {
        if (power == null && load == null) {
            return rated(project);
        }
        if (ratingId != null) {
            throw new InputException(Texts.of("target.both"));
        }
        if (power == null || load == null) {
            throw new InputException(Texts.of("target.half"));
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
            throw new InputException(Texts.of("target.missing"));
        }
        if (bridged) {
            throw new InputException(Texts.of("target.bridged"));
        }
        List<Rating> ratings = project.get().amplifier().ratings();
        Rating rating = ratings.stream()
                .filter(each -> ratingId == null || each.id().equals(ratingId))
                .findFirst()
                .orElseThrow(() -> new InputException(
                        ratings.isEmpty()
                                ? Texts.of("target.noRatings")
                                : Texts.of(
                                        "target.noRating",
                                        ratingId,
                                        Texts.some(
                                                ratings.stream().map(Rating::id).toList()))));
        GainTarget target = new GainTarget(rating.powerWatts(), rating.loadOhms(), rating.mode() == Mode.BRIDGED);
        return new Chosen(target, Optional.of(rating));
    }
}

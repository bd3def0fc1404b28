// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.curves.internal.Checks;

/**
 * What a study is to do.
 *
 * @param points the readings of one amplifier and one end point, selected ones only
 * @param channels which channels to look at
 * @param robust whether readings far off the curve count less (Huber's method)
 * @param allowed the models to choose from; at least one
 * @param bounds where parameters must lie, beyond the usual; the last one for a parameter counts
 * @param basis what the uncertainties come from
 * @param sharedRelativeUncertainty relative standard uncertainty of power that all readings have in common, at least 0
 */
public record StudyRequest(
        List<StudyPoint> points,
        ChannelChoice channels,
        boolean robust,
        Set<ModelKind> allowed,
        List<ParameterBounds> bounds,
        UncertaintyBasis basis,
        double sharedRelativeUncertainty) {

    /** Checks the ranges given above and copies. */
    public StudyRequest {
        points = List.copyOf(points);
        bounds = List.copyOf(bounds);
        if (allowed.isEmpty()) {
            throw new IllegalArgumentException("allowed is empty but a study needs at least one model.");
        }
        allowed = Set.copyOf(allowed);
        Checks.notNegative("sharedRelativeUncertainty", sharedRelativeUncertainty);
    }

    /** Returns the usual request: all channels, not robust, all models, no more bounds than the usual. */
    public static StudyRequest of(List<StudyPoint> points) {
        return new StudyRequest(
                points,
                new ChannelChoice.Joint(),
                false,
                EnumSet.allOf(ModelKind.class),
                List.of(),
                UncertaintyBasis.READINGS_UNLESS_CONTRADICTED,
                0);
    }

    /** Returns this request for other points. */
    public StudyRequest withPoints(List<StudyPoint> newPoints) {
        return new StudyRequest(newPoints, channels, robust, allowed, bounds, basis, sharedRelativeUncertainty);
    }

    /** Returns this request for other channels. */
    public StudyRequest withChannels(ChannelChoice newChannels) {
        return new StudyRequest(points, newChannels, robust, allowed, bounds, basis, sharedRelativeUncertainty);
    }

    /** Returns this request with or without Huber's method. */
    public StudyRequest withRobust(boolean newRobust) {
        return new StudyRequest(points, channels, newRobust, allowed, bounds, basis, sharedRelativeUncertainty);
    }

    /** Returns this request with other models to choose from. */
    public StudyRequest withAllowed(Set<ModelKind> newAllowed) {
        return new StudyRequest(points, channels, robust, newAllowed, bounds, basis, sharedRelativeUncertainty);
    }

    /** Returns this request with one more bound. */
    public StudyRequest withBounds(StageParameter parameter, double lower, double upper) {
        List<ParameterBounds> more = new ArrayList<>(bounds);
        more.add(new ParameterBounds(parameter, lower, upper));
        return new StudyRequest(points, channels, robust, allowed, more, basis, sharedRelativeUncertainty);
    }

    /** Returns this request with another source of uncertainties. */
    public StudyRequest withBasis(UncertaintyBasis newBasis) {
        return new StudyRequest(points, channels, robust, allowed, bounds, newBasis, sharedRelativeUncertainty);
    }

    /** Returns this request with another relative standard uncertainty that all readings have in common. */
    public StudyRequest withSharedRelativeUncertainty(double newSharedRelativeUncertainty) {
        return new StudyRequest(points, channels, robust, allowed, bounds, basis, newSharedRelativeUncertainty);
    }
}

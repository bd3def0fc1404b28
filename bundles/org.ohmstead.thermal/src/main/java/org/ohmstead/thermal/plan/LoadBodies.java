// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartShare;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.LoadSideDrive;
import org.ohmstead.thermal.PartHeatingModel;
import org.ohmstead.thermal.PartHeatingPoint;
import org.ohmstead.units.text.Messages;

/**
 * Puts the load resistors into a model: of each kind of part one piece, which is taken to be the hottest one in every
 * step, as nobody says which piece is which.
 */
final class LoadBodies {
    private static final Messages TEXTS = Messages.of(LoadBodies.class);
    private static final String PREFIX = "part.";

    private final Project project;
    private final PartSharing sharing;
    private final double ambientCelsius;
    private final Set<String> notes;
    private final Map<String, Part> parts = new LinkedHashMap<>();

    LoadBodies(Project project, PartSharing sharing, double ambientCelsius, Set<String> notes) {
        this.project = project;
        this.sharing = sharing;
        this.ambientCelsius = ambientCelsius;
        this.notes = notes;
    }

    /** Returns the power of the hottest piece of each kind in a step, by the source's id. */
    Map<String, Pulse> powers(PlannedStep planned, StepForecast forecast) {
        Map<String, Pulse> powers = new HashMap<>();
        if (forecast.power().watts().isEmpty()) {
            return powers;
        }
        LoadSideDrive drive = LoadSideDrive.of(
                planned.step().stimulus(), forecast.power().watts().getAsDouble());
        int branches =
                planned.step().mode() == Mode.STEREO ? project.amplifier().channelCount() : 1;
        for (LoadBranch branch :
                planned.load().branches().stream().limit(branches).distinct().toList()) {
            List<PartShare> shares = sharing.shares(project.bench().parts(), branch);
            if (shares.isEmpty()) {
                notes.add(TEXTS.text("load.noNetwork", planned.load().id()));
            }
            for (PartShare share : shares) {
                add(powers, share, drive);
            }
        }
        return powers;
    }

    private void add(Map<String, Pulse> powers, PartShare share, LoadSideDrive drive) {
        if (share.part().isEmpty()) {
            notes.add(TEXTS.text("load.unknown", share.name()));
            return;
        }
        Part part = share.part().get();
        parts.putIfAbsent(part.id(), part);
        LoadSideDrive own = drive.times(share.powerRatio());
        double between = own instanceof LoadSideDrive.Bursts bursts ? bursts.betweenWatts() : own.peakWatts();
        powers.merge(
                PREFIX + part.id(),
                new Pulse(own.peakWatts(), between),
                (one, other) -> one.loud() >= other.loud() ? one : other);
    }

    /** Adds the pieces of all the steps that were asked for. */
    void add(HeatModel.Builder builder) {
        for (Part part : parts.values()) {
            PartHeatingModel model = new PartHeatingModel(part, ambientCelsius);
            for (PartHeatingPoint point : model.points(PREFIX + part.id())) {
                builder.chain(point.point(), PREFIX + part.id(), point.chain());
            }
            notes.addAll(model.notes());
        }
        if (!parts.isEmpty()) {
            notes.add(TEXTS.text("load.onePiece"));
        }
    }
}

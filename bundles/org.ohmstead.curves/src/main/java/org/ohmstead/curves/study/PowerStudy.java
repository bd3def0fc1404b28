// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;

/** Power against supply voltage of one amplifier and one end point, with the model that its readings speak for. Immutable. */
public final class PowerStudy implements StudyOutcome {
    private static final Messages TEXTS = Messages.of(PowerStudy.class);

    private final StudyRequest request;
    private final Terrain terrain;
    private final List<RefusedPoint> refused;
    private final ModelChoice choice;

    private PowerStudy(StudyRequest request, Terrain terrain, List<RefusedPoint> refused, ModelChoice choice) {
        this.request = request;
        this.terrain = terrain;
        this.refused = refused;
        this.choice = choice;
    }

    /**
     * Returns the study, or why there can be none.
     *
     * @param request what to do; its points are taken as one amplifier at one end point, whatever their data sets are
     */
    public static StudyOutcome of(StudyRequest request) {
        StudyInput input = StudyInput.of(request);
        if (input.accepted().isEmpty()) {
            String reason = request.points().isEmpty() ? TEXTS.text("study.none") : TEXTS.text("study.allRefused");
            return new Refused(reason, input.refused());
        }
        Terrain terrain = Terrain.of(input.accepted());
        Optional<ModelChoice> choice = new ModelSelection(terrain, request).choose();
        if (choice.isEmpty()) {
            return new Refused(TEXTS.text("study.undetermined"), input.refused());
        }
        return new PowerStudy(request, terrain, input.refused(), choice.get());
    }

    /** Returns a study of each data set by its id, in the order in which their first points come. */
    public static Map<String, StudyOutcome> ofEach(StudyRequest request) {
        Map<String, List<StudyPoint>> sets = new LinkedHashMap<>();
        for (StudyPoint point : request.points()) {
            sets.computeIfAbsent(point.dataSetId(), unused -> new ArrayList<>()).add(point);
        }
        Map<String, StudyOutcome> studies = new LinkedHashMap<>();
        sets.forEach((id, points) -> studies.put(id, of(request.withPoints(points))));
        return Collections.unmodifiableMap(studies);
    }

    /** Returns what was asked for. */
    public StudyRequest request() {
        return request;
    }

    /** Returns the readings that were used. */
    public List<StudyPoint> points() {
        return terrain.points();
    }

    @Override
    public List<RefusedPoint> refused() {
        return refused;
    }

    /** Returns which model was chosen, and among which. */
    public ModelChoice choice() {
        return choice;
    }

    /** Returns the chosen model's fit. */
    public ModelFit fit() {
        return choice.chosen();
    }

    /** Returns the different loads of the readings with their modes, each once: bridged last, higher loads first. */
    public List<PlacedLoad> loads() {
        return terrain.points().stream()
                .map(point -> new PlacedLoad(point.loadOhms(), point.mode()))
                .distinct()
                .sorted(Comparator.comparing(PlacedLoad::mode)
                        .thenComparing(PlacedLoad::loadOhms, Comparator.reverseOrder()))
                .toList();
    }

    /**
     * A load with the way in which the channels meet it.
     *
     * @param loadOhms as connected
     * @param mode how
     */
    public record PlacedLoad(double loadOhms, Mode mode) {}

    /** Returns the power at a supply voltage into a load, see {@link ModelFit#predict}. */
    public PowerPrediction predict(double supplyVolts, double loadOhms, Mode mode) {
        return fit().predict(supplyVolts, loadOhms, mode);
    }

    /** Returns the supply voltage at which a power is met, see {@link ModelFit#supplyVoltsFor}. */
    public OptionalDouble supplyVoltsFor(double powerWatts, double loadOhms, Mode mode) {
        return fit().supplyVoltsFor(powerWatts, loadOhms, mode);
    }

    /** Returns the change of power with one more volt, see {@link ModelFit#percentPerVolt}. */
    public Optional<Estimate> percentPerVolt(double supplyVolts, double loadOhms, Mode mode) {
        return fit().percentPerVolt(supplyVolts, loadOhms, mode);
    }

    /** Returns the lowest supply voltage of the readings. */
    public double lowestSupplyVolts() {
        return terrain.lowestVolts();
    }

    /** Returns the highest supply voltage of the readings. */
    public double highestSupplyVolts() {
        return terrain.highestVolts();
    }

    /** Returns what the study found, in whole sentences for people. */
    public List<String> findings() {
        return Findings.of(this);
    }

    Terrain terrain() {
        return terrain;
    }
}

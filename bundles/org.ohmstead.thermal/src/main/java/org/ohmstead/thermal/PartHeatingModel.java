// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.units.text.Messages;

/**
 * The thermal data of one resistor: what is known of it, what its derating line implies, and time constants. The heat
 * of the wire is taken to reach the case at once, which makes the case warm up a little too soon.
 *
 * @param part which
 * @param ambientCelsius temperature of the air
 */
public record PartHeatingModel(Part part, double ambientCelsius) {
    private static final Messages TEXTS = Messages.of(PartHeatingModel.class);

    /**
     * Heat that warms the case on its sink by a kelvin, in joules for each rated watt; common practice, no source, on
     * the low side.
     */
    public static final double CASE_JOULES_PER_KELVIN_WATT = 1;

    private static final double[] DEFAULT_UP_TO_WATTS = {10, 50, 250, Double.POSITIVE_INFINITY};
    private static final double[] DEFAULT_TAU_SECONDS = {10, 20, 30, 60};

    public PartHeatingModel {
        Checks.present(part, "part");
        Checks.within(ambientCelsius, -60, 120, "ambientCelsius");
    }

    /**
     * Returns the thermal resistance from the hottest spot that the derating line implies: (T_zero - T_rated) /
     * P_rated, in kelvins per watt.
     */
    public double impliedKelvinPerWatt() {
        return (part.zeroPowerCelsius() - part.ratedToCelsius()) / part.ratedWatts();
    }

    /**
     * Returns what the part may take for ever in watts, at least 0: by the straight line of its rating, on its sink
     * with the case as warm as that power makes it, and never more than its rated power.
     */
    public double allowedWatts() {
        double whole = impliedKelvinPerWatt() + traits().sinkKelvinPerWatt().orElse(0);
        double line = (part.zeroPowerCelsius() - ambientCelsius) / whole;
        return Math.min(part.ratedWatts(), Math.max(0, line));
    }

    /**
     * Returns the time constant in seconds of the wire: from the maker's short overload, else by the rated power
     * (common practice).
     */
    public double elementTauSeconds() {
        if (traits().pulseRule().isPresent()) {
            return PartHeatingPulse.tauSeconds(traits().pulseRule().get());
        }
        int index = 0;
        while (part.ratedWatts() > DEFAULT_UP_TO_WATTS[index]) {
            index++;
        }
        return DEFAULT_TAU_SECONDS[index];
    }

    /** Returns the time constant in seconds of the case on its sink; empty without a sink's thermal resistance. */
    public OptionalDouble caseTauSeconds() {
        OptionalDouble sink = traits().sinkKelvinPerWatt();
        return sink.isEmpty()
                ? sink
                : OptionalDouble.of(sink.getAsDouble() * CASE_JOULES_PER_KELVIN_WATT * part.ratedWatts());
    }

    /**
     * Returns the places to watch: the case where it has a sink, the wire where its thermal resistance is known, and
     * the hottest spot that the derating line implies. A limit is the temperature at which no power is left; that of
     * the hottest spot is where the power allowed brings it, which is lower where the rated power is the limit, and
     * the air's own temperature for a part that may take nothing.
     *
     * @param id of the part within the model; the places get it with an ending
     */
    public List<PartHeatingPoint> points(String id) {
        Checks.named(id, "id");
        List<PartHeatingPoint> points = new ArrayList<>();
        OptionalDouble zero = OptionalDouble.of(part.zeroPowerCelsius());
        List<FosterStage> sink = traits().sinkKelvinPerWatt().isPresent()
                ? List.of(new FosterStage(
                        traits().sinkKelvinPerWatt().getAsDouble(),
                        caseTauSeconds().orElseThrow()))
                : List.of();
        if (!sink.isEmpty()) {
            points.add(new PartHeatingPoint(
                    PartHeatingPoint.Place.CASE,
                    new HeatPoint(id + ".case", TEXTS.text("place.part.case", part.id()), zero),
                    new FosterChain(sink)));
        }
        traits().elementKelvinPerWatt()
                .ifPresent(kelvinPerWatt -> points.add(new PartHeatingPoint(
                        PartHeatingPoint.Place.ELEMENT,
                        new HeatPoint(id + ".element", TEXTS.text("place.part.wire", part.id()), zero),
                        chain(sink, kelvinPerWatt))));
        FosterChain implied = chain(sink, impliedKelvinPerWatt());
        double limit = ambientCelsius + allowedWatts() * implied.kelvinPerWatt();
        points.add(new PartHeatingPoint(
                PartHeatingPoint.Place.RATING,
                new HeatPoint(id + ".rating", TEXTS.text("place.part.hottest", part.id()), OptionalDouble.of(limit)),
                implied));
        return List.copyOf(points);
    }

    /** Returns what the figures rest on besides what was entered, a sentence each; to be shown beside them. */
    public List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (traits().elementKelvinPerWatt().isEmpty()) {
            notes.add(TEXTS.text("part.inside", part.id()));
        }
        notes.add(
                traits().pulseRule().isPresent()
                        ? TEXTS.text("part.pulse", part.id())
                        : TEXTS.text("part.tau", part.id(), SupplyFigures.three(elementTauSeconds())));
        if (traits().sinkKelvinPerWatt().isPresent()) {
            notes.add(TEXTS.text("part.sink", part.id()));
        }
        return List.copyOf(notes);
    }

    private FosterChain chain(List<FosterStage> sink, double kelvinPerWatt) {
        List<FosterStage> stages = new ArrayList<>(sink);
        stages.add(new FosterStage(kelvinPerWatt, elementTauSeconds()));
        return new FosterChain(stages);
    }

    private PartTraits traits() {
        return part.traits();
    }
}

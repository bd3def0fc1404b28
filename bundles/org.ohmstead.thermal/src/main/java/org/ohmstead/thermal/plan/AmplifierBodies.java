// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.SinkSize;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;
import org.ohmstead.thermal.SinkEstimate;

/** Puts the amplifier's case and devices into a model, in the corners of what is known of them. */
final class AmplifierBodies {
    /** The source of the most heat that the ranges allow. */
    static final String SOURCE = "amplifier";

    /** The source of the middle of the ranges. */
    static final String LIKELY = "amplifier.likely";

    /** What a person calls the case. */
    static final String CASE = "case of the amplifier";

    private static final String PRACTICE = " (common practice, no source)";
    private static final double USUAL_CASE_CELSIUS = 80;
    private static final double USUAL_DEVICE_CELSIUS = 150;
    private static final Range USUAL_TAU_SECONDS = new Range(600, 2400);
    private static final Range USUAL_BASE_METRES = new Range(0.004, 0.01);
    private static final double ALUMINIUM_JOULES_PER_CUBIC_METRE_KELVIN = 2.43e6;
    private static final double LEAST_RISE_KELVIN = 5;

    private final Project project;
    private final AmplifierHeat facts;
    private final double ambientCelsius;
    private final Set<String> notes;

    AmplifierBodies(Project project, double ambientCelsius, Set<String> notes) {
        this.project = project;
        this.ambientCelsius = ambientCelsius;
        this.notes = notes;
        facts = project.heat().amplifier();
    }

    double caseLimitCelsius() {
        return facts.caseLimitCelsius().orElse(USUAL_CASE_CELSIUS);
    }

    double deviceLimitCelsius() {
        return facts.deviceLimitCelsius().orElse(USUAL_DEVICE_CELSIUS);
    }

    /**
     * Returns the thermal resistance of the case to the air, and says where it comes from; empty when nothing tells.
     */
    Optional<Range> caseKelvinPerWatt() {
        if (facts.caseKelvinPerWatt().isPresent()) {
            return facts.caseKelvinPerWatt();
        }
        OptionalDouble sink = project.amplifier().heatSinkKelvinPerWatt();
        if (sink.isPresent()) {
            notes.add("The thermal resistance of the case is taken as that of the heat sink.");
            return Optional.of(Range.of(sink.getAsDouble()));
        }
        return facts.sinkSize().flatMap(this::bySize);
    }

    private Optional<Range> bySize(SinkSize size) {
        boolean gaps = size.finCount() <= 1 || size.finCount() * size.finThicknessMetres() < size.lengthMetres();
        if (!gaps) {
            notes.add("The fins of the heat sink leave no gap between them, so that its size does not tell its thermal"
                    + " resistance.");
            return Optional.empty();
        }
        double rise = Math.max(LEAST_RISE_KELVIN, caseLimitCelsius() - ambientCelsius);
        double watts = SinkEstimate.watts(size, rise, ambientCelsius);
        notes.add("The thermal resistance of the case is not known; it was estimated from its size for a case at its"
                + " limit in still air.");
        SinkEstimate estimate = SinkEstimate.of(size, watts, ambientCelsius, false);
        notes.addAll(estimate.remarks());
        return Optional.of(estimate.kelvinPerWatt());
    }

    private Range joulesPerKelvin(Range kelvinPerWatt) {
        if (facts.caseJoulesPerKelvin().isPresent()) {
            return facts.caseJoulesPerKelvin().get();
        }
        if (facts.sinkSize().isPresent()) {
            SinkSize size = facts.sinkSize().get();
            double fins = size.finCount() * size.finDepthMetres() * size.finThicknessMetres() * size.heightMetres();
            double face = size.lengthMetres() * size.heightMetres();
            notes.add("The heat capacity of the case is not known; it was estimated as that of its fins and a base of 4"
                    + " to 10 mm of aluminium"
                    + PRACTICE + ".");
            return new Range(
                    ALUMINIUM_JOULES_PER_CUBIC_METRE_KELVIN * (fins + face * USUAL_BASE_METRES.low()),
                    ALUMINIUM_JOULES_PER_CUBIC_METRE_KELVIN * (fins + face * USUAL_BASE_METRES.high()));
        }
        notes.add(
                "The heat capacity of the case is not known; it was estimated from a time constant of 10 to 40 minutes"
                        + PRACTICE + ".");
        double middle = kelvinPerWatt.middle();
        return new Range(USUAL_TAU_SECONDS.low() / middle, USUAL_TAU_SECONDS.high() / middle);
    }

    /**
     * Adds the case, and the devices where their thermal resistance is known.
     *
     * @param builder what to add to
     * @param kelvinPerWatt of the case
     */
    void add(HeatModel.Builder builder, Range kelvinPerWatt) {
        Range capacity = joulesPerKelvin(kelvinPerWatt);
        Map<String, Double> corners = new LinkedHashMap<>();
        if (capacity.known()) {
            corners.put("", capacity.low());
        } else {
            corners.put(".least", capacity.low());
            corners.put(".middle", Math.sqrt(capacity.low() * capacity.high()));
            corners.put(".most", capacity.high());
            notes.add(
                    "The heat capacity of the case is known as a range only: the case is kept below its limit with the"
                            + " least, the middle and the greatest of it.");
        }
        if (facts.caseLimitCelsius().isEmpty()) {
            notes.add("The limit of the case is not known; it was taken as 80 degrees Celsius" + PRACTICE + ".");
        }
        if (facts.deviceKelvinPerWatt().isEmpty()) {
            notes.add("The thermal resistance from the devices to the case is not known, so that only the case is"
                    + " watched.");
        } else if (facts.deviceLimitCelsius().isEmpty()) {
            notes.add("The limit of the devices is not known; it was taken as 150 degrees Celsius" + PRACTICE + ".");
        }
        corners.forEach((ending, joules) -> bodies(
                builder,
                ending,
                kelvinPerWatt.high(),
                joules,
                facts.deviceKelvinPerWatt().map(Range::high),
                true));
        bodies(
                builder,
                ".likely",
                kelvinPerWatt.middle(),
                capacity.middle(),
                facts.deviceKelvinPerWatt().map(Range::middle),
                false);
    }

    private void bodies(
            HeatModel.Builder builder,
            String ending,
            double kelvinPerWatt,
            double joulesPerKelvin,
            Optional<Double> device,
            boolean limited) {
        int[] source = {builder.source(limited ? SOURCE : LIKELY)};
        int[] mode = {builder.mode(kelvinPerWatt * joulesPerKelvin, source, new double[] {kelvinPerWatt})};
        double[] one = {1};
        builder.point(point("case" + ending, CASE, limited, caseLimitCelsius()), mode, one, new int[0], new double[0]);
        // The devices are taken to follow the case at once, which is cautious: their own heat capacity is small.
        device.ifPresent(through -> builder.point(
                point("device" + ending, "hottest device of the amplifier", limited, deviceLimitCelsius()),
                mode,
                one,
                source,
                new double[] {through}));
    }

    private static HeatPoint point(String id, String name, boolean limited, double celsius) {
        return new HeatPoint(id, name, limited ? OptionalDouble.of(celsius) : OptionalDouble.empty());
    }

    /** Returns the points that stand for the case and for the devices, without their endings. */
    static List<String> names() {
        return List.of("case", "device");
    }
}

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
import org.ohmstead.units.text.Messages;

/** Puts the amplifier's case and devices into a model, in the corners of what is known of them. */
final class AmplifierBodies {
    private static final Messages TEXTS = Messages.of(AmplifierBodies.class);

    /** The source of the most heat that the ranges allow. */
    static final String SOURCE = "amplifier";

    /** The source of the middle of the ranges. */
    static final String LIKELY = "amplifier.likely";

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
            notes.add(TEXTS.text("body.sink"));
            return Optional.of(Range.of(sink.getAsDouble()));
        }
        return facts.sinkSize().flatMap(this::bySize);
    }

    private Optional<Range> bySize(SinkSize size) {
        boolean gaps = size.finCount() <= 1 || size.finCount() * size.finThicknessMetres() < size.lengthMetres();
        if (!gaps) {
            notes.add(TEXTS.text("body.noGap"));
            return Optional.empty();
        }
        double rise = Math.max(LEAST_RISE_KELVIN, caseLimitCelsius() - ambientCelsius);
        double watts = SinkEstimate.watts(size, rise, ambientCelsius);
        notes.add(TEXTS.text("body.bySize"));
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
            notes.add(TEXTS.text("body.capacityBySize"));
            return new Range(
                    ALUMINIUM_JOULES_PER_CUBIC_METRE_KELVIN * (fins + face * USUAL_BASE_METRES.low()),
                    ALUMINIUM_JOULES_PER_CUBIC_METRE_KELVIN * (fins + face * USUAL_BASE_METRES.high()));
        }
        notes.add(TEXTS.text("body.capacityByTau"));
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
            notes.add(TEXTS.text("body.range"));
        }
        if (facts.caseLimitCelsius().isEmpty()) {
            notes.add(TEXTS.text("body.noLimit"));
        }
        if (facts.deviceKelvinPerWatt().isEmpty()) {
            notes.add(TEXTS.text("body.noDevice"));
        } else if (facts.deviceLimitCelsius().isEmpty()) {
            notes.add(TEXTS.text("body.noDeviceLimit"));
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
        builder.point(
                point("case" + ending, TEXTS.text("place.case"), limited, caseLimitCelsius()),
                mode,
                one,
                new int[0],
                new double[0]);
        // The devices are taken to follow the case at once, which is cautious: their own heat capacity is small.
        device.ifPresent(through -> builder.point(
                point("device" + ending, TEXTS.text("place.device"), limited, deviceLimitCelsius()),
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

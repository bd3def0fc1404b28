// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.FosterChain;
import org.ohmstead.thermal.FosterStage;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.HeatPoint;
import org.ohmstead.thermal.SinkEstimate;
import org.ohmstead.units.text.Messages;

/**
 * What gets warm in an amplifier: its case, by all of its heat, and the junctions of its output devices, by that of the output stages on top
 * of the case.
 *
 * @param caseKelvinPerWatt from the case to the air
 * @param caseJoulesPerKelvin capacity of the case; empty when it is not known, and no time can be told
 * @param deviceKelvinPerWatt from the junctions to the case; empty when it is not known
 * @param caseLimitCelsius of the case
 * @param deviceLimitCelsius of the junctions
 * @param remarks what was assumed, in whole sentences
 */
record WarmBody(
        Range caseKelvinPerWatt,
        Optional<Range> caseJoulesPerKelvin,
        Optional<Range> deviceKelvinPerWatt,
        OptionalDouble caseLimitCelsius,
        OptionalDouble deviceLimitCelsius,
        List<String> remarks) {
    private static final Messages TEXTS = Messages.of(WarmBody.class);

    static final int CASE = 0;
    static final int DEVICE = 1;

    /** Where no capacity is known only the end is told, which does not depend on it. */
    private static final Range ANY_CAPACITY = Range.of(1000);

    private static final double LEAST_WATTS = 1e-3;

    /** Returns the body of a project's amplifier; empty when nothing is known of how its heat gets away. */
    static Optional<WarmBody> of(Project project, double heatWatts, double airCelsius) {
        AmplifierHeat facts = project.heat().amplifier();
        List<String> remarks = new ArrayList<>();
        Optional<Range> toAir = facts.caseKelvinPerWatt();
        OptionalDouble listed = project.amplifier().heatSinkKelvinPerWatt();
        if (toAir.isEmpty() && listed.isPresent() && listed.getAsDouble() > 0) {
            toAir = Optional.of(Range.of(listed.getAsDouble()));
            remarks.add(TEXTS.text("body.listed"));
        }
        if (toAir.isEmpty() && facts.sinkSize().isPresent()) {
            SinkEstimate estimate =
                    SinkEstimate.of(facts.sinkSize().get(), Math.max(LEAST_WATTS, heatWatts), airCelsius, false);
            toAir = Optional.of(estimate.kelvinPerWatt());
            remarks.add(TEXTS.text("body.sized"));
            remarks.addAll(estimate.remarks());
        }
        return toAir.map(range -> new WarmBody(
                range,
                facts.caseJoulesPerKelvin(),
                facts.deviceKelvinPerWatt(),
                facts.caseLimitCelsius(),
                facts.deviceLimitCelsius(),
                remarks));
    }

    /** Returns the ranges of what is unknown, in the order that {@link #model} takes. */
    List<Range> unknowns() {
        return List.of(
                caseKelvinPerWatt, caseJoulesPerKelvin.orElse(ANY_CAPACITY), deviceKelvinPerWatt.orElse(Range.of(0)));
    }

    /**
     * Returns the model for a choice of the unknowns. Its sources are all heat of the amplifier, and that of the output stages; its points
     * are the case, and the devices when their resistance is known.
     */
    HeatModel model(double toAir, double capacity, double toCase) {
        HeatModel.Builder builder = new HeatModel.Builder();
        HeatPoint body = new HeatPoint("case", TEXTS.text("course.case.series"), caseLimitCelsius);
        builder.chain(body, "heat", new FosterChain(List.of(new FosterStage(toAir, toAir * capacity))));
        int stages = builder.source("stages");
        if (deviceKelvinPerWatt.isPresent()) {
            HeatPoint device = new HeatPoint("device", TEXTS.text("course.junction.series"), deviceLimitCelsius);
            builder.point(device, new int[] {0}, new double[] {1}, new int[] {stages}, new double[] {toCase});
        }
        return builder.build();
    }

    /** Returns the model with every range at its low end for 0, at its high end for 1. */
    HeatModel at(double warmth) {
        double capacity = caseJoulesPerKelvin.orElse(ANY_CAPACITY).high()
                - warmth
                        * (caseJoulesPerKelvin.orElse(ANY_CAPACITY).high()
                                - caseJoulesPerKelvin.orElse(ANY_CAPACITY).low());
        return model(part(caseKelvinPerWatt, warmth), capacity, part(deviceKelvinPerWatt.orElse(Range.of(0)), warmth));
    }

    static double part(Range range, double share) {
        return range.low() + share * (range.high() - range.low());
    }
}

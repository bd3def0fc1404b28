// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Range;
import org.ohmstead.model.SinkSize;
import org.ohmstead.units.text.Messages;

/**
 * The amplifier as a body that gets warm: a case of one temperature, and junctions that lie above it by what the heat drops on its way out of
 * the devices. The junctions follow at once, which errs to the hot side for short bursts. Immutable.
 *
 * @param caseKelvinPerWatt from the case to the air
 * @param caseJoulesPerKelvin heat capacity of the case
 * @param deviceKelvinPerWatt from the junctions together to the case; empty when it is not known, and then no junction is watched
 * @param facts limits and the rest
 * @param remarks what was assumed, in whole sentences
 */
public record AmplifierBody(
        Range caseKelvinPerWatt,
        Range caseJoulesPerKelvin,
        Optional<Range> deviceKelvinPerWatt,
        AmplifierHeat facts,
        List<String> remarks) {
    private static final Messages TEXTS = Messages.of(AmplifierBody.class);

    /** Id of the source of heat in the models. */
    public static final String SOURCE = "amplifier";

    /** Id of the case among the points. */
    public static final String CASE = "case";

    /** Id of the hottest junction among the points. */
    public static final String JUNCTION = "junction";

    /** Heat capacity of aluminium by volume, 2700 kg/m³ times 900 J/(kg K). */
    private static final double ALUMINIUM_JOULES = 2.43e6;

    /** Thickness of the base of a sink; common practice, no source. */
    private static final Range BASE_METRES = new Range(0.003, 0.008);

    public AmplifierBody {
        Checks.present(caseKelvinPerWatt, "caseKelvinPerWatt");
        Checks.positive(caseKelvinPerWatt.low(), "caseKelvinPerWatt.low");
        Checks.present(caseJoulesPerKelvin, "caseJoulesPerKelvin");
        Checks.positive(caseJoulesPerKelvin.low(), "caseJoulesPerKelvin.low");
        Checks.present(deviceKelvinPerWatt, "deviceKelvinPerWatt");
        Checks.present(facts, "facts");
        remarks = List.copyOf(remarks);
    }

    /**
     * Returns the body that is known or can be estimated, or empty when neither the case's figures nor its size are known.
     *
     * @param facts of the amplifier
     * @param watts heat at which the resistance is estimated from the size, above 0
     * @param airCelsius temperature of the air
     * @param fan whether a fan blows along the fins; only counts for the estimate
     */
    public static Optional<AmplifierBody> of(AmplifierHeat facts, double watts, double airCelsius, boolean fan) {
        List<String> remarks = new ArrayList<>();
        Optional<Range> resistance = facts.caseKelvinPerWatt();
        Optional<Range> capacity = facts.caseJoulesPerKelvin();
        if (resistance.isEmpty() && facts.sinkSize().isPresent()) {
            SinkEstimate estimate = SinkEstimate.of(facts.sinkSize().get(), watts, airCelsius, fan);
            resistance = Optional.of(estimate.kelvinPerWatt());
            remarks.add(TEXTS.text("body.resistance"));
            remarks.addAll(estimate.remarks());
        }
        if (capacity.isEmpty() && facts.sinkSize().isPresent()) {
            capacity = Optional.of(joulesPerKelvin(facts.sinkSize().get()));
            remarks.add(TEXTS.text("body.capacity"));
        }
        if (resistance.isEmpty() || capacity.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new AmplifierBody(resistance.get(), capacity.get(), facts.deviceKelvinPerWatt(), facts, remarks));
    }

    private static Range joulesPerKelvin(SinkSize size) {
        double fins = size.finCount() * size.finDepthMetres() * size.finThicknessMetres() * size.heightMetres();
        double base = size.lengthMetres() * size.heightMetres();
        return new Range(
                ALUMINIUM_JOULES * (fins + base * BASE_METRES.low()),
                ALUMINIUM_JOULES * (fins + base * BASE_METRES.high()));
    }

    /** Returns what is not known exactly, in the order in which {@link #model} takes it. */
    public List<Range> unknowns() {
        return List.of(caseKelvinPerWatt, caseJoulesPerKelvin, deviceKelvinPerWatt.orElse(Range.of(0)));
    }

    /**
     * Returns the model for one choice of {@link #unknowns}: the source {@link #SOURCE}, the point {@link #CASE}, and {@link #JUNCTION} when
     * the devices are known.
     */
    public HeatModel model(double... choice) {
        if (choice.length != unknowns().size()) {
            throw new IllegalArgumentException("choice has " + choice.length + " entries; it must have "
                    + unknowns().size());
        }
        HeatModel.Builder builder = new HeatModel.Builder();
        int source = builder.source(SOURCE);
        int[] mode = {builder.mode(choice[0] * choice[1], new int[] {source}, new double[] {choice[0]})};
        HeatPoint outside = new HeatPoint(CASE, TEXTS.text("place.case"), facts.caseLimitCelsius());
        builder.point(outside, mode, new double[] {1}, new int[0], new double[0]);
        if (deviceKelvinPerWatt.isPresent()) {
            HeatPoint inside = new HeatPoint(JUNCTION, TEXTS.text("place.junction"), facts.deviceLimitCelsius());
            builder.point(inside, mode, new double[] {1}, new int[] {source}, new double[] {choice[2]});
        }
        return builder.build();
    }

    /** Returns the model of the middles of all ranges. */
    public HeatModel middle() {
        return model(unknowns().stream().mapToDouble(Range::middle).toArray());
    }

    /** Returns the model that heats fastest and highest: high resistances, low capacity. Schedules should keep to it. */
    public HeatModel hottest() {
        return model(
                caseKelvinPerWatt.high(),
                caseJoulesPerKelvin.low(),
                unknowns().get(2).high());
    }
}

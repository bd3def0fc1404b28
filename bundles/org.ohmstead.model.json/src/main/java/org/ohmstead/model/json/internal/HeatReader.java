// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rest;
import org.ohmstead.model.SinkSize;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.model.json.ProjectFileException;

/** Reads what a project holds for the forecast of heat. */
final class HeatReader {
    private HeatReader() {}

    static HeatData heat(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return HeatData.NONE;
        }
        FieldReader in = present.get();
        Optional<FieldReader> amplifier = in.optionalObject("amplifier", "what is known of the amplifier's heat");
        Optional<FieldReader> supply = in.optionalObject("supply", "what else bounds the supply side");
        Optional<FieldReader> pacing = in.optionalObject("pacing", "how long the handling of the bench takes");
        AmplifierHeat amplifierHeat = amplifier.isPresent() ? amplifier(amplifier.get()) : AmplifierHeat.NONE;
        SupplyLimits supplyLimits = supply.isPresent() ? supply(supply.get()) : SupplyLimits.NONE;
        Pacing usedPacing = pacing.isPresent() ? pacing(pacing.get()) : Pacing.USUAL;
        return in.build(() -> new HeatData(amplifierHeat, supplyLimits, usedPacing));
    }

    private static AmplifierHeat amplifier(FieldReader in) throws ProjectFileException {
        OutputClass outputClass = in.choice("outputClass", OutputClass.class, "how the output stage makes its power");
        OptionalDouble rail = in.optionalNumber("railVolts", "volts of each rail to ground above 0, for example 30");
        OptionalDouble railAt =
                in.optionalNumber("railSupplyVolts", "supply volts at which the rail holds, for example 14.4");
        Optional<Range> efficiency = range(in, "converterEfficiencyRatio", "efficiency of the converter, 0 to 1");
        Optional<Range> idle = range(in, "idleWatts", "watts without a signal, at least 0");
        Optional<Range> caseResistance =
                range(in, "caseKelvinPerWatt", "thermal resistance from the case to the air above 0");
        Optional<Range> caseCapacity = range(in, "caseJoulesPerKelvin", "heat capacity of the case above 0");
        Optional<Range> device =
                range(in, "deviceKelvinPerWatt", "thermal resistance from the junctions to the case, at least 0");
        OptionalDouble deviceLimit =
                in.optionalNumber("deviceLimitCelsius", "the hottest that a junction may get, for example 150");
        OptionalDouble caseLimit =
                in.optionalNumber("caseLimitCelsius", "the hottest that the case may get, for example 75");
        Optional<FieldReader> size = in.optionalObject("sinkSize", "the outside of the heat sink");
        Optional<SinkSize> sinkSize = size.isPresent() ? Optional.of(sinkSize(size.get())) : Optional.empty();
        return in.build(() -> new AmplifierHeat(
                outputClass,
                rail,
                railAt,
                efficiency,
                idle,
                caseResistance,
                caseCapacity,
                device,
                deviceLimit,
                caseLimit,
                sinkSize));
    }

    private static Optional<Range> range(FieldReader in, String name, String what) throws ProjectFileException {
        Optional<FieldReader> present = in.optionalObject(name, what);
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader range = present.get();
        double low = range.number("low", what + "; the least that it may be");
        double high = range.number("high", what + "; the most that it may be");
        return Optional.of(range.build(() -> new Range(low, high)));
    }

    private static SinkSize sinkSize(FieldReader in) throws ProjectFileException {
        double length = in.number("lengthMetres", "length of the base above 0, for example 0.25");
        double height = in.number("heightMetres", "height in which the air rises above 0, for example 0.06");
        int finCount = in.whole("finCount", "number of fins, 0 for a plate");
        double finDepth = in.number("finDepthMetres", "how far the fins stand out, for example 0.03");
        double finThickness = in.number("finThicknessMetres", "thickness of a fin above 0, for example 0.002");
        double emissivity = in.number("emissivityRatio", "emissivity of the surface, 0 to 1, for example 0.85");
        return in.build(() -> new SinkSize(length, height, finCount, finDepth, finThickness, emissivity));
    }

    private static SupplyLimits supply(FieldReader in) throws ProjectFileException {
        boolean battery = in.optionalFlag("battery", "whether the supply is a battery");
        OptionalDouble source = in.optionalNumber("sourceOhms", "internal resistance in ohms, for example 0.004");
        OptionalDouble continuous =
                in.optionalNumber("continuousAmps", "amperes for as long as one likes above 0, for example 100");
        OptionalDouble cableLimit =
                in.optionalNumber("cableLimitCelsius", "the hottest that the insulation may get, for example 70");
        OptionalDouble cableOuter =
                in.optionalNumber("cableOuterMetres", "outer diameter of one lead above 0, for example 0.0125");
        return in.build(() -> new SupplyLimits(battery, source, continuous, cableLimit, cableOuter));
    }

    private static Pacing pacing(FieldReader in) throws ProjectFileException {
        double step = in.number("stepSeconds", "how long a step's signal is on, for example 20");
        double load = in.number("loadChangeSeconds", "seconds that strapping another load takes, for example 120");
        double mode = in.number("modeChangeSeconds", "seconds that wiring another mode takes, for example 180");
        double supply = in.number("supplyChangeSeconds", "seconds that other supply volts take, for example 10");
        double margin = in.number("marginKelvin", "kelvins to stay below every limit, for example 5");
        double current = in.number("currentMarginRatio", "part of a current limit to leave free, for example 0.1");
        boolean warmUp = in.optionalFlag("warmUp", "whether the run begins with preconditioning");
        List<Rest> rests = in.list("rests", "a rest that the user put before a step", HeatReader::rest);
        return in.build(() -> new Pacing(step, load, mode, supply, margin, current, warmUp, rests));
    }

    private static Rest rest(FieldReader in) throws ProjectFileException {
        String stepId = in.requiredText("stepId", "the id of the step before which the rest lies");
        double seconds = in.number("seconds", "how long, at least 0");
        return in.build(() -> new Rest(stepId, seconds));
    }
}

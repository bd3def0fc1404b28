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
        Optional<FieldReader> amplifier = in.optionalObject("amplifier", "field.heat.amplifier");
        Optional<FieldReader> supply = in.optionalObject("supply", "field.heat.supply");
        Optional<FieldReader> pacing = in.optionalObject("pacing", "field.heat.pacing");
        AmplifierHeat amplifierHeat = amplifier.isPresent() ? amplifier(amplifier.get()) : AmplifierHeat.NONE;
        SupplyLimits supplyLimits = supply.isPresent() ? supply(supply.get()) : SupplyLimits.NONE;
        Pacing usedPacing = pacing.isPresent() ? pacing(pacing.get()) : Pacing.USUAL;
        return in.build(() -> new HeatData(amplifierHeat, supplyLimits, usedPacing));
    }

    private static AmplifierHeat amplifier(FieldReader in) throws ProjectFileException {
        OutputClass outputClass = in.choice("outputClass", OutputClass.class, "field.heat.outputClass");
        OptionalDouble rail = in.optionalNumber("railVolts", "field.heat.rail");
        OptionalDouble railAt = in.optionalNumber("railSupplyVolts", "field.heat.railAt");
        Optional<Range> efficiency = range(in, "converterEfficiencyRatio", "field.heat.efficiency");
        Optional<Range> idle = range(in, "idleWatts", "field.heat.idle");
        Optional<Range> caseResistance = range(in, "caseKelvinPerWatt", "field.heat.caseResistance");
        Optional<Range> caseCapacity = range(in, "caseJoulesPerKelvin", "field.heat.caseCapacity");
        Optional<Range> device = range(in, "deviceKelvinPerWatt", "field.heat.device");
        OptionalDouble deviceLimit = in.optionalNumber("deviceLimitCelsius", "field.heat.deviceLimit");
        OptionalDouble caseLimit = in.optionalNumber("caseLimitCelsius", "field.heat.caseLimit");
        Optional<FieldReader> size = in.optionalObject("sinkSize", "field.heat.sinkSize");
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
        double low = range.number("low", what + ".low");
        double high = range.number("high", what + ".high");
        return Optional.of(range.build(() -> new Range(low, high)));
    }

    private static SinkSize sinkSize(FieldReader in) throws ProjectFileException {
        double length = in.number("lengthMetres", "field.sink.length");
        double height = in.number("heightMetres", "field.sink.height");
        int finCount = in.whole("finCount", "field.sink.finCount");
        double finDepth = in.number("finDepthMetres", "field.sink.finDepth");
        double finThickness = in.number("finThicknessMetres", "field.sink.finThickness");
        double emissivity = in.number("emissivityRatio", "field.sink.emissivity");
        return in.build(() -> new SinkSize(length, height, finCount, finDepth, finThickness, emissivity));
    }

    private static SupplyLimits supply(FieldReader in) throws ProjectFileException {
        boolean battery = in.optionalFlag("battery", "field.limits.battery");
        OptionalDouble source = in.optionalNumber("sourceOhms", "field.limits.source");
        OptionalDouble continuous = in.optionalNumber("continuousAmps", "field.limits.continuous");
        OptionalDouble cableLimit = in.optionalNumber("cableLimitCelsius", "field.limits.cableLimit");
        OptionalDouble cableOuter = in.optionalNumber("cableOuterMetres", "field.limits.cableOuter");
        return in.build(() -> new SupplyLimits(battery, source, continuous, cableLimit, cableOuter));
    }

    private static Pacing pacing(FieldReader in) throws ProjectFileException {
        double step = in.number("stepSeconds", "field.pacing.step");
        double load = in.number("loadChangeSeconds", "field.pacing.load");
        double mode = in.number("modeChangeSeconds", "field.pacing.mode");
        double supply = in.number("supplyChangeSeconds", "field.pacing.supply");
        double margin = in.number("marginKelvin", "field.pacing.margin");
        double current = in.number("currentMarginRatio", "field.pacing.current");
        boolean warmUp = in.optionalFlag("warmUp", "field.pacing.warmUp");
        List<Rest> rests = in.list("rests", "field.pacing.rests", HeatReader::rest);
        return in.build(() -> new Pacing(step, load, mode, supply, margin, current, warmUp, rests));
    }

    private static Rest rest(FieldReader in) throws ProjectFileException {
        String stepId = in.requiredText("stepId", "field.rest.stepId");
        double seconds = in.number("seconds", "field.rest.seconds");
        return in.build(() -> new Rest(stepId, seconds));
    }
}

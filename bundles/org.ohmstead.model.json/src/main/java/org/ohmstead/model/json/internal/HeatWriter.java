// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.Pacing;
import org.ohmstead.model.Range;
import org.ohmstead.model.Rest;
import org.ohmstead.model.SinkSize;
import org.ohmstead.model.SupplyLimits;

/** Writes what a project holds for the forecast of heat; of that only what differs from nothing known. */
final class HeatWriter {
    private HeatWriter() {}

    static ObjectNode heat(HeatData heat) {
        ObjectBuilder object = ObjectBuilder.begin();
        if (!heat.amplifier().equals(AmplifierHeat.NONE)) {
            object.node("amplifier", amplifier(heat.amplifier()));
        }
        if (!heat.supply().equals(SupplyLimits.NONE)) {
            object.node("supply", supply(heat.supply()));
        }
        if (!heat.pacing().equals(Pacing.USUAL)) {
            object.node("pacing", pacing(heat.pacing()));
        }
        return object.end();
    }

    private static ObjectNode amplifier(AmplifierHeat amplifier) {
        ObjectBuilder object = ObjectBuilder.begin()
                .choice("outputClass", amplifier.outputClass())
                .number("railVolts", amplifier.railVolts())
                .number("railSupplyVolts", amplifier.railSupplyVolts());
        range(object, "converterEfficiencyRatio", amplifier.converterEfficiencyRatio());
        range(object, "idleWatts", amplifier.idleWatts());
        range(object, "caseKelvinPerWatt", amplifier.caseKelvinPerWatt());
        range(object, "caseJoulesPerKelvin", amplifier.caseJoulesPerKelvin());
        range(object, "deviceKelvinPerWatt", amplifier.deviceKelvinPerWatt());
        object.number("deviceLimitCelsius", amplifier.deviceLimitCelsius())
                .number("caseLimitCelsius", amplifier.caseLimitCelsius());
        amplifier.sinkSize().ifPresent(size -> object.node("sinkSize", sinkSize(size)));
        return object.end();
    }

    private static void range(ObjectBuilder object, String name, Optional<Range> range) {
        range.ifPresent(value -> object.node(
                name,
                ObjectBuilder.begin()
                        .number("low", value.low())
                        .number("high", value.high())
                        .end()));
    }

    private static ObjectNode sinkSize(SinkSize size) {
        return ObjectBuilder.begin()
                .number("lengthMetres", size.lengthMetres())
                .number("heightMetres", size.heightMetres())
                .whole("finCount", size.finCount())
                .number("finDepthMetres", size.finDepthMetres())
                .number("finThicknessMetres", size.finThicknessMetres())
                .number("emissivityRatio", size.emissivityRatio())
                .end();
    }

    private static ObjectNode supply(SupplyLimits supply) {
        return ObjectBuilder.begin()
                .flag("battery", supply.battery())
                .number("sourceOhms", supply.sourceOhms())
                .number("continuousAmps", supply.continuousAmps())
                .number("cableLimitCelsius", supply.cableLimitCelsius())
                .number("cableOuterMetres", supply.cableOuterMetres())
                .end();
    }

    private static ObjectNode pacing(Pacing pacing) {
        return ObjectBuilder.begin()
                .number("stepSeconds", pacing.stepSeconds())
                .number("loadChangeSeconds", pacing.loadChangeSeconds())
                .number("modeChangeSeconds", pacing.modeChangeSeconds())
                .number("supplyChangeSeconds", pacing.supplyChangeSeconds())
                .number("marginKelvin", pacing.marginKelvin())
                .number("currentMarginRatio", pacing.currentMarginRatio())
                .flag("warmUp", pacing.warmUp())
                .list("rests", pacing.rests(), HeatWriter::rest)
                .end();
    }

    private static ObjectNode rest(Rest rest) {
        return ObjectBuilder.begin()
                .text("stepId", rest.stepId())
                .number("seconds", rest.seconds())
                .end();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.Price;
import org.ohmstead.model.Project;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Repeatability;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Supply;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.model.json.ProjectFile;

/** Turns a project into the content of its file. */
public final class ProjectWriter {
    private ProjectWriter() {}

    /** Returns the content of the file of a project, fields in the order of the records. */
    public static ObjectNode toJson(Project project) {
        ObjectBuilder object = ObjectBuilder.begin()
                .whole(FormatVersions.FIELD, ProjectFile.FORMAT_VERSION)
                .text("title", project.title())
                .node("amplifier", amplifier(project.amplifier()))
                .node("bench", bench(project.bench()))
                .list("loads", project.loads(), ProjectWriter::load)
                .list("plan", project.plan(), ProjectWriter::step)
                .node("sheet", sheet(project.sheet()))
                .list("setAside", project.setAside(), ProjectWriter::setAside);
        if (!project.heat().equals(HeatData.NONE)) {
            object.node("heat", HeatWriter.heat(project.heat()));
        }
        if (!project.checkStandards().isEmpty()) {
            object.list("checkStandards", project.checkStandards(), LabWriter::checkStandard);
        }
        project.sharedLog().ifPresent(shared -> object.node("sharedLog", LabWriter.sharedLog(shared)));
        return object.end();
    }

    private static ObjectNode setAside(SetAside setAside) {
        return ObjectBuilder.begin()
                .text("entryId", setAside.entryId())
                .text("reason", setAside.reason())
                .end();
    }

    private static ObjectNode amplifier(Amplifier amplifier) {
        ObjectBuilder object = ObjectBuilder.begin()
                .text("maker", amplifier.maker())
                .text("model", amplifier.model())
                .text("serialNumber", amplifier.serialNumber())
                .whole("channelCount", amplifier.channelCount())
                .choice("supplyType", amplifier.supplyType())
                .list("lowestLoads", amplifier.lowestLoads(), ProjectWriter::lowestLoad)
                .list("fuses", amplifier.fuses(), ProjectWriter::fuse)
                .number("heatSinkKelvinPerWatt", amplifier.heatSinkKelvinPerWatt())
                .list("ratings", amplifier.ratings(), ProjectWriter::rating)
                .text("notes", amplifier.notes());
        amplifier.price().ifPresent(price -> object.node("price", price(price)));
        return object.end();
    }

    private static ObjectNode price(Price price) {
        return ObjectBuilder.begin()
                .number("amount", price.amount())
                .text("currency", price.currency())
                .text("on", price.on().toString())
                .end();
    }

    private static ObjectNode lowestLoad(LowestLoad lowest) {
        return ObjectBuilder.begin()
                .choice("mode", lowest.mode())
                .number("loadOhms", lowest.loadOhms())
                .end();
    }

    private static ObjectNode fuse(Fuse fuse) {
        return ObjectBuilder.begin()
                .number("ratedAmps", fuse.ratedAmps())
                .text("style", fuse.style())
                .text("place", fuse.place())
                .end();
    }

    private static ObjectNode rating(Rating rating) {
        return ObjectBuilder.begin()
                .text("id", rating.id())
                .choice("kind", rating.kind())
                .choice("mode", rating.mode())
                .number("loadOhms", rating.loadOhms())
                .number("powerWatts", rating.powerWatts())
                .number("supplyVolts", rating.supplyVolts())
                .number("distortionRatio", rating.distortionRatio())
                .number("frequencyHz", rating.frequencyHz())
                .text("wording", rating.wording())
                .end();
    }

    private static ObjectNode bench(Bench bench) {
        ObjectBuilder object = ObjectBuilder.begin()
                .text("place", bench.place())
                .node("supply", supply(bench.supply()))
                .node("cable", cable(bench.cable()))
                .list("meters", bench.meters(), ProjectWriter::meter)
                .list("parts", bench.parts(), ProjectWriter::part)
                .number("ambientCelsius", bench.ambientCelsius());
        bench.repeatability().ifPresent(found -> object.node("repeatability", repeatability(found)));
        return object.end();
    }

    private static ObjectNode repeatability(Repeatability repeatability) {
        return ObjectBuilder.begin()
                .number("ratio", repeatability.ratio())
                .number("degreesOfFreedom", repeatability.degreesOfFreedom())
                .text("origin", repeatability.origin())
                .end();
    }

    private static ObjectNode supply(Supply supply) {
        return ObjectBuilder.begin()
                .text("name", supply.name())
                .number("lowestVolts", supply.lowestVolts())
                .number("highestVolts", supply.highestVolts())
                .number("currentLimitAmps", supply.currentLimitAmps())
                .end();
    }

    private static ObjectNode cable(Cable cable) {
        return ObjectBuilder.begin()
                .number("crossSectionSquareMillimetres", cable.crossSectionSquareMillimetres())
                .number("loopMetres", cable.loopMetres())
                .number("measuredLoopOhms", cable.measuredLoopOhms())
                .end();
    }

    private static ObjectNode meter(Meter meter) {
        ObjectBuilder out = ObjectBuilder.begin()
                .text("id", meter.id())
                .choice("quantity", meter.quantity())
                .text("name", meter.name())
                .text("serialNumber", meter.serialNumber())
                .node("accuracy", accuracy(meter.accuracy()));
        meter.calibratedOn().map(LocalDate::toString).ifPresent(day -> out.text("calibratedOn", day));
        meter.calibrationDueOn().map(LocalDate::toString).ifPresent(day -> out.text("calibrationDueOn", day));
        out.text("certificate", meter.certificate());
        if (!meter.stability().equals(MeterStability.NONE)) {
            out.node("stability", stability(meter.stability()));
        }
        return out.end();
    }

    private static ObjectNode stability(MeterStability stability) {
        return ObjectBuilder.begin()
                .number("certificateExpandedRatio", stability.certificateExpandedRatio())
                .number("certificateCoverageFactor", stability.certificateCoverageFactor())
                .number("driftRatioPerYear", stability.driftRatioPerYear())
                .number("temperatureRatioPerKelvin", stability.temperatureRatioPerKelvin())
                .number("fromCelsius", stability.fromCelsius())
                .number("toCelsius", stability.toCelsius())
                .end();
    }

    private static ObjectNode accuracy(Accuracy accuracy) {
        return ObjectBuilder.begin()
                .number("readingRatio", accuracy.readingRatio())
                .number("fixed", accuracy.fixed())
                .number("resolution", accuracy.resolution())
                .number("coverageFactor", accuracy.coverageFactor())
                .end();
    }

    private static ObjectNode part(Part part) {
        ObjectBuilder object = ObjectBuilder.begin()
                .text("id", part.id())
                .number("ohms", part.ohms())
                .number("toleranceRatio", part.toleranceRatio())
                .number("ratedWatts", part.ratedWatts())
                .number("ratedToCelsius", part.ratedToCelsius())
                .number("zeroPowerCelsius", part.zeroPowerCelsius())
                .choice("mounting", part.mounting())
                .whole("count", part.count());
        if (!part.traits().equals(PartTraits.NONE)) {
            object.node("traits", traits(part.traits()));
        }
        return object.end();
    }

    private static ObjectNode traits(PartTraits traits) {
        ObjectBuilder object = ObjectBuilder.begin()
                .flag("measured", traits.measured())
                .number("temperatureCoefficientPerKelvin", traits.temperatureCoefficientPerKelvin())
                .number("inductanceHenries", traits.inductanceHenries())
                .number("sinkKelvinPerWatt", traits.sinkKelvinPerWatt())
                .number("elementKelvinPerWatt", traits.elementKelvinPerWatt());
        traits.pulseRule().ifPresent(rule -> object.node("pulseRule", pulseRule(rule)));
        return object.end();
    }

    private static ObjectNode pulseRule(PulseRule rule) {
        return ObjectBuilder.begin()
                .number("overloadRatio", rule.overloadRatio())
                .number("durationSeconds", rule.durationSeconds())
                .end();
    }

    private static ObjectNode load(BenchLoad load) {
        return ObjectBuilder.begin()
                .text("id", load.id())
                .number("nominalOhms", load.nominalOhms())
                .list("branches", load.branches(), ProjectWriter::branch)
                .number("powerLimitWatts", load.powerLimitWatts())
                .end();
    }

    private static ObjectNode branch(LoadBranch branch) {
        ObjectBuilder object = ObjectBuilder.begin()
                .number("ohms", branch.ohms())
                .number("standardUncertaintyOhms", branch.standardUncertaintyOhms())
                .number("inductanceHenries", branch.inductanceHenries())
                .text("network", branch.network());
        if (branch.heatingRatio() > 0) {
            object.number("heatingRatio", branch.heatingRatio());
        }
        if (branch.leadStandardUncertaintyOhms() > 0) {
            object.number("leadStandardUncertaintyOhms", branch.leadStandardUncertaintyOhms());
        }
        return object.end();
    }

    private static ObjectNode step(Step step) {
        return ObjectBuilder.begin()
                .text("id", step.id())
                .choice("mode", step.mode())
                .text("loadId", step.loadId())
                .number("supplyVolts", step.supplyVolts())
                .node("stimulus", StepKinds.toJson(step.stimulus()))
                .node("endPoint", StepKinds.toJson(step.endPoint()))
                .flag("belowLowestLoadConfirmed", step.belowLowestLoadConfirmed())
                .end();
    }

    private static ObjectNode sheet(SheetSettings sheet) {
        ObjectBuilder object = ObjectBuilder.begin()
                .text("laboratory", sheet.laboratory())
                .text("preparedBy", sheet.preparedBy())
                .number("confidence", sheet.confidence())
                .text("remarks", sheet.remarks());
        sheet.verdictRule().ifPresent(rule -> object.node("verdictRule", verdictRule(rule)));
        if (!sheet.layout().equals(SheetLayout.USUAL)) {
            object.node("layout", LabWriter.layout(sheet.layout()));
        }
        return object.end();
    }

    private static ObjectNode verdictRule(VerdictRule rule) {
        return ObjectBuilder.begin()
                .choice("kind", rule.kind())
                .number("riskRatio", rule.riskRatio())
                .end();
    }
}

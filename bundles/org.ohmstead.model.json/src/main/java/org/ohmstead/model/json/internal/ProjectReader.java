// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Fuse;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Price;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.model.json.ProjectFileException;

/** Reads a project from the content of its file. */
public final class ProjectReader {
    private static final String MODE = "field.mode";
    private static final String SUPPLY_VOLTS = "field.supplyVolts";
    private static final String LOAD_OHMS = "field.loadOhms";

    private ProjectReader() {}

    /** Returns the project that a file's outermost object holds. */
    public static Project project(FieldReader in) throws ProjectFileException {
        String title = in.requiredText("title", "field.title");
        Amplifier amplifier = amplifier(in.object("amplifier", "field.amplifier"));
        Bench bench = BenchReader.bench(in.object("bench", "field.bench"));
        List<BenchLoad> loads = in.list("loads", "field.loads", ProjectReader::load);
        List<Step> plan = in.list("plan", "field.plan", ProjectReader::step);
        SheetSettings sheet = sheet(in.object("sheet", "field.sheet"));
        List<SetAside> setAside = in.list("setAside", "field.setAside", ProjectReader::setAside);
        HeatData heat = HeatReader.heat(in.optionalObject("heat", "field.heat"));
        List<CheckStandard> checkStandards =
                in.list("checkStandards", "field.checkStandards", LabReader::checkStandard);
        Optional<SharedLog> sharedLog = LabReader.sharedLog(in.optionalObject("sharedLog", "field.sharedLog"));
        return in.build(() ->
                new Project(title, amplifier, bench, loads, plan, sheet, setAside, heat, checkStandards, sharedLog));
    }

    private static SetAside setAside(FieldReader in) throws ProjectFileException {
        String entryId = in.requiredText("entryId", "field.setAside.entryId");
        String reason = in.requiredText("reason", "field.setAside.reason");
        return in.build(() -> new SetAside(entryId, reason));
    }

    private static Amplifier amplifier(FieldReader in) throws ProjectFileException {
        String maker = in.text("maker");
        String model = in.requiredText("model", "field.amplifier.model");
        String serialNumber = in.text("serialNumber");
        int channelCount = in.whole("channelCount", "field.amplifier.channelCount");
        SupplyType supplyType = in.choice("supplyType", SupplyType.class, "field.amplifier.supplyType");
        List<LowestLoad> lowestLoads = in.list("lowestLoads", "field.amplifier.lowestLoads", ProjectReader::lowestLoad);
        List<Fuse> fuses = in.list("fuses", "field.amplifier.fuses", ProjectReader::fuse);
        OptionalDouble heatSink = in.optionalNumber("heatSinkKelvinPerWatt", "field.amplifier.heatSink");
        List<Rating> ratings = in.list("ratings", "field.amplifier.ratings", ProjectReader::rating);
        String notes = in.text("notes");
        Optional<Price> price = price(in.optionalObject("price", "field.amplifier.price"));
        return in.build(() -> new Amplifier(
                maker,
                model,
                serialNumber,
                channelCount,
                supplyType,
                lowestLoads,
                fuses,
                heatSink,
                ratings,
                notes,
                price));
    }

    private static Optional<Price> price(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        double amount = in.number("amount", "field.price.amount");
        String currency = in.requiredText("currency", "field.price.currency");
        LocalDate on = in.day("on", "field.price.on");
        return Optional.of(in.build(() -> new Price(amount, currency, on)));
    }

    private static LowestLoad lowestLoad(FieldReader in) throws ProjectFileException {
        Mode mode = in.choice("mode", Mode.class, MODE);
        double loadOhms = in.number("loadOhms", LOAD_OHMS);
        return in.build(() -> new LowestLoad(mode, loadOhms));
    }

    private static Fuse fuse(FieldReader in) throws ProjectFileException {
        double ratedAmps = in.number("ratedAmps", "field.fuse.ratedAmps");
        String style = in.text("style");
        String place = in.text("place");
        return in.build(() -> new Fuse(ratedAmps, style, place));
    }

    private static Rating rating(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "field.rating.id");
        PowerKind kind = in.choice("kind", PowerKind.class, "field.rating.kind");
        Mode mode = in.choice("mode", Mode.class, MODE);
        double loadOhms = in.number("loadOhms", LOAD_OHMS);
        double powerWatts = in.number("powerWatts", "field.rating.powerWatts");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        double distortionRatio = in.number("distortionRatio", "field.rating.distortion");
        double frequencyHz = in.number("frequencyHz", "field.rating.frequencyHz");
        String wording = in.text("wording");
        return in.build(() ->
                new Rating(id, kind, mode, loadOhms, powerWatts, supplyVolts, distortionRatio, frequencyHz, wording));
    }

    private static BenchLoad load(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "field.load.id");
        double nominalOhms = in.number("nominalOhms", "field.load.nominalOhms");
        List<LoadBranch> branches = in.list("branches", "field.load.branches", ProjectReader::branch);
        double powerLimitWatts = in.number("powerLimitWatts", "field.load.powerLimitWatts");
        return in.build(() -> new BenchLoad(id, nominalOhms, branches, powerLimitWatts));
    }

    private static LoadBranch branch(FieldReader in) throws ProjectFileException {
        double ohms = in.number("ohms", "field.branch.ohms");
        double uncertainty = in.number("standardUncertaintyOhms", "field.branch.uncertainty");
        double inductance = in.number("inductanceHenries", "field.branch.inductance");
        String network = in.text("network");
        double heating =
                in.optionalNumber("heatingRatio", "field.branch.heating").orElse(0);
        double leads = in.optionalNumber("leadStandardUncertaintyOhms", "field.branch.leads")
                .orElse(0);
        return in.build(() -> new LoadBranch(ohms, uncertainty, inductance, network, heating, leads));
    }

    private static Step step(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "field.step.id");
        Mode mode = in.choice("mode", Mode.class, MODE);
        String loadId = in.requiredText("loadId", "field.step.loadId");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        Stimulus stimulus = StepKinds.stimulus(in.object("stimulus", "field.step.stimulus"));
        EndPoint endPoint = StepKinds.endPoint(in.object("endPoint", "field.step.endPoint"));
        boolean confirmed = in.optionalFlag("belowLowestLoadConfirmed", "field.step.confirmed");
        return in.build(() -> new Step(id, mode, loadId, supplyVolts, stimulus, endPoint, confirmed));
    }

    private static SheetSettings sheet(FieldReader in) throws ProjectFileException {
        String laboratory = in.text("laboratory");
        String preparedBy = in.text("preparedBy");
        double confidence = in.number("confidence", "field.sheet.confidence");
        String remarks = in.text("remarks");
        Optional<VerdictRule> rule = verdictRule(in.optionalObject("verdictRule", "field.sheet.verdictRule"));
        SheetLayout layout = LabReader.layout(in.optionalObject("layout", "field.sheet.layout"));
        return in.build(() -> new SheetSettings(laboratory, preparedBy, confidence, remarks, rule, layout));
    }

    private static Optional<VerdictRule> verdictRule(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        VerdictKind kind = in.choice("kind", VerdictKind.class, "field.rule.kind");
        double risk = in.number("riskRatio", "field.rule.risk");
        return Optional.of(in.build(() -> new VerdictRule(kind, risk)));
    }
}

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
    private static final String MODE = "how the channels meet the load";
    private static final String SUPPLY_VOLTS = "direct volts at the amplifier's terminals above 0, for example 13.5";
    private static final String LOAD_OHMS = "load in ohms above 0, for example 4";

    private ProjectReader() {}

    /** Returns the project that a file's outermost object holds. */
    public static Project project(FieldReader in) throws ProjectFileException {
        String title = in.requiredText("title", "what the project is called");
        Amplifier amplifier = amplifier(in.object("amplifier", "the device under test"));
        Bench bench = BenchReader.bench(in.object("bench", "where and with what the amplifier is tested"));
        List<BenchLoad> loads = in.list("loads", "a load of the bench", ProjectReader::load);
        List<Step> plan = in.list("plan", "a step of the plan", ProjectReader::step);
        SheetSettings sheet = sheet(in.object("sheet", "settings of the results sheet"));
        List<SetAside> setAside =
                in.list("setAside", "a reading left out of curves and verdicts", ProjectReader::setAside);
        HeatData heat = HeatReader.heat(in.optionalObject("heat", "what the forecast of heat needs"));
        List<CheckStandard> checkStandards =
                in.list("checkStandards", "something steady that the bench measures again", LabReader::checkStandard);
        Optional<SharedLog> sharedLog =
                LabReader.sharedLog(in.optionalObject("sharedLog", "where the laboratory's shared log lies"));
        return in.build(() ->
                new Project(title, amplifier, bench, loads, plan, sheet, setAside, heat, checkStandards, sharedLog));
    }

    private static SetAside setAside(FieldReader in) throws ProjectFileException {
        String entryId = in.requiredText("entryId", "the id of the reading's entry in the log");
        String reason = in.requiredText("reason", "why the reading is left out");
        return in.build(() -> new SetAside(entryId, reason));
    }

    private static Amplifier amplifier(FieldReader in) throws ProjectFileException {
        String maker = in.text("maker");
        String model = in.requiredText("model", "the amplifier's model name");
        String serialNumber = in.text("serialNumber");
        int channelCount = in.whole("channelCount", "number of channels, 1 to 16");
        SupplyType supplyType =
                in.choice("supplyType", SupplyType.class, "what the amplifier's converter does with the supply volts");
        List<LowestLoad> lowestLoads =
                in.list("lowestLoads", "the lowest load allowed in a mode", ProjectReader::lowestLoad);
        List<Fuse> fuses = in.list("fuses", "a fuse of the amplifier", ProjectReader::fuse);
        OptionalDouble heatSink = in.optionalNumber(
                "heatSinkKelvinPerWatt", "thermal resistance in kelvin per watt above 0, for example 0.6");
        List<Rating> ratings = in.list("ratings", "a claim of the amplifier's maker", ProjectReader::rating);
        String notes = in.text("notes");
        Optional<Price> price = price(in.optionalObject("price", "what the amplifier cost"));
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
        double amount = in.number("amount", "in units of the currency, for example 249");
        String currency = in.requiredText("currency", "the currency's three letters, for example \"EUR\"");
        LocalDate on = in.day("on", "day for which the price holds");
        return Optional.of(in.build(() -> new Price(amount, currency, on)));
    }

    private static LowestLoad lowestLoad(FieldReader in) throws ProjectFileException {
        Mode mode = in.choice("mode", Mode.class, MODE);
        double loadOhms = in.number("loadOhms", LOAD_OHMS);
        return in.build(() -> new LowestLoad(mode, loadOhms));
    }

    private static Fuse fuse(FieldReader in) throws ProjectFileException {
        double ratedAmps = in.number("ratedAmps", "rated current in amperes above 0, for example 30");
        String style = in.text("style");
        String place = in.text("place");
        return in.build(() -> new Fuse(ratedAmps, style, place));
    }

    private static Rating rating(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "a short name, unique among the ratings");
        PowerKind kind = in.choice("kind", PowerKind.class, "steady tone or burst");
        Mode mode = in.choice("mode", Mode.class, MODE);
        double loadOhms = in.number("loadOhms", LOAD_OHMS);
        double powerWatts = in.number("powerWatts", "rated power in watts above 0, for example 90");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        double distortionRatio =
                in.number("distortionRatio", "distortion that the rating allows as a ratio, 0.01 for 1 %");
        double frequencyHz = in.number("frequencyHz", "test frequency in hertz above 0, for example 1000");
        String wording = in.text("wording");
        return in.build(() ->
                new Rating(id, kind, mode, loadOhms, powerWatts, supplyVolts, distortionRatio, frequencyHz, wording));
    }

    private static BenchLoad load(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "a short name, unique among the loads");
        double nominalOhms = in.number("nominalOhms", "nominal resistance in ohms above 0, for example 4");
        List<LoadBranch> branches = in.list("branches", "one resistance of the load", ProjectReader::branch);
        double powerLimitWatts =
                in.number("powerLimitWatts", "what each branch can take in watts above 0, for example 300");
        return in.build(() -> new BenchLoad(id, nominalOhms, branches, powerLimitWatts));
    }

    private static LoadBranch branch(FieldReader in) throws ProjectFileException {
        double ohms = in.number("ohms", "resistance in ohms above 0, for example 4.02");
        double uncertainty = in.number(
                "standardUncertaintyOhms", "standard uncertainty of the resistance in ohms, for example 0.005");
        double inductance = in.number("inductanceHenries", "series inductance in henries, for example 0.000002, or 0");
        String network = in.text("network");
        double heating = in.optionalNumber(
                        "heatingRatio", "bound on the change of the resistance when hot as a ratio, 0.01 for 1 %")
                .orElse(0);
        double leads = in.optionalNumber(
                        "leadStandardUncertaintyOhms",
                        "standard uncertainty of what leads and contacts add in ohms, for example 0.002")
                .orElse(0);
        return in.build(() -> new LoadBranch(ohms, uncertainty, inductance, network, heating, leads));
    }

    private static Step step(FieldReader in) throws ProjectFileException {
        String id = in.requiredText("id", "a short name, unique in the plan");
        Mode mode = in.choice("mode", Mode.class, MODE);
        String loadId = in.requiredText("loadId", "the id of one of the loads");
        double supplyVolts = in.number("supplyVolts", SUPPLY_VOLTS);
        Stimulus stimulus = StepKinds.stimulus(in.object("stimulus", "what is fed in"));
        EndPoint endPoint = StepKinds.endPoint(in.object("endPoint", "what ends the search for power"));
        boolean confirmed = in.optionalFlag(
                "belowLowestLoadConfirmed", "whether somebody said yes to a load below the lowest allowed");
        return in.build(() -> new Step(id, mode, loadId, supplyVolts, stimulus, endPoint, confirmed));
    }

    private static SheetSettings sheet(FieldReader in) throws ProjectFileException {
        String laboratory = in.text("laboratory");
        String preparedBy = in.text("preparedBy");
        double confidence = in.number("confidence", "the sureness a verdict needs as a ratio, usually 0.95");
        String remarks = in.text("remarks");
        Optional<VerdictRule> rule = verdictRule(in.optionalObject("verdictRule", "how ratings are judged"));
        SheetLayout layout = LabReader.layout(in.optionalObject("layout", "how the sheet looks"));
        return in.build(() -> new SheetSettings(laboratory, preparedBy, confidence, remarks, rule, layout));
    }

    private static Optional<VerdictRule> verdictRule(Optional<FieldReader> present) throws ProjectFileException {
        if (present.isEmpty()) {
            return Optional.empty();
        }
        FieldReader in = present.get();
        VerdictKind kind = in.choice("kind", VerdictKind.class, "which decisions a guard band makes safer");
        double risk = in.number("riskRatio", "highest chance of a wrong decision as a ratio, 0.05 for 5 %");
        return Optional.of(in.build(() -> new VerdictRule(kind, risk)));
    }
}

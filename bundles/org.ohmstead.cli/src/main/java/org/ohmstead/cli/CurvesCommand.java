// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.LoadCurves;
import org.ohmstead.curves.PowerCurve;
import org.ohmstead.curves.PowerPoint;
import org.ohmstead.curves.RatingJudge;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.SaturationCurve;
import org.ohmstead.curves.study.CableModel;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Fits power against supply voltage. */
@Command(
        name = "curves",
        description = {"${bundle:curves.does}", "", "${bundle:curves.more}", "${bundle:curves.more2}", ""},
        footer = {"", "${bundle:curves.example}"})
final class CurvesCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(
            names = "--at",
            paramLabel = "V",
            split = ",",
            defaultValue = "12.0,12.6,13.8,14.4",
            descriptionKey = "curves.at")
    private List<Double> supplyVolts;

    @Option(names = "--load-ohms", paramLabel = "R", descriptionKey = "curves.load-ohms")
    private String loadOhms;

    @Option(names = "--mode", paramLabel = "MODE", defaultValue = "STEREO", descriptionKey = "curves.mode")
    private Mode mode;

    @Option(names = "--read-at-supply", paramLabel = "EFFICIENCY", descriptionKey = "curves.read-at-supply")
    private String readAtSupply;

    @Option(names = "--against", paramLabel = "PROJECT", descriptionKey = "curves.against")
    private Path against;

    @Option(names = "--robust", descriptionKey = "curves.robust")
    private boolean robust;

    CurvesCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (supplyVolts.isEmpty()) {
            throw new InputException(Texts.of("curves.noVolts"));
        }
        for (double volts : supplyVolts) {
            if (!Double.isFinite(volts) || volts <= 0 || volts > 100) {
                throw new InputException(Texts.of("curves.volts", volts));
            }
        }
        ProjectFolder folder = project.open();
        OptionalDouble load = Quantities.optionalPositive(loadOhms, Unit.OHM, "--load-ohms");
        List<LogEntry> entries = entries(folder);
        List<LoadCurve> curves = LoadCurves.fit(
                entries.stream().flatMap(entry -> entry.reading().stream()).toList());
        if (curves.isEmpty()) {
            throw new InputException(Texts.of("curves.none", folder.folder()));
        }
        double confidence = folder.project().sheet().confidence();
        CurveStudies studies = new CurveStudies(
                entries, supplyVolts, robust, new CurveStudies.Wish(load, mode), cable(folder.project()));
        studies.leftOut().forEach(console::message);
        List<String> differences = new ArrayList<>();
        if (against != null) {
            ProjectFolder other = ProjectFolder.open(against);
            CurveStudies others = new CurveStudies(
                    entries(other), supplyVolts, robust, new CurveStudies.Wish(load, mode), cable(other.project()));
            differences.addAll(studies.against(name(folder), others, name(other), confidence));
        }
        SheetSettings settings = folder.project().sheet();
        List<RatingResult> ratings =
                RatingJudge.judge(folder.project().amplifier().ratings(), curves, settings);
        if (json.wanted()) {
            ObjectNode document = document(curves, confidence);
            RatingTable.put(document, ratings, settings);
            document.set("studies", studies.document());
            differences.forEach(document.putArray("differences")::add);
            console.json(document);
        } else {
            print(curves, confidence);
            if (!ratings.isEmpty()) {
                console.line("");
                RatingTable.print(ratings, settings, console);
            }
            studies.print(console, confidence);
            differences.forEach(console::line);
        }
        return ExitCodes.DONE;
    }

    private static List<LogEntry> entries(ProjectFolder folder) throws JobException, TestLogException {
        try (TestLog log = folder.readLog()) {
            return LogTrust.usedEntries(LogTrust.trustedEntries(log), folder.project());
        }
    }

    private static String name(ProjectFolder folder) {
        Path last = folder.folder().toAbsolutePath().normalize().getFileName();
        return last == null ? folder.project().title() : last.toString().replaceAll("\\.ohmstead$", "");
    }

    private Optional<CableModel> cable(Project project) throws InputException {
        if (readAtSupply == null) {
            return Optional.empty();
        }
        double efficiency = Quantities.ratio(readAtSupply, "--read-at-supply");
        if (efficiency <= 0) {
            throw new InputException(Texts.of("curves.efficiency", readAtSupply));
        }
        return Optional.of(new CableModel(
                project.bench().cable().loopOhms(),
                new CableModel.CurrentDraw.ConstantPower(efficiency),
                project.amplifier().channelCount()));
    }

    private void print(List<LoadCurve> curves, double confidence) {
        String volts = supplyVolts.stream()
                .map(each -> Texts.of("curves.columns.power", Texts.number(each)))
                .collect(Collectors.joining("|"));
        TextTable table = TextTable.named("curves.columns", volts);
        for (LoadCurve curve : curves) {
            List<String> cells = new ArrayList<>(List.of(
                    Texts.kind(curve.kind()),
                    Texts.endPoint(curve.endPoint()),
                    Texts.mode(curve.mode()),
                    Texts.number(curve.nominalLoadOhms()),
                    curve.channel()));
            for (double supply : supplyVolts) {
                Estimate power = curve.powerAt(supply);
                cells.add(Texts.fixed(power.value(), 1) + " \u00b1 "
                        + Texts.fixed(power.expandedUncertainty(confidence), 1)
                        + (curve.curve().predict(supply).extrapolated() ? "*" : " "));
            }
            cells.add(Texts.fixed(curve.curve().percentPerVolt(middle(curve)), 1));
            table.row(cells.toArray(String[]::new));
        }
        table.print(console);
        console.line("");
        console.line(Texts.of("curves.intervals", Texts.number(100 * confidence)));
        curves.stream()
                .map(LoadCurve::curve)
                .map(PowerCurve::describe)
                .distinct()
                .limit(1)
                .forEach(console::line);
    }

    private static double middle(LoadCurve curve) {
        return curve.points().stream()
                .mapToDouble(PowerPoint::supplyVolts)
                .average()
                .orElseThrow();
    }

    private ObjectNode document(List<LoadCurve> curves, double confidence) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("confidence", confidence);
        ArrayNode list = root.putArray("curves");
        for (LoadCurve curve : curves) {
            ObjectNode node = list.addObject();
            node.put("kind", curve.kind().name());
            node.put("mode", curve.mode().name());
            node.put("loadOhms", curve.nominalLoadOhms());
            node.put("channel", curve.channel());
            node.put("endPoint", Texts.endPoint(curve.endPoint()));
            node.put("frequencyHz", curve.frequencyHz());
            node.put("model", curve.curve() instanceof SaturationCurve ? "saturation" : "squareLaw");
            node.put("description", curve.curve().describe());
            ArrayNode points = node.putArray("points");
            for (PowerPoint point : curve.points()) {
                points.addObject()
                        .put("supplyVolts", point.supplyVolts())
                        .put("powerWatts", point.powerWatts())
                        .put("standardUncertaintyWatts", curve.totalStandardUncertaintyWatts(point));
            }
            ArrayNode predictions = node.putArray("predictions");
            for (double volts : supplyVolts) {
                Estimate power = curve.powerAt(volts);
                predictions
                        .addObject()
                        .put("supplyVolts", volts)
                        .put("powerWatts", power.value())
                        .put("standardUncertaintyWatts", power.standardUncertainty())
                        .put("expandedUncertaintyWatts", power.expandedUncertainty(confidence))
                        .put("extrapolated", curve.curve().predict(volts).extrapolated());
            }
        }
        return root;
    }
}

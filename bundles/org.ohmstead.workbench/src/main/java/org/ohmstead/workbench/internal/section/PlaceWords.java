// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Meter;
import org.ohmstead.model.Part;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Step;

/** Says a place of the project in plain words: {@code $.amplifier.ratings[0].powerWatts} is "Rating 4-ohm, power". */
final class PlaceWords {
    private static final Map<String, String> FIELDS = Map.ofEntries(
            Map.entry("powerWatts", "power"),
            Map.entry("loadOhms", "load"),
            Map.entry("loadId", "load"),
            Map.entry("supplyVolts", "supply volts"),
            Map.entry("distortionRatio", "distortion"),
            Map.entry("frequencyHz", "frequency"),
            Map.entry("ratedAmps", "rated current"),
            Map.entry("heatSinkKelvinPerWatt", "heat sink"),
            Map.entry("ambientCelsius", "air temperature"),
            Map.entry("lowestVolts", "lowest output"),
            Map.entry("highestVolts", "highest output"),
            Map.entry("currentLimitAmps", "current limit"),
            Map.entry("crossSectionSquareMillimetres", "cross-section"),
            Map.entry("loopMetres", "loop length"),
            Map.entry("measuredLoopOhms", "measured loop resistance"),
            Map.entry("accuracy.readingRatio", "share of reading"),
            Map.entry("accuracy.fixed", "fixed part"),
            Map.entry("accuracy.resolution", "resolution"),
            Map.entry("accuracy.coverageFactor", "coverage factor"),
            Map.entry("stability.certificateExpandedRatio", "certificate uncertainty"),
            Map.entry("stability.certificateCoverageFactor", "certificate coverage factor"),
            Map.entry("stability.driftRatioPerYear", "drift"),
            Map.entry("stability.temperatureRatioPerKelvin", "temperature coefficient"),
            Map.entry("stability.fromCelsius", "lowest temperature"),
            Map.entry("stability.toCelsius", "highest temperature"),
            Map.entry("repeatability.ratio", "repeatability"),
            Map.entry("repeatability.degreesOfFreedom", "degrees of freedom"),
            Map.entry("repeatability.origin", "origin of the repeatability"),
            Map.entry("price.amount", "price"),
            Map.entry("price.currency", "currency"),
            Map.entry("price.on", "day of the price"),
            Map.entry("layout.design", "design"),
            Map.entry("layout.paper", "paper"),
            Map.entry("layout.address", "address"),
            Map.entry("layout.contact", "contact"),
            Map.entry("layout.accreditation", "accreditation"),
            Map.entry("layout.logoFile", "logo"),
            Map.entry("layout.comparedProjects", "compared projects"),
            Map.entry("layout.comparedPeriods", "compared periods"),
            Map.entry("verdictRule.kind", "verdict rule"),
            Map.entry("verdictRule.riskRatio", "risk of a wrong verdict"),
            Map.entry("stepId", "source of the values"),
            Map.entry("figureId", "figure"),
            Map.entry("baselineCount", "first values"),
            Map.entry("significanceRatio", "false alarms"),
            Map.entry("referenceValue", "true value"),
            Map.entry("referenceStandardUncertainty", "uncertainty of the true value"),
            Map.entry("everyDays", "interval"),
            Map.entry("host", "server"),
            Map.entry("bench", "name of the bench"),
            Map.entry("certificateFile", "certificate file"),
            Map.entry("calibratedOn", "calibration day"),
            Map.entry("calibrationDueOn", "calibration due"),
            Map.entry("ohms", "resistance"),
            Map.entry("toleranceRatio", "tolerance"),
            Map.entry("ratedWatts", "rated power"),
            Map.entry("ratedToCelsius", "rated up to"),
            Map.entry("zeroPowerCelsius", "no power at"),
            Map.entry("nominalOhms", "nominal value"),
            Map.entry("powerLimitWatts", "power limit"),
            Map.entry("standardUncertaintyOhms", "uncertainty"),
            Map.entry("inductanceHenries", "inductance"),
            Map.entry("heatingRatio", "change when hot"),
            Map.entry("leadStandardUncertaintyOhms", "uncertainty of the leads"),
            Map.entry("belowLowestLoadConfirmed", "low load confirmed"),
            Map.entry("stimulus.kind", "stimulus"),
            Map.entry("stimulus.frequencyHz", "tone"),
            Map.entry("endPoint.kind", "end point"),
            Map.entry("endPoint.ratio", "distortion limit"),
            Map.entry("endPoint.measure", "distortion figure"),
            Map.entry("endPoint.driveDb", "end level"),
            Map.entry("traits", "what else is known"),
            Map.entry("stimulus.onSeconds", "burst length"),
            Map.entry("stimulus.periodSeconds", "burst period"),
            Map.entry("stimulus.lowLevelDb", "level between bursts"));

    /** The columns of what lies deeper in the file than in the table, by the path within the row. */
    private static final Map<String, String> COLUMNS = Map.of(
            "traits.measured", "measured",
            "traits.temperatureCoefficientPerKelvin", "drift",
            "traits.inductanceHenries", "inductanceHenries",
            "traits.sinkKelvinPerWatt", "caseToAir",
            "traits.elementKelvinPerWatt", "wireToCase",
            "traits.pulseRule", "shortOverload",
            "traits.pulseRule.overloadRatio", "shortOverload",
            "traits.pulseRule.durationSeconds", "shortOverload");

    private static final String TRAITS = "traits.";

    private PlaceWords() {}

    /** Returns the words for a place; a file's name is returned as it is. */
    static String of(String where, Project project) {
        Optional<ProjectPath> parsed = ProjectPath.parse(where);
        if (parsed.isEmpty()) {
            return where;
        }
        ProjectPath path = parsed.get();
        return switch (path.name(0)) {
            case "" -> "Project";
            case "title" -> "Project, title";
            case "amplifier" -> amplifier(path, project);
            case "bench" -> bench(path, project);
            case "loads" -> load(path, project);
            case "plan" -> row("Step", "Plan", path, 0, project.plan(), Step::id);
            case "checkStandards" -> row(
                    "Check standard", "Check standards", path, 0, project.checkStandards(), CheckStandard::id);
            case "sharedLog" -> withField("Shared log", path.rest(1));
            case "sheet" -> withField("Results sheet", path.rest(1));
            default -> withField("Project file", path.rest(0));
        };
    }

    /** Returns what a field of the file, or a column of a table, is called on the screen. */
    static String field(String name) {
        String column = column(name);
        return FIELDS.getOrDefault(column, spaced(column));
    }

    /**
     * Returns the id of the column that shows a field of a row; most have the field's own name. What else is known of a part is found with
     * and without the {@code traits} that it lies in.
     */
    static String column(String field) {
        return COLUMNS.getOrDefault(field, COLUMNS.getOrDefault(TRAITS + field, field));
    }

    private static String amplifier(ProjectPath path, Project project) {
        return switch (path.name(1)) {
            case "ratings" -> row(
                    "Rating", "Ratings", path, 1, project.amplifier().ratings(), Rating::id);
            case "fuses" -> numbered("Fuse", path);
            case "lowestLoads" -> row(
                    "Lowest load",
                    "Lowest loads",
                    path,
                    1,
                    project.amplifier().lowestLoads(),
                    low -> Words.of(low.mode()));
            default -> withField("Amplifier", path.rest(1));
        };
    }

    private static String bench(ProjectPath path, Project project) {
        return switch (path.name(1)) {
            case "meters" -> row("Meter", "Meters", path, 1, project.bench().meters(), Meter::id);
            case "parts" -> row("Part", "Parts stock", path, 1, project.bench().parts(), Part::id);
            case "supply" -> withField("Supply", path.rest(2));
            case "cable" -> withField("Supply cable", path.rest(2));
            default -> withField("Bench", path.rest(1));
        };
    }

    private static String load(ProjectPath path, Project project) {
        if (path.name(1).equals("branches") && path.index(1) >= 0) {
            int index = path.index(0);
            String load = index >= 0 && index < project.loads().size()
                    ? project.loads().get(index).id()
                    : Integer.toString(index + 1);
            return withField("Load " + load + ", branch " + (path.index(1) + 1), path.rest(2));
        }
        return row("Load", "Loads", path, 0, project.loads(), BenchLoad::id);
    }

    private static <R> String row(
            String one, String many, ProjectPath path, int depth, List<R> rows, Function<R, String> name) {
        int index = path.index(depth);
        if (index < 0) {
            return many;
        }
        String which = index < rows.size() ? name.apply(rows.get(index)) : Integer.toString(index + 1);
        return withField(one + " " + which, path.rest(depth + 1));
    }

    private static String numbered(String one, ProjectPath path) {
        int index = path.index(1);
        return index < 0 ? one + "s" : withField(one + " " + (index + 1), path.rest(2));
    }

    private static String withField(String place, String field) {
        return field.isEmpty() ? place : place + ", " + field(field);
    }

    private static String spaced(String name) {
        return name.replace('.', ' ').replaceAll("(?<=[a-z0-9])([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }
}

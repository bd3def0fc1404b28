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
            case "" -> Texts.text("place.project");
            case "title" -> Texts.text("place.title");
            case "amplifier" -> amplifier(path, project);
            case "bench" -> bench(path, project);
            case "loads" -> load(path, project);
            case "plan" -> row("place.step", "place.steps", path, 0, project.plan(), Step::id);
            case "checkStandards" ->
                row("place.check", "place.checks", path, 0, project.checkStandards(), CheckStandard::id);
            case "sharedLog" -> withField(Texts.text("place.sharedlog"), path.rest(1));
            case "sheet" -> withField(Texts.text("place.sheet"), path.rest(1));
            default -> withField(Texts.text("place.file"), path.rest(0));
        };
    }

    /** Returns what a field of the file, or a column of a table, is called on the screen; one that has no words keeps its name. */
    static String field(String name) {
        String column = column(name);
        return Texts.find("field." + column).orElseGet(() -> spaced(column));
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
            case "ratings" ->
                row(
                        "place.rating",
                        "place.ratings",
                        path,
                        1,
                        project.amplifier().ratings(),
                        Rating::id);
            case "fuses" -> row("place.fuse", "place.fuses", path, 1, List.of(), fuse -> "");
            case "lowestLoads" ->
                row(
                        "place.lowest",
                        "place.lowests",
                        path,
                        1,
                        project.amplifier().lowestLoads(),
                        low -> Words.of(low.mode()));
            default -> withField(Texts.text("place.amplifier"), path.rest(1));
        };
    }

    private static String bench(ProjectPath path, Project project) {
        return switch (path.name(1)) {
            case "meters" ->
                row("place.meter", "place.meters", path, 1, project.bench().meters(), Meter::id);
            case "parts" ->
                row("place.part", "place.parts", path, 1, project.bench().parts(), Part::id);
            case "supply" -> withField(Texts.text("place.supply"), path.rest(2));
            case "cable" -> withField(Texts.text("place.cable"), path.rest(2));
            default -> withField(Texts.text("place.bench"), path.rest(1));
        };
    }

    private static String load(ProjectPath path, Project project) {
        if (path.name(1).equals("branches") && path.index(1) >= 0) {
            int index = path.index(0);
            String load = index >= 0 && index < project.loads().size()
                    ? project.loads().get(index).id()
                    : Integer.toString(index + 1);
            return withField(Texts.text("place.branch", load, Integer.toString(path.index(1) + 1)), path.rest(2));
        }
        return row("place.load", "place.loads", path, 0, project.loads(), BenchLoad::id);
    }

    private static <R> String row(
            String one, String many, ProjectPath path, int depth, List<R> rows, Function<R, String> name) {
        int index = path.index(depth);
        if (index < 0) {
            return Texts.text(many);
        }
        String which = index < rows.size() ? name.apply(rows.get(index)) : Integer.toString(index + 1);
        return withField(Texts.text(one, which), path.rest(depth + 1));
    }

    private static String withField(String place, String field) {
        return field.isEmpty() ? place : Texts.text("place.field", place, field(field));
    }

    private static String spaced(String name) {
        return name.replace('.', ' ').replaceAll("(?<=[a-z0-9])([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }
}

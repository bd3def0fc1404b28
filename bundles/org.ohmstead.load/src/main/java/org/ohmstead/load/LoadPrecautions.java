// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Part;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.SupplyType;
import org.ohmstead.units.text.Messages;

/**
 * What is to be said about a step's load before the amplifier is switched on: too small for the power or for so long, hot to the touch,
 * below what the maker allows, of a wrong value, no resistance any more at the frequency, or made of parts that are not there.
 *
 * <p>Networks are read as {@link NetworkNotation} does with the bench's parts; a bare value that only one kind of part has stands for that
 * part.
 */
public final class LoadPrecautions {
    private static final Messages TEXTS = Messages.of(LoadPrecautions.class);

    private static final double SAME_LOAD_RATIO = 0.05;
    private static final double ROUNDING = 1e-9;

    private LoadPrecautions() {}

    /**
     * Looks at a step's load.
     *
     * @param project the test that the step belongs to
     * @param step which step
     * @param wattsPerBranch power expected in each branch of the load in watts, during the burst where the stimulus is one; above 0. When
     *     empty it comes from the ratings of the same mode and load, raised with the square of the supply volts where the step's are higher
     *     and nothing holds the rails.
     * @return what is wrong, in no particular order; empty when all is well
     */
    public static List<Problem> check(Project project, Step step, OptionalDouble wattsPerBranch) {
        Checks.present(project, "project");
        Checks.present(step, "step");
        wattsPerBranch.ifPresent(value -> Checks.positive(value, "wattsPerBranch"));
        int stepIndex = project.plan().indexOf(step);
        String stepPath = stepIndex < 0 ? "$.plan" : "$.plan[" + stepIndex + "]";
        int loadIndex = IntStream.range(0, project.loads().size())
                .filter(i -> project.loads().get(i).id().equals(step.loadId()))
                .findFirst()
                .orElse(-1);
        if (loadIndex < 0) {
            return List.of(new Problem(
                    Severity.ERROR,
                    stepPath + ".loadId",
                    TEXTS.text("load.missing", step.id(), step.loadId()),
                    TEXTS.text("load.missingRemedy")));
        }
        BenchLoad load = project.loads().get(loadIndex);
        String loadPath = "$.loads[" + loadIndex + "]";
        List<Problem> problems = new ArrayList<>();
        belowLowest(project, step, load, stepPath, problems);
        OptionalDouble watts = wattsPerBranch.isPresent() ? wattsPerBranch : expectedWatts(project, step, load);
        if (watts.isEmpty()) {
            problems.add(new Problem(
                    Severity.NOTE,
                    stepPath,
                    TEXTS.text("load.unpowered", step.id()),
                    TEXTS.text("load.unpoweredRemedy")));
        }
        int branches = step.mode() == Mode.STEREO
                ? Math.min(load.branches().size(), project.amplifier().channelCount())
                : 1;
        Map<String, Integer> used = new LinkedHashMap<>();
        for (int branch = 0; branch < branches; branch++) {
            // What is wrong with two branches that are alike is said once.
            boolean said = load.branches().indexOf(load.branches().get(branch)) < branch;
            List<Problem> found = said ? new ArrayList<>() : problems;
            BranchCheck check = new BranchCheck(project, step, load, branch, loadPath, found);
            check.run(watts).ifPresent(network -> network.resistors()
                    .forEach(resistor -> used.merge(resistor.id(), 1, Integer::sum)));
        }
        pieces(project, load, used, branches, loadPath, problems);
        return List.copyOf(problems);
    }

    /**
     * Returns the power in watts to expect in each branch of a load, from the amplifier's ratings of the same mode and load within 5 %; the
     * highest of those of the step's kind of power or, without any, of the others. Empty without a rating.
     *
     * @param project the test
     * @param step its step
     * @param load the step's load
     */
    public static OptionalDouble expectedWatts(Project project, Step step, BenchLoad load) {
        PowerKind kind = step.stimulus().powerKind();
        List<Rating> ratings = project.amplifier().ratings().stream()
                .filter(rating -> rating.mode() == step.mode())
                .filter(rating ->
                        Math.abs(load.nominalOhms() - rating.loadOhms()) < SAME_LOAD_RATIO * rating.loadOhms())
                .toList();
        boolean sameKind = ratings.stream().anyMatch(rating -> rating.kind() == kind);
        boolean held = project.amplifier().supplyType() == SupplyType.REGULATED;
        return ratings.stream()
                .filter(rating -> !sameKind || rating.kind() == kind)
                .mapToDouble(rating -> {
                    double ratio = held ? 1 : Math.max(1, step.supplyVolts() / rating.supplyVolts());
                    return rating.powerWatts() * ratio * ratio;
                })
                .max();
    }

    private static void belowLowest(
            Project project, Step step, BenchLoad load, String stepPath, List<Problem> problems) {
        OptionalDouble lowest = project.amplifier().lowestLoadOhms(step.mode());
        if (lowest.isEmpty()) {
            return;
        }
        double measured = load.branches().get(0).ohms();
        boolean nominalBelow = load.nominalOhms() < lowest.getAsDouble() * (1 - ROUNDING);
        if (!nominalBelow && measured >= lowest.getAsDouble() * (1 - SAME_LOAD_RATIO)) {
            return;
        }
        String ohms = Figures.four(nominalBelow ? load.nominalOhms() : measured);
        problems.add(new Problem(
                step.belowLowestLoadConfirmed() ? Severity.WARNING : Severity.ERROR,
                stepPath + ".belowLowestLoadConfirmed",
                TEXTS.text("load.belowLowest", step.id(), ohms, Figures.four(lowest.getAsDouble())),
                step.belowLowestLoadConfirmed()
                        ? TEXTS.text("load.belowLowestConfirmed")
                        : TEXTS.text("load.belowLowestRemedy")));
    }

    private static void pieces(
            Project project,
            BenchLoad load,
            Map<String, Integer> used,
            int branches,
            String loadPath,
            List<Problem> problems) {
        for (Part part : project.bench().parts()) {
            int pieces = used.getOrDefault(part.id(), 0);
            if (pieces > part.count()) {
                problems.add(new Problem(
                        Severity.ERROR,
                        loadPath + ".branches",
                        TEXTS.text(
                                branches > 1 ? "load.piecesTogether" : "load.pieces",
                                load.id(),
                                Integer.toString(pieces),
                                part.id(),
                                Integer.toString(part.count()),
                                Integer.toString(branches)),
                        TEXTS.text("load.piecesRemedy")));
            }
        }
    }
}

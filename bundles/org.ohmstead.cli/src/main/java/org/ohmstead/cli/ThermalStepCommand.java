// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.Step;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.HeatAnswer;
import org.ohmstead.thermal.HeatEstimate;
import org.ohmstead.thermal.StepDemand;
import org.ohmstead.thermal.StepHeat;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.thermal.SupplyWaveform;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Heat, current and limits of one step. */
@Command(
        name = "step",
        description = {
            "Work out one step: what turns into heat, what flows from the supply, what arrives at the terminals, what"
                    + " the fuse makes of it, how hot it gets, and for how long it may go on.",
            "",
            "Either a step of a project's plan, or one that the options describe. Ranges such as 0.4..0.6 are carried"
                    + " through; limits are judged at their hot end.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when a step without a project cannot go on for ever, or one of a project not for as long as"
                    + " its signal is on: too hot, or too much for fuse, cable or supply.",
            "Example: ohmstead thermal step kestrel.ohmstead stereo-4ohm --from-log",
            "Example: ohmstead thermal step --supply-volts 14.4 --load-ohms 4 --watts 75 --class ab --rail-volts 28"
                    + " --idle-watts 15 --case-kelvin-per-watt 0.45 --case-joules-per-kelvin 2500 --case-limit-celsius 80"
                    + " --square-millimetres 25 --metres 3 --rated-amps 30 --count 2"
        })
final class ThermalStepCommand implements Callable<Integer> {
    private static final double LONGEST_SECONDS = 1e6;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(
            arity = "0..1",
            index = "0",
            paramLabel = "PROJECT",
            description = "The project's folder or its project.json.")
    private Path project;

    @Parameters(arity = "0..1", index = "1", paramLabel = "STEP", description = "The step of its plan.")
    private String stepId;

    @Option(
            names = "--from-log",
            description = "Take the powers of a project's steps from its log's readings where there are some.")
    private boolean fromLog;

    @Mixin
    private StepOptions step;

    @Option(
            names = "--duty-period-seconds",
            paramLabel = "S",
            defaultValue = "600",
            description = "Period of switching on and off for which the duty is stated (default ${DEFAULT-VALUE}).")
    private String dutyPeriod;

    @Mixin
    private SourceOptions source;

    @Mixin
    private CableOptions cable;

    @Mixin
    private FuseOptions fuses;

    @Mixin
    private ThermalAirOption air;

    ThermalStepCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double period = Quantities.within(dutyPeriod, Unit.SECOND, 1, LONGEST_SECONDS, "--duty-period-seconds");
        return project == null ? free(period) : planned(period);
    }

    private Integer planned(double dutyPeriodSeconds) throws Exception {
        if (step.given()) {
            throw new InputException("Both a project and options of a step are given; leave the one or the other out.");
        }
        ProjectFolder folder = ProjectFolder.open(project);
        if (stepId == null) {
            throw new InputException("The step is missing. Name it after the project; the steps are "
                    + Texts.some(folder.project().plan().stream().map(Step::id).toList()) + ".");
        }
        PlanForecast forecast = ThermalPlanCommand.forecast(folder, fromLog);
        boolean holds = new PlannedStepStudy(forecast, stepId, dutyPeriodSeconds).show(console, json.wanted());
        return holds ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private Integer free(double period) throws Exception {
        if (fromLog) {
            throw new InputException("--from-log needs a project; name one and its step.");
        }
        StepDemand demand = step.demand();
        AmplifierHeat facts = step.facts();
        double ambientCelsius = air.celsius();
        StepSupply.Side side = side(ambientCelsius);
        HeatEstimate heat = StepHeat.of(facts, demand);
        StepSupply supply = StepSupply.of(demand, heat, side);
        Optional<StepLimits> limits = StepLimits.of(facts, demand, heat, ambientCelsius, period);
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        Figures figures = new Figures(root);
        fill(figures, demand, heat, supply);
        limits.ifPresent(found -> temperatures(figures, found));
        List<String> sentences = new ArrayList<>();
        supply.fuse().ifPresent(answer -> {
            sentences.addAll(ThermalFuseCommand.sentences(side.fuses().orElseThrow(), answer));
            root.set("fuse", ThermalFuseCommand.node(answer));
        });
        limits.ifPresent(found -> sentences.addAll(answers(root, found)));
        List<String> notes = notes(heat, side, limits);
        if (json.wanted()) {
            notes.forEach(root.putArray("notes")::add);
            supply.faults().forEach(root.putArray("faults")::add);
            Cautions.put(root, cautions(side));
            console.json(root);
        } else {
            figures.print(console);
            console.line("");
            sentences.forEach(console::line);
            notes.forEach(console::line);
            Cautions.print(console, cautions(side));
        }
        return judge(supply, limits);
    }

    private StepSupply.Side side(double ambientCelsius) throws InputException {
        Optional<CableLead> lead = cable.given() ? Optional.of(cable.lead()) : Optional.empty();
        Optional<FuseBank> bank = fuses.given() ? Optional.of(fuses.bank()) : Optional.empty();
        return new StepSupply.Side(
                source.source(step.openVolts()),
                lead,
                bank,
                step.direct() ? SupplyWaveform.RECTIFIED_SINE : SupplyWaveform.SMOOTH,
                ambientCelsius);
    }

    private static void fill(Figures figures, StepDemand demand, HeatEstimate heat, StepSupply supply) {
        boolean bursts = demand.drive() instanceof Drive.Burst;
        String average = bursts ? ", on average" : "";
        figures.add("output of all loads" + average, "outputWatts", heat.outputWatts(), "W");
        figures.add("heat in the amplifier" + average, "heatWatts", heat.heatWatts(), "W");
        if (bursts) {
            figures.add("heat during a burst", "loudHeatWatts", heat.loudHeatWatts(), "W");
        }
        figures.add("taken from the supply" + average, "supplyWatts", heat.supplyWatts(), "W");
        figures.words("from", "basis", basis(heat.basis()));
        supply.current().ifPresent(current -> {
            figures.add("supply current, average", "supplyAverageAmps", current.averageAmps(), "A");
            figures.add("supply current, RMS", "supplyRmsAmps", current.rmsAmps(), "A");
            figures.add("supply current, peak", "supplyPeakAmps", current.peakAmps(), "A");
        });
        supply.delivered()
                .ifPresent(delivered -> figures.add(
                        "volts at the amplifier" + (bursts ? " during a burst" : ""),
                        "terminalVolts",
                        delivered.terminalVolts(),
                        "V"));
        supply.cable().ifPresent(settled -> {
            figures.add("wire of the cable in the end", "cableCelsius", settled.conductorCelsius(), "\u00b0C");
            figures.add("lost in the cable", "cableWatts", settled.lossWatts(), "W");
        });
    }

    private static void temperatures(Figures figures, StepLimits limits) {
        for (StepLimits.Temperature temperature : limits.temperatures()) {
            figures.celsius(
                    temperature.point().name() + " in the end",
                    temperature.point().id() + "Celsius",
                    temperature.celsius());
        }
    }

    private static List<String> answers(ObjectNode root, StepLimits limits) {
        List<String> sentences = new ArrayList<>();
        limits.onTime().ifPresent(answer -> sentences.add("From cold: " + sentence(root, "onTime", answer)));
        limits.duty()
                .ifPresent(answer -> sentences.add("On and off again and again: " + sentence(root, "duty", answer)));
        limits.continuousHeatWatts()
                .map(StepLimits::ofOneWatt)
                .ifPresent(answer -> sentences.add(
                        "Heat that may go on for ever: " + sentence(root, "continuousHeatWatts", answer)));
        return sentences;
    }

    /** Puts an answer into a document and returns it as a sentence. */
    static String sentence(ObjectNode root, String name, HeatAnswer answer) {
        ObjectNode node = root.putObject(name);
        answer.value().ifPresent(value -> node.put("value", value));
        node.put("unlimited", answer instanceof HeatAnswer.Unlimited);
        if (answer instanceof HeatAnswer.Impossible impossible) {
            node.put("remedy", impossible.remedy());
            node.put("sentence", impossible.sentence());
            return impossible.sentence() + " " + impossible.remedy();
        }
        node.put("sentence", answer.sentence());
        return answer.sentence();
    }

    private static List<String> notes(HeatEstimate heat, StepSupply.Side side, Optional<StepLimits> limits) {
        List<String> notes = new ArrayList<>(heat.remarks());
        side.lead().ifPresent(lead -> notes.addAll(lead.notes()));
        notes.add("The supply current is taken as " + side.waveform().words() + ".");
        if (limits.isEmpty()) {
            notes.add("How hot it gets is not told: give --case-kelvin-per-watt, from the maker, the word thermal sink"
                    + " or a logged warm-up.");
        } else if (limits.get().continuousHeatWatts().isEmpty()) {
            notes.add("No limit is given, so none is judged: give --case-limit-celsius or --device-limit-celsius.");
        } else if (limits.get().onTime().isEmpty()) {
            notes.add("For how long it may be on is not told: give --case-joules-per-kelvin.");
        }
        return notes;
    }

    private List<String> cautions(StepSupply.Side side) {
        List<String> cautions = new ArrayList<>(List.of(SupplyCautions.hotParts()));
        side.lead().ifPresent(lead -> cautions.add(SupplyCautions.cables()));
        side.fuses().ifPresent(bank -> cautions.add(SupplyCautions.fuses()));
        if (source.battery()) {
            cautions.add(SupplyCautions.batteries());
        }
        cautions.add(SupplyCautions.wiring());
        return cautions;
    }

    private Integer judge(StepSupply supply, Optional<StepLimits> limits) {
        supply.faults().forEach(console::message);
        Optional<StepLimits.Temperature> hot = limits.flatMap(StepLimits::tooHot);
        hot.ifPresent(temperature ->
                console.message("For ever the " + temperature.point().name() + " would get to "
                        + Texts.range(temperature.celsius(), 0) + " \u00b0C, above its "
                        + Texts.number(temperature.point().limitCelsius().orElseThrow())
                        + " \u00b0C. Keep the step short and let it cool, use a fan, or lower the level."));
        return supply.faults().isEmpty() && hot.isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private static String basis(HeatEstimate.Basis basis) {
        return switch (basis) {
            case MEASURED -> "the input power given";
            case RAILS -> "the rails";
            case MOST_POWER -> "the most unclipped power";
            case COMMON_PRACTICE -> "usual efficiencies";
        };
    }
}

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
        description = {"${bundle:thermal.step.does}", "", "${bundle:thermal.step.more}", ""},
        footer = {"", "${bundle:thermal.step.exit}", "${bundle:thermal.step.example}", "${bundle:thermal.step.example2}"
        })
final class ThermalStepCommand implements Callable<Integer> {
    private static final double LONGEST_SECONDS = 1e6;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(arity = "0..1", index = "0", paramLabel = "PROJECT", descriptionKey = "thermal.step.PROJECT")
    private Path project;

    @Parameters(arity = "0..1", index = "1", paramLabel = "STEP", descriptionKey = "thermal.step.STEP")
    private String stepId;

    @Option(names = "--from-log", descriptionKey = "thermal.step.from-log")
    private boolean fromLog;

    @Mixin
    private StepOptions step;

    @Option(
            names = "--duty-period-seconds",
            paramLabel = "S",
            defaultValue = "600",
            descriptionKey = "thermal.step.duty-period-seconds")
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
            throw new InputException(Texts.of("step.both"));
        }
        ProjectFolder folder = ProjectFolder.open(project);
        if (stepId == null) {
            throw new InputException(Texts.of(
                    "step.noStep",
                    Texts.some(folder.project().plan().stream().map(Step::id).toList())));
        }
        PlanForecast forecast = ThermalPlanCommand.forecast(folder, fromLog);
        boolean holds = new PlannedStepStudy(forecast, stepId, dutyPeriodSeconds).show(console, json.wanted());
        return holds ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private Integer free(double period) throws Exception {
        if (fromLog) {
            throw new InputException(Texts.of("step.fromLog"));
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
        String average = bursts ? "Average" : "";
        figures.add(Texts.of("figure.output" + average), "outputWatts", heat.outputWatts(), "W");
        figures.add(Texts.of("figure.heat" + average), "heatWatts", heat.heatWatts(), "W");
        if (bursts) {
            figures.add(Texts.of("figure.burstHeat"), "loudHeatWatts", heat.loudHeatWatts(), "W");
        }
        figures.add(Texts.of("figure.supply" + average), "supplyWatts", heat.supplyWatts(), "W");
        figures.words(Texts.of("figure.from"), "basis", basis(heat.basis()));
        supply.current().ifPresent(current -> {
            figures.add(Texts.of("figure.currentAverage"), "supplyAverageAmps", current.averageAmps(), "A");
            figures.add(Texts.of("figure.currentRms"), "supplyRmsAmps", current.rmsAmps(), "A");
            figures.add(Texts.of("figure.currentPeak"), "supplyPeakAmps", current.peakAmps(), "A");
        });
        supply.delivered()
                .ifPresent(delivered -> figures.add(
                        Texts.of(bursts ? "figure.terminalVolts.burst" : "figure.terminalVolts"),
                        "terminalVolts",
                        delivered.terminalVolts(),
                        "V"));
        supply.cable().ifPresent(settled -> {
            figures.add(Texts.of("figure.wire"), "cableCelsius", settled.conductorCelsius(), "\u00b0C");
            figures.add(Texts.of("figure.cableDrop"), "cableWatts", settled.lossWatts(), "W");
        });
    }

    private static void temperatures(Figures figures, StepLimits limits) {
        for (StepLimits.Temperature temperature : limits.temperatures()) {
            figures.celsius(
                    Texts.of("figure.inTheEnd", temperature.point().name()),
                    temperature.point().id() + "Celsius",
                    temperature.celsius());
        }
    }

    private static List<String> answers(ObjectNode root, StepLimits limits) {
        List<String> sentences = new ArrayList<>();
        limits.onTime().ifPresent(answer -> sentences.add(Texts.of("answer.cold", sentence(root, "onTime", answer))));
        limits.duty().ifPresent(answer -> sentences.add(Texts.of("answer.duty", sentence(root, "duty", answer))));
        limits.continuousHeatWatts()
                .map(StepLimits::ofOneWatt)
                .ifPresent(answer ->
                        sentences.add(Texts.of("answer.heat", sentence(root, "continuousHeatWatts", answer))));
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
        notes.add(Texts.of("step.waveform", side.waveform().words()));
        if (limits.isEmpty()) {
            notes.add(Texts.of("step.noResistance"));
        } else if (limits.get().continuousHeatWatts().isEmpty()) {
            notes.add(Texts.of("step.noLimit"));
        } else if (limits.get().onTime().isEmpty()) {
            notes.add(Texts.of("step.noCapacity"));
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
        hot.ifPresent(temperature -> console.message(Texts.of(
                "step.tooHot",
                temperature.point().name(),
                Texts.range(temperature.celsius(), 0),
                Texts.number(temperature.point().limitCelsius().orElseThrow()))));
        return supply.faults().isEmpty() && hot.isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private static String basis(HeatEstimate.Basis basis) {
        return Texts.of("basis." + basis.name());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.thermal.CableCurrent;
import org.ohmstead.thermal.CableDuration;
import org.ohmstead.thermal.CableHeating;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.ConductorSize;
import org.ohmstead.thermal.ConductorTable;
import org.ohmstead.thermal.SupplyAnswer;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.thermal.SupplyDemand;
import org.ohmstead.thermal.SupplyFeed;
import org.ohmstead.thermal.SupplyNoSolution;
import org.ohmstead.thermal.SupplySource;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a supply cable does with a current. */
@Command(
        name = "cable",
        description = {"${bundle:thermal.cable.does}", "", "${bundle:thermal.cable.more}", ""},
        footer = {"", "${bundle:thermal.cable.exit}", "${bundle:thermal.cable.example}"})
final class ThermalCableCommand implements Callable<Integer> {
    private static final double COLD_CELSIUS = 20;
    private static final double MOST_AMPS = 10_000;
    private static final double MOST_WATTS = 100_000;
    private static final double MOST_VOLTS = 1000;
    private static final double MILLI = 1000;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private CableOptions cable;

    @Mixin
    private ThermalAirOption air;

    @Option(names = "--amps", paramLabel = "I", descriptionKey = "thermal.cable.amps")
    private String amps;

    @Option(names = "--watts", paramLabel = "P", descriptionKey = "thermal.cable.watts")
    private String watts;

    @Option(names = "--supply-volts", paramLabel = "U", descriptionKey = "thermal.cable.supply-volts")
    private String supplyVolts;

    ThermalCableCommand(Console console) {
        this.console = console;
    }

    /** What the current is, or why there is none. */
    private record Flow(OptionalDouble amps, OptionalDouble supplyVolts, Optional<SupplyNoSolution> none) {}

    /** All answers about one cable and current. */
    private record Answers(
            Flow flow, Optional<CableHeating> heating, Optional<CableDuration> duration, CableCurrent continuous) {
        Optional<SupplyNoSolution> none() {
            return flow.none()
                    .or(() -> continuous instanceof SupplyNoSolution none ? Optional.of(none) : Optional.empty())
                    .or(() -> heating.orElse(null) instanceof SupplyNoSolution none
                            ? Optional.of(none)
                            : Optional.empty())
                    .or(() -> duration.orElse(null) instanceof SupplyNoSolution none
                            ? Optional.of(none)
                            : Optional.empty());
        }

        Optional<CableHeating.Settled> settled() {
            return heating.orElse(null) instanceof CableHeating.Settled settled
                    ? Optional.of(settled)
                    : Optional.empty();
        }
    }

    @Override
    public Integer call() throws Exception {
        CableLead lead = cable.lead();
        double ambientCelsius = air.celsius();
        Flow flow = flow(lead, ambientCelsius);
        Optional<CableHeating> heating = Optional.empty();
        Optional<CableDuration> duration = Optional.empty();
        if (flow.amps().isPresent()) {
            double current = flow.amps().getAsDouble();
            heating = Optional.of(lead.settled(current, ambientCelsius));
            duration = Optional.of(lead.untilLimit(current, ambientCelsius, ambientCelsius));
        }
        Answers answers = new Answers(flow, heating, duration, lead.continuous(ambientCelsius));
        if (json.wanted()) {
            console.json(document(lead, ambientCelsius, answers));
        } else {
            print(lead, ambientCelsius, answers);
        }
        return judge(lead, ambientCelsius, answers);
    }

    private Flow flow(CableLead lead, double ambientCelsius) throws InputException {
        if ((amps == null) == (watts == null)) {
            throw new InputException(amps == null ? Texts.of("cable.noCurrent") : Texts.of("cable.twoCurrents"));
        }
        OptionalDouble volts = supplyVolts == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(Quantities.within(supplyVolts, Unit.VOLT, 1, MOST_VOLTS, "--supply-volts"));
        if (amps != null) {
            return new Flow(
                    OptionalDouble.of(Quantities.within(amps, Unit.AMPERE, 0, MOST_AMPS, "--amps")),
                    volts,
                    Optional.empty());
        }
        double power = Quantities.within(watts, Unit.WATT, 0, MOST_WATTS, "--watts");
        if (volts.isEmpty()) {
            throw new InputException(Texts.of("cable.noVolts"));
        }
        SupplySource source = new SupplySource(volts.getAsDouble(), 0, OptionalDouble.empty(), false);
        SupplyFeed.Warm warm =
                new SupplyFeed(source, lead).settled(new SupplyDemand.ConstantPower(power), 1, ambientCelsius);
        if (warm.answer() instanceof SupplyAnswer.Delivered delivered) {
            return new Flow(OptionalDouble.of(delivered.amps()), volts, Optional.empty());
        }
        return new Flow(OptionalDouble.empty(), volts, Optional.of((SupplyNoSolution) warm.answer()));
    }

    private Integer judge(CableLead lead, double ambientCelsius, Answers answers) throws InputException {
        Optional<SupplyNoSolution> none = answers.none();
        if (none.isPresent()) {
            console.message(none.get().reason() + " " + none.get().remedy());
            return ExitCodes.FELL_SHORT;
        }
        CableHeating.Settled settled = answers.settled().orElseThrow();
        if (!(answers.duration().orElseThrow() instanceof CableDuration.Reaches reaches)) {
            return ExitCodes.DONE;
        }
        console.message(Texts.of(
                "cable.tooHot",
                Texts.fixed(settled.conductorCelsius(), 0),
                Texts.number(lead.limitCelsius()),
                Texts.time(reaches.seconds()),
                thicker(lead, ambientCelsius, answers)));
        return ExitCodes.FELL_SHORT;
    }

    /** Says which size of the standard's series carries the current for ever. */
    private String thicker(CableLead lead, double ambientCelsius, Answers answers) throws InputException {
        double current = answers.flow().amps().orElseThrow();
        for (ConductorSize size : ConductorTable.sizes()) {
            if (size.squareMillimetres() > lead.squareMillimetres()
                    && lead.outerAssumed()
                    && cable.lead(size.squareMillimetres(), lead.loopMetres()).continuous(ambientCelsius)
                            instanceof CableCurrent.Continuous carried
                    && carried.ampsRms() >= current) {
                return Texts.of("cable.thicker", Texts.number(size.squareMillimetres()));
            }
        }
        return Texts.of("cable.several");
    }

    private void print(CableLead lead, double ambientCelsius, Answers answers) {
        console.line(Texts.of(
                "cable.head",
                Texts.three(lead.squareMillimetres()),
                Texts.number(lead.loopMetres()),
                Texts.number(ambientCelsius)));
        console.line("");
        TextTable table = TextTable.named("figures.columns");
        table.row(Texts.of("cableRow.cold"), Texts.three(MILLI * lead.loopOhms(COLD_CELSIUS)), "m\u03a9");
        ConductorTable.size(lead.squareMillimetres())
                .ifPresent(size -> table.row(
                        Texts.of("cableRow.allowed"),
                        Texts.three(size.flexibleOhmsPerKilometre() * lead.loopMetres()),
                        "m\u03a9"));
        answers.settled().ifPresent(settled -> {
            double current = answers.flow().amps().orElseThrow();
            table.row(Texts.of("cableRow.current"), Texts.three(current), "A RMS");
            table.row(Texts.of("cableRow.drop"), Texts.three(lead.dropVolts(current, COLD_CELSIUS)), "V");
            table.row(Texts.of("cableRow.wire"), Texts.fixed(settled.conductorCelsius(), 1), "\u00b0C");
            table.row(Texts.of("cableRow.surface"), Texts.fixed(settled.surfaceCelsius(), 1), "\u00b0C");
            table.row(Texts.of("cableRow.warm"), Texts.three(MILLI * settled.loopOhms()), "m\u03a9");
            table.row(Texts.of("cableRow.warmDrop"), Texts.three(settled.dropVolts()), "V");
            table.row(Texts.of("cableRow.loss"), Texts.three(settled.lossWatts()), "W");
            terminalVolts(answers)
                    .ifPresent(volts -> table.row(Texts.of("cableRow.terminals"), Texts.three(volts), "V"));
        });
        answers.duration().ifPresent(duration -> {
            if (duration instanceof CableDuration.Reaches reaches) {
                table.row(Texts.of("cableRow.time"), Texts.time(reaches.seconds()), "");
            } else if (duration instanceof CableDuration.Unlimited) {
                table.row(Texts.of("cableRow.time"), Texts.of("cableRow.unlimited"), "");
            }
        });
        if (answers.continuous() instanceof CableCurrent.Continuous continuous) {
            table.row(Texts.of("cableRow.carries"), Texts.three(continuous.ampsRms()), "A RMS");
        }
        table.row(Texts.of("cableRow.limit"), Texts.number(lead.limitCelsius()), "\u00b0C");
        table.print(console);
        console.line("");
        lead.notes().forEach(console::line);
        Cautions.print(console, cautions());
    }

    private static Optional<Double> terminalVolts(Answers answers) {
        if (answers.flow().supplyVolts().isEmpty() || answers.settled().isEmpty()) {
            return Optional.empty();
        }
        double left = answers.flow().supplyVolts().getAsDouble()
                - answers.settled().get().dropVolts();
        return Optional.of(Math.max(0, left));
    }

    private static ObjectNode document(CableLead lead, double ambientCelsius, Answers answers) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("material", lead.material().name());
        root.put("squareMillimetres", lead.squareMillimetres());
        root.put("loopMetres", lead.loopMetres());
        root.put("outerMetres", lead.outerMetres());
        root.put("ambientCelsius", ambientCelsius);
        root.put("limitCelsius", lead.limitCelsius());
        root.put("coldOhms", lead.loopOhms(COLD_CELSIUS));
        ConductorTable.size(lead.squareMillimetres())
                .ifPresent(size ->
                        root.put("highestFlexibleOhms", size.flexibleOhmsPerKilometre() * lead.loopMetres() / MILLI));
        answers.flow().amps().ifPresent(current -> root.put("ampsRms", current));
        answers.settled().ifPresent(settled -> root.putObject("settled")
                .put("conductorCelsius", settled.conductorCelsius())
                .put("surfaceCelsius", settled.surfaceCelsius())
                .put("loopOhms", settled.loopOhms())
                .put("dropVolts", settled.dropVolts())
                .put("lossWatts", settled.lossWatts()));
        terminalVolts(answers).ifPresent(volts -> root.put("terminalVolts", volts));
        answers.duration().ifPresent(duration -> {
            root.put("unlimited", duration instanceof CableDuration.Unlimited);
            if (duration instanceof CableDuration.Reaches reaches) {
                root.put("secondsToLimit", reaches.seconds());
            }
        });
        if (answers.continuous() instanceof CableCurrent.Continuous continuous) {
            root.put("continuousAmpsRms", continuous.ampsRms());
        }
        answers.none().ifPresent(none -> root.putObject("noSolution")
                .put("reason", none.reason())
                .put("remedy", none.remedy()));
        lead.notes().forEach(root.putArray("notes")::add);
        Cautions.put(root, cautions());
        return root;
    }

    private static List<String> cautions() {
        return List.of(SupplyCautions.cables(), SupplyCautions.wiring());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.ohmstead.load.LoadHeat;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkAnalysis;
import org.ohmstead.load.NetworkImpedance;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.PartHeat;
import org.ohmstead.load.Resistor;
import org.ohmstead.load.Stock;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what a network does at a power. */
@Command(
        name = "show",
        description = {
            "Show a network at a power: its value, how its resistors share the power, what limits it, how hot it gets.",
            "",
            "The share of a resistor is also how strongly its tolerance counts. Temperatures are given where the parts' thermal"
                    + " resistances are known.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when a resistor takes more than it may for as long as one likes.",
            "Example: ohmstead load show \"(8R2||8R2||15)+(3R3||0R47)\" --power-watts 100"
        })
final class LoadShowCommand implements Callable<Integer> {
    private static final double ONE_PERCENT = 0.01;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private StockOption stock;

    @Parameters(
            paramLabel = "NETWORK",
            description = "The network, for example \"8R2||8R2\"; ids are those of the stock.")
    private String notation;

    @Option(names = "--power-watts", paramLabel = "W", required = true, description = "Power into the whole network.")
    private String powerWatts;

    @Mixin
    private AmbientOption ambient;

    LoadShowCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double watts = Quantities.positive(powerWatts, Unit.WATT, "--power-watts");
        double ambientCelsius = ambient.celsius();
        Stock parts = stock.given() ? stock.read() : Stock.EMPTY;
        NetworkNotation.Options options = NetworkNotation.Options.USUAL.withToleranceRatio(stock.toleranceRatio());
        Network network = NetworkNotation.parse(notation, parts, options);
        NetworkAnalysis analysis = NetworkAnalysis.of(network, ambientCelsius);
        Optional<LoadHeat> heat = LoadHeat.atWatts(network, watts, LoadHeat.Air.of(ambientCelsius));
        if (json.wanted()) {
            console.json(document(analysis, heat, watts));
        } else {
            print(analysis, heat, watts);
        }
        OptionalDouble limit = analysis.powerLimitWatts();
        if (limit.isPresent() && limit.getAsDouble() < watts) {
            console.message(
                    Texts.fixed(watts, 1) + " W is more than this network may take for as long as one likes, "
                            + Texts.fixed(limit.getAsDouble(), 1) + " W: "
                            + analysis.limitingPart().orElseThrow().id()
                            + " reaches its limit first. Use stronger or more resistors, or keep the test short and let them cool.");
            return ExitCodes.FELL_SHORT;
        }
        return ExitCodes.DONE;
    }

    private void print(NetworkAnalysis analysis, Optional<LoadHeat> heat, double watts) {
        console.line(NetworkNotation.format(analysis.network()) + " = " + Texts.number(analysis.ohms())
                + " ohms, worst case "
                + Texts.number(analysis.worstCaseLowOhms()) + " to " + Texts.number(analysis.worstCaseHighOhms())
                + ", tolerances combined (RSS) \u00b1 " + Texts.fixed(100 * analysis.rssToleranceRatio(), 2) + " %");
        console.line("At " + Texts.number(watts) + " W: " + Texts.fixed(analysis.voltsRms(watts), 2) + " V RMS, "
                + Texts.fixed(analysis.ampsRms(watts), 2) + " A RMS");
        console.line("");
        TextTable table =
                new TextTable("part", ">ohms", ">share %", ">W", ">may take W", ">case \u00b0C", ">wire \u00b0C");
        for (int i = 0; i < analysis.size(); i++) {
            Optional<PartHeat> part = heat.map(LoadHeat::parts).map(parts(i));
            table.row(
                    analysis.resistor(i).id(),
                    Texts.number(analysis.resistor(i).ohms()),
                    Texts.fixed(100 * analysis.share(i), 2),
                    Texts.fixed(analysis.powerWatts(i, watts), 2),
                    known(analysis.allowedWatts(i)),
                    known(part.map(PartHeat::caseCelsius).orElse(OptionalDouble.empty())),
                    known(part.map(PartHeat::elementCelsius).orElse(OptionalDouble.empty())));
        }
        table.print(console);
        console.line("");
        console.line(limit(analysis));
        heat.filter(LoadShowCommand::warms)
                .ifPresent(hot -> console.line(
                        "Hot: " + Texts.number(hot.hotOhms()) + " ohms; a power from the cold value is off by "
                                + Texts.fixed(100 * hot.overstatementRatio(), 2) + " %."));
        band(analysis.network());
        console.line(
                "Caution: resistors at power burn skin and set things on fire; give them air, keep clear, let them cool."
                        + " With a bridged output neither terminal is ground.");
    }

    private static boolean warms(LoadHeat heat) {
        return heat.parts().stream()
                .anyMatch(part ->
                        part.caseCelsius().isPresent() || part.elementCelsius().isPresent());
    }

    private static Function<List<PartHeat>, PartHeat> parts(int index) {
        return list -> list.get(index);
    }

    private static String known(OptionalDouble value) {
        return value.isPresent() ? Texts.fixed(value.getAsDouble(), 1) : "";
    }

    private static String limit(NetworkAnalysis analysis) {
        return analysis.powerLimitWatts().isPresent()
                ? "It takes " + Texts.fixed(analysis.powerLimitWatts().getAsDouble(), 1)
                        + " W for as long as one likes at "
                        + Texts.number(analysis.ambientCelsius()) + " \u00b0C; "
                        + analysis.limitingPart().orElseThrow().id() + " is the first to reach its limit."
                : "What it takes is not known: a power rating is missing. Write it as in 8R2@50W, or name a stock with ratings.";
    }

    private void band(Network network) {
        NetworkImpedance impedance = NetworkImpedance.of(network);
        boolean inductive = network.resistors().stream()
                .anyMatch(resistor -> resistor.traits().inductanceHenries().isPresent());
        if (inductive) {
            impedance
                    .powerLimitHz(ONE_PERCENT)
                    .ifPresentOrElse(
                            hertz -> console.line("Volts squared over ohms overstates the power by less than 1 % up to "
                                    + Texts.number(Math.rint(hertz)) + " Hz."),
                            () -> console.line(
                                    "The inductances known change the power by less than 1 % at any frequency."));
        }
    }

    private static ObjectNode document(NetworkAnalysis analysis, Optional<LoadHeat> heat, double watts) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("network", NetworkNotation.format(analysis.network()));
        root.put("ohms", analysis.ohms());
        root.put("powerWatts", watts);
        root.put("voltsRms", analysis.voltsRms(watts));
        root.put("ampsRms", analysis.ampsRms(watts));
        ArrayNode parts = root.putArray("parts");
        for (int i = 0; i < analysis.size(); i++) {
            ObjectNode part = parts.addObject();
            part.put("id", analysis.resistor(i).id());
            part.put("ohms", analysis.resistor(i).ohms());
            part.put("powerWatts", analysis.powerWatts(i, watts));
            part.put("share", analysis.share(i));
            put(part, "allowedWatts", analysis.allowedWatts(i));
            Optional<PartHeat> hot = heat.map(LoadHeat::parts).map(parts(i));
            hot.ifPresent(values -> {
                put(part, "caseCelsius", values.caseCelsius());
                put(part, "elementCelsius", values.elementCelsius());
            });
        }
        root.putArray("worstCaseOhms").add(analysis.worstCaseLowOhms()).add(analysis.worstCaseHighOhms());
        root.put("rssToleranceRatio", analysis.rssToleranceRatio());
        put(root, "powerLimitWatts", analysis.powerLimitWatts());
        root.put("limitingPart", analysis.limitingPart().map(Resistor::id).orElse(null));
        heat.ifPresent(hot -> root.put("hotOhms", hot.hotOhms()));
        return root;
    }

    private static void put(ObjectNode node, String name, OptionalDouble value) {
        if (value.isPresent()) {
            node.put(name, value.getAsDouble());
        } else {
            node.putNull(name);
        }
    }
}

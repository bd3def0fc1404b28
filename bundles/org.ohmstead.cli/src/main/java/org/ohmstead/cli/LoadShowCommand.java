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
        description = {"${bundle:load.show.does}", "", "${bundle:load.show.more}", ""},
        footer = {"", "${bundle:load.show.exit}", "${bundle:load.show.example}"})
final class LoadShowCommand implements Callable<Integer> {
    private static final double ONE_PERCENT = 0.01;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private StockOption stock;

    @Parameters(paramLabel = "NETWORK", descriptionKey = "load.show.NETWORK")
    private String notation;

    @Option(names = "--power-watts", paramLabel = "W", required = true, descriptionKey = "load.show.power-watts")
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
            console.message(Texts.of(
                    "loadShow.tooMuch",
                    Texts.fixed(watts, 1),
                    Texts.fixed(limit.getAsDouble(), 1),
                    analysis.limitingPart().orElseThrow().id()));
            return ExitCodes.FELL_SHORT;
        }
        return ExitCodes.DONE;
    }

    private void print(NetworkAnalysis analysis, Optional<LoadHeat> heat, double watts) {
        console.line(Texts.of(
                "loadShow.head",
                NetworkNotation.format(analysis.network()),
                Texts.number(analysis.ohms()),
                Texts.number(analysis.worstCaseLowOhms()),
                Texts.number(analysis.worstCaseHighOhms()),
                Texts.fixed(100 * analysis.rssToleranceRatio(), 2)));
        console.line(Texts.of(
                "loadShow.at",
                Texts.number(watts),
                Texts.fixed(analysis.voltsRms(watts), 2),
                Texts.fixed(analysis.ampsRms(watts), 2)));
        console.line("");
        TextTable table = TextTable.named("loadShow.columns");
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
                .ifPresent(hot -> console.line(Texts.of(
                        "loadShow.hot", Texts.number(hot.hotOhms()), Texts.fixed(100 * hot.overstatementRatio(), 2))));
        band(analysis.network());
        console.line(Texts.of("loadShow.caution"));
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
                ? Texts.of(
                        "loadShow.takes",
                        Texts.fixed(analysis.powerLimitWatts().getAsDouble(), 1),
                        Texts.number(analysis.ambientCelsius()),
                        analysis.limitingPart().orElseThrow().id())
                : Texts.of("loadShow.unknown");
    }

    private void band(Network network) {
        NetworkImpedance impedance = NetworkImpedance.of(network);
        boolean inductive = network.resistors().stream()
                .anyMatch(resistor -> resistor.traits().inductanceHenries().isPresent());
        if (inductive) {
            impedance
                    .powerLimitHz(ONE_PERCENT)
                    .ifPresentOrElse(
                            hertz -> console.line(Texts.of("loadShow.upTo", Texts.number(Math.rint(hertz)))),
                            () -> console.line(Texts.of("loadShow.inductances")));
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

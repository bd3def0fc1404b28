// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.model.Range;
import org.ohmstead.model.SinkSize;
import org.ohmstead.thermal.Convection;
import org.ohmstead.thermal.SinkEstimate;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The thermal resistance of a sink from its size. */
@Command(
        name = "sink",
        description = {"${bundle:thermal.sink.does}", "", "${bundle:thermal.sink.more}", ""},
        footer = {"", "${bundle:thermal.sink.exit}", "${bundle:thermal.sink.example}"})
final class ThermalSinkCommand implements Callable<Integer> {
    private static final double LEAST_MILLIMETRES = 0.01;
    private static final double MOST_MILLIMETRES = 5000;
    private static final double MOST_WATTS = 100_000;
    private static final double HOTTEST_KELVIN = 600;
    private static final double FORMULAS_AT_LEAST = 0.8;
    private static final double MILLI = 1000;
    private static final int MOST_FINS = 1000;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Option(
            names = "--length-millimetres",
            paramLabel = "L",
            required = true,
            descriptionKey = "thermal.sink.length-millimetres")
    private String length;

    @Option(
            names = "--height-millimetres",
            paramLabel = "H",
            required = true,
            descriptionKey = "thermal.sink.height-millimetres")
    private String height;

    @Option(names = "--fins", paramLabel = "N", defaultValue = "0", descriptionKey = "thermal.sink.fins")
    private int fins;

    @Option(
            names = "--fin-depth-millimetres",
            paramLabel = "D",
            defaultValue = "0",
            descriptionKey = "thermal.sink.fin-depth-millimetres")
    private String finDepth;

    @Option(
            names = "--fin-thickness-millimetres",
            paramLabel = "T",
            defaultValue = "2",
            descriptionKey = "thermal.sink.fin-thickness-millimetres")
    private String finThickness;

    @Option(names = "--emissivity", paramLabel = "E", defaultValue = "0.85", descriptionKey = "thermal.sink.emissivity")
    private String emissivity;

    @Option(names = "--fan", descriptionKey = "thermal.sink.fan")
    private boolean fan;

    @Option(names = "--power-watts", paramLabel = "P", required = true, descriptionKey = "thermal.sink.power-watts")
    private String powerWatts;

    @Mixin
    private ThermalAirOption air;

    ThermalSinkCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        SinkSize size = size();
        double watts = Quantities.positive(powerWatts, Unit.WATT, "--power-watts");
        if (watts > MOST_WATTS) {
            throw new InputException(Texts.of("identify.watts", powerWatts));
        }
        double airCelsius = air.celsius();
        if (FORMULAS_AT_LEAST * SinkEstimate.watts(size, HOTTEST_KELVIN, airCelsius) < watts) {
            console.message(Texts.of("sink.tooHot", Texts.three(watts)));
            return ExitCodes.FELL_SHORT;
        }
        SinkEstimate estimate = SinkEstimate.of(size, watts, airCelsius, fan);
        if (json.wanted()) {
            console.json(document(size, watts, airCelsius, estimate));
        } else {
            print(size, watts, airCelsius, estimate);
        }
        return ExitCodes.DONE;
    }

    private SinkSize size() throws InputException {
        if (fins < 0 || fins > MOST_FINS) {
            throw new InputException(Texts.of("sink.fins", fins, MOST_FINS));
        }
        double lengthMetres = millimetres(length, LEAST_MILLIMETRES, "--length-millimetres");
        double thicknessMetres = millimetres(finThickness, LEAST_MILLIMETRES, "--fin-thickness-millimetres");
        if (fins * thicknessMetres >= lengthMetres) {
            throw new InputException(Texts.of(
                    "sink.noGap", fins, Texts.number(MILLI * thicknessMetres), Texts.number(MILLI * lengthMetres)));
        }
        return new SinkSize(
                lengthMetres,
                millimetres(height, LEAST_MILLIMETRES, "--height-millimetres"),
                fins,
                millimetres(finDepth, 0, "--fin-depth-millimetres"),
                thicknessMetres,
                Quantities.within(emissivity, Unit.NONE, 0, 1, "--emissivity"));
    }

    private static double millimetres(String text, double lowest, String option) throws InputException {
        return Quantities.millimetres(text, lowest, MOST_MILLIMETRES, option);
    }

    private void print(SinkSize size, double watts, double airCelsius, SinkEstimate estimate) {
        Range rise = estimate.riseKelvin();
        console.line(Texts.of(
                "sink.at",
                Texts.three(watts),
                Texts.range(estimate.kelvinPerWatt(), 3),
                Texts.range(rise, 0),
                Texts.range(celsius(airCelsius, rise), 0),
                Texts.number(airCelsius)));
        console.line(Texts.of(
                "sink.shares", Texts.three(estimate.convectionWatts()), Texts.three(estimate.radiationWatts())));
        bestGap(size, airCelsius, rise)
                .ifPresent(metres -> console.line(Texts.of("sink.gap", Texts.three(MILLI * metres))));
        estimate.remarks().forEach(console::line);
        Cautions.print(console, cautions());
    }

    private static OptionalDouble bestGap(SinkSize size, double airCelsius, Range rise) {
        return size.finCount() > 1 && size.finDepthMetres() > 0
                ? OptionalDouble.of(
                        Convection.bestSpacingMetres(airCelsius + rise.middle(), airCelsius, size.heightMetres()))
                : OptionalDouble.empty();
    }

    private static Range celsius(double airCelsius, Range rise) {
        return new Range(airCelsius + rise.low(), airCelsius + rise.high());
    }

    private static ObjectNode document(SinkSize size, double watts, double airCelsius, SinkEstimate estimate) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("powerWatts", watts);
        root.put("ambientCelsius", airCelsius);
        Ranges.put(root, "kelvinPerWatt", estimate.kelvinPerWatt());
        Ranges.put(root, "riseKelvin", estimate.riseKelvin());
        Ranges.put(root, "celsius", celsius(airCelsius, estimate.riseKelvin()));
        root.put("convectionWatts", estimate.convectionWatts());
        root.put("radiationWatts", estimate.radiationWatts());
        bestGap(size, airCelsius, estimate.riseKelvin()).ifPresent(metres -> root.put("bestGapMetres", metres));
        estimate.remarks().forEach(root.putArray("remarks")::add);
        Cautions.put(root, cautions());
        return root;
    }

    private static List<String> cautions() {
        return List.of(SupplyCautions.hotParts());
    }
}

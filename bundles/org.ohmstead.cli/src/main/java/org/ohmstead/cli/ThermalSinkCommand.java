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
        description = {
            "Estimate the thermal resistance of a heat sink, or of a case that serves as one, from its size: a base"
                    + " plate with plane fins that stand upright, air free to rise between them. Without fins it is a"
                    + " plate that gives off heat on both faces.",
            "",
            "Still air moves faster along a hotter surface, so the resistance belongs to a power. A logged warm-up"
                    + " does better: see the word thermal identify.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when the sink would get more than 600 K above the air.",
            "Example: ohmstead thermal sink --length-millimetres 200 --height-millimetres 150 --fins 16"
                    + " --fin-depth-millimetres 30 --power-watts 60"
        })
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
            description = "Length of the base, along which the fins are lined up.")
    private String length;

    @Option(
            names = "--height-millimetres",
            paramLabel = "H",
            required = true,
            description = "Height of base and fins, along which the air rises.")
    private String height;

    @Option(names = "--fins", paramLabel = "N", defaultValue = "0", description = "How many fins (0 if left out).")
    private int fins;

    @Option(
            names = "--fin-depth-millimetres",
            paramLabel = "D",
            defaultValue = "0",
            description = "How far the fins stand out.")
    private String finDepth;

    @Option(
            names = "--fin-thickness-millimetres",
            paramLabel = "T",
            defaultValue = "2",
            description = "Thickness of a fin (default ${DEFAULT-VALUE}).")
    private String finThickness;

    @Option(
            names = "--emissivity",
            paramLabel = "E",
            defaultValue = "0.85",
            description = "Emissivity of the surface, 0 to 1: 0.05 for bare aluminium, 0.85 to 0.9 anodised or painted"
                    + " (default ${DEFAULT-VALUE}).")
    private String emissivity;

    @Option(names = "--fan", description = "A fan blows along the fins.")
    private boolean fan;

    @Option(
            names = "--power-watts",
            paramLabel = "P",
            required = true,
            description = "The heat that it is to carry off.")
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
            throw new InputException("--power-watts is " + powerWatts + "; it must be at most 100 kW.");
        }
        double airCelsius = air.celsius();
        if (FORMULAS_AT_LEAST * SinkEstimate.watts(size, HOTTEST_KELVIN, airCelsius) < watts) {
            console.message("This sink would get more than 600 K above the air with " + Texts.three(watts)
                    + " W. Check its size, use a larger one, or lower the power.");
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
            throw new InputException("--fins is " + fins + "; it must be between 0 and " + MOST_FINS + ".");
        }
        double lengthMetres = millimetres(length, LEAST_MILLIMETRES, "--length-millimetres");
        double thicknessMetres = millimetres(finThickness, LEAST_MILLIMETRES, "--fin-thickness-millimetres");
        if (fins * thicknessMetres >= lengthMetres) {
            throw new InputException(fins + " fins of " + Texts.number(MILLI * thicknessMetres) + " mm leave no gap on "
                    + Texts.number(MILLI * lengthMetres) + " mm. Check --fins and --fin-thickness-millimetres.");
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
        console.line("At " + Texts.three(watts) + " W: " + Texts.range(estimate.kelvinPerWatt(), 3) + " K/W, so "
                + Texts.range(rise, 0) + " K above the air, " + Texts.range(celsius(airCelsius, rise), 0)
                + " \u00b0C in air of " + Texts.number(airCelsius) + " \u00b0C.");
        console.line("Of that power still air carries off " + Texts.three(estimate.convectionWatts())
                + " W and radiation " + Texts.three(estimate.radiationWatts()) + " W.");
        bestGap(size, airCelsius, rise)
                .ifPresent(metres -> console.line("Thin fins " + Texts.three(MILLI * metres)
                        + " mm apart would carry off the most in still air (closed form of Bar-Cohen and Rohsenow)."));
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

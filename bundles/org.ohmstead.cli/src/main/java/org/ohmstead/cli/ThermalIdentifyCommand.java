// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.thermal.FittedFigure;
import org.ohmstead.thermal.HeatFit;
import org.ohmstead.thermal.HeatIdentification;
import org.ohmstead.thermal.HeatRecord;
import org.ohmstead.thermal.PowerProfile;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a logged warm-up or cool-down tells. */
@Command(
        name = "identify",
        description = {"${bundle:thermal.identify.does}", "", "${bundle:thermal.identify.more}", ""},
        footer = {"", "${bundle:thermal.identify.exit}", "${bundle:thermal.identify.example}"})
final class ThermalIdentifyCommand implements Callable<Integer> {
    private static final double MOST_WATTS = 100_000;
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 150;
    private static final QuantityFormat FOUR = QuantityFormat.digits(4);

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "FILE", descriptionKey = "thermal.identify.FILE")
    private Path file;

    @Option(names = "--power-watts", paramLabel = "P", descriptionKey = "thermal.identify.power-watts")
    private String powerWatts;

    @Option(names = "--cool-down", descriptionKey = "thermal.identify.cool-down")
    private boolean coolDown;

    @Option(names = "--starts-warm", descriptionKey = "thermal.identify.starts-warm")
    private boolean startsWarm;

    @Option(names = "--ambient-celsius", paramLabel = "T", descriptionKey = "thermal.identify.ambient-celsius")
    private String ambientCelsius;

    ThermalIdentifyCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        HeatRecordFile log = HeatRecordFile.read(file);
        OptionalDouble air = ambientCelsius == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(Quantities.within(
                        ambientCelsius, Unit.CELSIUS, COLDEST_CELSIUS, HOTTEST_CELSIUS, "--ambient-celsius"));
        HeatRecord record = new HeatRecord(log.readings(), powers(log), !coolDown && !startsWarm, air);
        HeatFit fit = HeatIdentification.identify(record);
        if (json.wanted()) {
            console.json(document(fit));
        } else if (fit instanceof HeatFit.Found found) {
            print(found);
        }
        if (fit instanceof HeatFit.Refused refused) {
            console.message(refused.reason() + " " + refused.remedy());
            return ExitCodes.FELL_SHORT;
        }
        return ExitCodes.DONE;
    }

    private PowerProfile powers(HeatRecordFile log) throws InputException {
        int said =
                (powerWatts != null ? 1 : 0) + (coolDown ? 1 : 0) + (log.watts().isEmpty() ? 0 : 1);
        if (said == 0) {
            throw new InputException(Texts.of("identify.noPower"));
        }
        if (said > 1) {
            throw new InputException(Texts.of("identify.twoPowers"));
        }
        if (coolDown) {
            return PowerProfile.constant(0);
        }
        if (powerWatts == null) {
            return log.powers();
        }
        double watts = Quantities.positive(powerWatts, Unit.WATT, "--power-watts");
        if (watts > MOST_WATTS) {
            throw new InputException(Texts.of("identify.watts", powerWatts));
        }
        return PowerProfile.constant(watts);
    }

    private void print(HeatFit.Found found) {
        console.line(found.stages().size() == 1 ? Texts.of("identify.one") : Texts.of("identify.two"));
        console.line("");
        TextTable table = TextTable.named("identify.columns");
        int number = 1;
        for (HeatFit.Stage stage : found.stages()) {
            String which = found.stages().size() == 1 ? "" : " " + number;
            row(table, Texts.of("identify.tau", which), "s", Optional.of(stage.tauSeconds()));
            row(table, Texts.of("identify.resistance", which), "K/W", stage.kelvinPerWatt());
            row(table, Texts.of("identify.capacity", which), "J/K", stage.joulesPerKelvin());
            number++;
        }
        if (found.stages().size() > 1) {
            row(table, Texts.of("identify.all"), "K/W", found.kelvinPerWatt());
        }
        row(table, Texts.of("identify.air"), "\u00b0C", found.airCelsius());
        table.print(console);
        console.line("");
        console.line(Texts.of(
                "identify.scatter",
                found.residuals().size(),
                Texts.three(found.noiseKelvin()),
                Texts.three(farthest(found))));
        found.remarks().forEach(console::line);
        Cautions.print(console, cautions());
    }

    private static double farthest(HeatFit.Found found) {
        return found.residuals().stream()
                .mapToDouble(residual -> Math.abs(residual.kelvin()))
                .max()
                .orElse(0);
    }

    private static void row(TextTable table, String name, String unit, Optional<FittedFigure> figure) {
        figure.ifPresent(value -> table.row(
                name,
                FOUR.format(value.value()),
                unit,
                Texts.between(
                        FOUR.format(value.interval().lower()),
                        FOUR.format(value.interval().upper()))));
    }

    private static ObjectNode document(HeatFit fit) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        if (fit instanceof HeatFit.Refused refused) {
            root.put("refused", refused.reason());
            root.put("remedy", refused.remedy());
        } else if (fit instanceof HeatFit.Found found) {
            ArrayNode stages = root.putArray("stages");
            for (HeatFit.Stage stage : found.stages()) {
                ObjectNode node = stages.addObject();
                put(node, "tauSeconds", Optional.of(stage.tauSeconds()));
                put(node, "kelvinPerWatt", stage.kelvinPerWatt());
                put(node, "joulesPerKelvin", stage.joulesPerKelvin());
            }
            put(root, "kelvinPerWatt", found.kelvinPerWatt());
            put(root, "airCelsius", found.airCelsius());
            root.put("readings", found.residuals().size());
            root.put("noiseKelvin", found.noiseKelvin());
            root.put("farthestKelvin", farthest(found));
            found.remarks().forEach(root.putArray("remarks")::add);
        }
        Cautions.put(root, cautions());
        return root;
    }

    private static void put(ObjectNode node, String name, Optional<FittedFigure> figure) {
        figure.ifPresent(value -> node.putObject(name)
                .put("value", value.value())
                .put("lower", value.interval().lower())
                .put("upper", value.interval().upper()));
    }

    private static List<String> cautions() {
        return List.of(SupplyCautions.hotParts());
    }
}

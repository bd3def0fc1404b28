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
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.FuseBand;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.FuseCurve;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.thermal.SupplyNoSolution;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a current does to a fuse. */
@Command(
        name = "fuse",
        description = {
            "What a current does to a fuse, or to several side by side: whether they carry it for ever, or between"
                    + " which times they open.",
            "",
            "The times are the bands of the standards; those written down from memory are printed as such. The curve"
                    + " of the fuse's maker decides.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when the current is more than the fuse is to carry for ever.",
            "Example: ohmstead thermal fuse --amps 75 --rated-amps 30 --count 2",
            "Example: ohmstead thermal fuse --amps 90 --low-amps 5 --on-seconds 0.02 --period-seconds 0.5 --rated-amps"
                    + " 30"
        })
final class ThermalFuseCommand implements Callable<Integer> {
    private static final double MOST_AMPS = 10_000;
    private static final double PERCENT = 100;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private FuseOptions fuses;

    @Option(
            names = "--amps",
            paramLabel = "I",
            required = true,
            description = "The current through all of them together, RMS; with bursts that during a burst.")
    private String amps;

    @Mixin
    private BurstOptions bursts;

    @Option(names = "--low-amps", paramLabel = "I", description = "The current between bursts, RMS (0 if left out).")
    private String lowAmps;

    ThermalFuseCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        FuseBank bank = fuses.bank();
        double current = Quantities.within(amps, Unit.AMPERE, 0, MOST_AMPS, "--amps");
        FuseAnswer answer = answer(bank, current);
        if (answer instanceof SupplyNoSolution none) {
            throw new InputException(none.reason() + " " + none.remedy());
        }
        if (json.wanted()) {
            console.json(document(bank, answer));
        } else {
            print(bank, answer);
        }
        return answer instanceof FuseAnswer.Carries ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private FuseAnswer answer(FuseBank bank, double current) throws InputException {
        if (!bursts.given()) {
            if (lowAmps != null) {
                throw new InputException(
                        "--low-amps is the current between bursts; give --on-seconds and --period-seconds too.");
            }
            return bank.steady(current);
        }
        BurstOptions.Rhythm rhythm = bursts.rhythm();
        double between = lowAmps == null ? 0 : Quantities.within(lowAmps, Unit.AMPERE, 0, current, "--low-amps");
        return bank.bursts(current, between, rhythm.onSeconds(), rhythm.periodSeconds());
    }

    private void print(FuseBank bank, FuseAnswer answer) {
        for (String sentence : sentences(bank, answer)) {
            console.line(sentence);
        }
        console.line("");
        TextTable table = new TextTable(">current A", ">% of rating", ">opens not before", ">opens within");
        for (FuseBand band : bank.curve().map(FuseCurve::bands).orElse(List.of())) {
            table.row(
                    Texts.number(band.currentRatio() * bank.totalRatedAmps()),
                    Texts.number(PERCENT * band.currentRatio()),
                    time(band.earliestSeconds()),
                    time(band.latestSeconds()));
        }
        table.print(console);
        console.line("");
        sources(bank).forEach(source -> console.line("Bands: " + source + "."));
        console.line("For ever: " + FuseBank.continuousRule() + ", here " + Texts.three(bank.continuousAmps()) + " A.");
        if (bank.count() > 1) {
            console.line(FuseBank.sharingNote());
        }
        Cautions.print(console, cautions());
    }

    /** Says what comes of it, for the words that show a fuse. */
    static List<String> sentences(FuseBank bank, FuseAnswer answer) {
        if (answer instanceof FuseAnswer.Carries carries) {
            return List.of("The " + name(bank) + " carries " + Texts.three(PERCENT * carries.currentRatio())
                    + " % of its rating for ever.");
        }
        if (answer instanceof FuseAnswer.AboveContinuous above) {
            return List.of(above.reason(), above.remedy());
        }
        if (answer instanceof FuseAnswer.Opens opens) {
            return List.of(opens.reason(), opens.remedy());
        }
        SupplyNoSolution none = (SupplyNoSolution) answer;
        return List.of(none.reason(), none.remedy());
    }

    private static String name(FuseBank bank) {
        return bank.kind().words() + (bank.count() > 1 ? " bank of " + bank.count() + " x " : " of ")
                + Texts.number(bank.ratedAmps()) + " A";
    }

    private static List<String> sources(FuseBank bank) {
        return bank.curve().map(FuseCurve::bands).orElse(List.of()).stream()
                .map(FuseBand::citation)
                .distinct()
                .toList();
    }

    private static String time(OptionalDouble seconds) {
        return seconds.isPresent() ? Texts.time(seconds.getAsDouble()) : "";
    }

    /** Returns the answer for machines, for the words that show a fuse. */
    static ObjectNode node(FuseAnswer answer) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        if (answer instanceof FuseAnswer.Carries carries) {
            node.put("result", "carries").put("currentRatio", carries.currentRatio());
        } else if (answer instanceof FuseAnswer.AboveContinuous above) {
            node.put("result", "aboveContinuous").put("currentRatio", above.currentRatio());
            node.put("reason", above.reason()).put("remedy", above.remedy());
        } else if (answer instanceof FuseAnswer.Opens opens) {
            node.put("result", "opens").put("currentRatio", opens.currentRatio());
            opens.earliestSeconds().ifPresent(seconds -> node.put("earliestSeconds", seconds));
            opens.latestSeconds().ifPresent(seconds -> node.put("latestSeconds", seconds));
            node.put("withinBurst", opens.withinBurst());
            node.put("citation", opens.citation());
            node.put("reason", opens.reason()).put("remedy", opens.remedy());
        } else if (answer instanceof SupplyNoSolution none) {
            node.put("result", "unknown").put("reason", none.reason()).put("remedy", none.remedy());
        }
        return node;
    }

    private static ObjectNode document(FuseBank bank, FuseAnswer answer) {
        ObjectNode root = node(answer);
        root.put("kind", bank.kind().name());
        root.put("ratedAmps", bank.ratedAmps());
        root.put("count", bank.count());
        root.put("continuousAmps", bank.continuousAmps());
        Optional<FuseCurve> curve = bank.curve();
        sources(bank).forEach(root.putArray("sources")::add);
        ArrayNode bands = root.putArray("bands");
        curve.map(FuseCurve::bands).orElse(List.of()).forEach(band -> {
            ObjectNode row = bands.addObject();
            row.put("currentRatio", band.currentRatio());
            band.earliestSeconds().ifPresent(seconds -> row.put("earliestSeconds", seconds));
            band.latestSeconds().ifPresent(seconds -> row.put("latestSeconds", seconds));
        });
        Cautions.put(root, cautions());
        return root;
    }

    private static List<String> cautions() {
        return List.of(SupplyCautions.fuses(), SupplyCautions.wiring());
    }
}

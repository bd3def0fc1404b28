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
        description = {"${bundle:thermal.fuse.does}", "", "${bundle:thermal.fuse.more}", ""},
        footer = {"", "${bundle:thermal.fuse.exit}", "${bundle:thermal.fuse.example}", "${bundle:thermal.fuse.example2}"
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

    @Option(names = "--amps", paramLabel = "I", required = true, descriptionKey = "thermal.fuse.amps")
    private String amps;

    @Mixin
    private BurstOptions bursts;

    @Option(names = "--low-amps", paramLabel = "I", descriptionKey = "thermal.fuse.low-amps")
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
                throw new InputException(Texts.of("fuse.lowAmps"));
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
        TextTable table = TextTable.named("fuse.columns");
        for (FuseBand band : bank.curve().map(FuseCurve::bands).orElse(List.of())) {
            table.row(
                    Texts.number(band.currentRatio() * bank.totalRatedAmps()),
                    Texts.number(PERCENT * band.currentRatio()),
                    time(band.earliestSeconds()),
                    time(band.latestSeconds()));
        }
        table.print(console);
        console.line("");
        sources(bank).forEach(source -> console.line(Texts.of("fuse.bands", source)));
        console.line(Texts.of("fuse.ever", FuseBank.continuousRule(), Texts.three(bank.continuousAmps())));
        if (bank.count() > 1) {
            console.line(FuseBank.sharingNote());
        }
        Cautions.print(console, cautions());
    }

    /** Says what comes of it, for the words that show a fuse. */
    static List<String> sentences(FuseBank bank, FuseAnswer answer) {
        if (answer instanceof FuseAnswer.Carries carries) {
            return List.of(Texts.of("fuse.carries", name(bank), Texts.three(PERCENT * carries.currentRatio())));
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
        return bank.count() > 1
                ? Texts.of("fuse.bank", bank.kind().words(), bank.count(), Texts.number(bank.ratedAmps()))
                : Texts.of("fuse.one", bank.kind().words(), Texts.number(bank.ratedAmps()));
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

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.Stock;
import org.ohmstead.load.search.BankPlan;
import org.ohmstead.load.search.BankPlanRequest;
import org.ohmstead.load.search.Piece;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plans the straps of a bank of resistors. */
@Command(
        name = "bank",
        description = {"${bundle:load.bank.does}", "", "${bundle:load.bank.more}", ""},
        footer = {"", "${bundle:load.bank.exit}", "${bundle:load.bank.example}", "${bundle:load.bank.note}"})
final class LoadBankCommand implements Callable<Integer> {
    private static final Pattern LOAD = Pattern.compile("([^x@]+)(?:x(\\d{1,2}))?(?:@(.+))?");

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private StockOption stock;

    @Parameters(arity = "0..1", paramLabel = "PROJECT", descriptionKey = "load.bank.PROJECT")
    private Path project;

    @Option(names = "--loads", paramLabel = "LOADS", split = ",", descriptionKey = "load.bank.loads")
    private List<String> loads;

    @Option(
            names = "--within-percent",
            paramLabel = "P",
            defaultValue = "2",
            descriptionKey = "load.bank.within-percent")
    private String withinPercent;

    @Option(names = "--max-parts", paramLabel = "N", defaultValue = "8", descriptionKey = "load.bank.max-parts")
    private int maxParts;

    @Mixin
    private AmbientOption ambient;

    @Mixin
    private TimeLimitOption timeLimit;

    LoadBankCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (maxParts < 1 || maxParts > 12) {
            throw new InputException(Texts.of("bank.maxParts", maxParts));
        }
        double within = Quantities.ratio(withinPercent, "--within-percent");
        Duration limit = timeLimit.limit();
        List<BankPlanRequest.Load> wanted = wanted(within);
        if (wanted.isEmpty() || wanted.size() > 12) {
            throw new InputException(Texts.of("bank.loads", wanted.size()));
        }
        Stock pieces = stock.given() || project == null ? stock.read() : StockOption.ofFile(project);
        BankPlan plan = BankPlan.find(
                new BankPlanRequest(pieces, wanted, maxParts, ambient.celsius(), limit),
                () -> false,
                done -> console.progress((int) Math.round(100 * done), 100, Texts.of("bank.progress")));
        if (json.wanted()) {
            console.json(document(wanted, plan));
        } else {
            print(wanted, plan);
        }
        plan.missing().forEach(console::message);
        return plan.missing().isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private List<BankPlanRequest.Load> wanted(double within) throws Exception {
        List<BankPlanRequest.Load> wanted = new ArrayList<>();
        if (loads != null) {
            for (String text : loads) {
                wanted.add(load(text.strip(), within));
            }
        } else if (project != null) {
            for (BenchLoad load : ProjectFolder.open(project).project().loads()) {
                wanted.add(new BankPlanRequest.Load(
                        load.nominalOhms(), load.branches().size(), within, OptionalDouble.of(load.powerLimitWatts())));
            }
        } else {
            throw new InputException(Texts.of("bank.noLoads"));
        }
        return wanted;
    }

    private static BankPlanRequest.Load load(String text, double within) throws InputException {
        Matcher parts = LOAD.matcher(text);
        if (!parts.matches()) {
            throw new InputException(Texts.of("bank.notation", text));
        }
        double ohms = Quantities.positive(parts.group(1), Unit.OHM, "--loads");
        int branches = parts.group(2) == null ? 1 : Integer.parseInt(parts.group(2));
        if (branches < 1 || branches > 8) {
            throw new InputException(Texts.of("bank.branches", text));
        }
        return new BankPlanRequest.Load(
                ohms, branches, within, Quantities.optionalPositive(parts.group(3), Unit.WATT, "--loads"));
    }

    private void print(List<BankPlanRequest.Load> wanted, BankPlan plan) {
        TextTable table = TextTable.named("bank.columns");
        for (BankPlan.Strap strap : plan.straps()) {
            BankPlanRequest.Load load = wanted.get(strap.loadIndex());
            int index = 0;
            for (BankPlan.Branch branch : strap.branches()) {
                table.row(
                        index == 0 ? name(load) : "",
                        NetworkNotation.format(branch.network()),
                        branch.pieces().stream().map(Piece::toString).collect(Collectors.joining(", ")),
                        Texts.fixed(100 * branch.errorRatio(), 2),
                        branch.powerLimitWatts().isPresent()
                                ? Texts.fixed(branch.powerLimitWatts().getAsDouble(), 0)
                                : Texts.of("bank.unknown"),
                        index == 0 ? String.valueOf(strap.movedEnds()) : "");
                index++;
            }
        }
        table.print(console);
        console.line("");
        for (BankPlan.Strap strap : plan.straps()) {
            if (!strap.changes().isEmpty()) {
                console.line(Texts.of("bank.change", name(wanted.get(strap.loadIndex()))));
                strap.changes().forEach(change -> console.line("  " + change));
            }
        }
        console.line(Texts.of(
                "bank.pieces", plan.pieces().stream().map(Piece::toString).collect(Collectors.joining(", "))));
        console.line(plan.message());
        console.line(Texts.of("bank.caution"));
    }

    private static String name(BankPlanRequest.Load load) {
        return load.branches() > 1
                ? Texts.of("bank.ohms.branches", Texts.number(load.nominalOhms()), load.branches())
                : Texts.of("bank.ohms", Texts.number(load.nominalOhms()));
    }

    private static ObjectNode document(List<BankPlanRequest.Load> wanted, BankPlan plan) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode straps = root.putArray("straps");
        for (BankPlan.Strap strap : plan.straps()) {
            ObjectNode node = straps.addObject();
            node.put("loadOhms", wanted.get(strap.loadIndex()).nominalOhms());
            node.put("movedEnds", strap.movedEnds());
            ArrayNode changes = node.putArray("changes");
            strap.changes().forEach(changes::add);
            ArrayNode branches = node.putArray("branches");
            for (BankPlan.Branch branch : strap.branches()) {
                ObjectNode entry = branches.addObject();
                entry.put("network", NetworkNotation.format(branch.network()));
                ArrayNode pieces = entry.putArray("pieces");
                branch.pieces().forEach(piece -> pieces.add(piece.toString()));
                entry.put("ohms", branch.ohms());
                entry.put("errorRatio", branch.errorRatio());
                if (branch.powerLimitWatts().isPresent()) {
                    entry.put("powerLimitWatts", branch.powerLimitWatts().getAsDouble());
                } else {
                    entry.putNull("powerLimitWatts");
                }
                entry.put(
                        "limitingPiece",
                        branch.limitingPiece().map(Piece::toString).orElse(null));
            }
        }
        ArrayNode pieces = root.putArray("pieces");
        plan.pieces().forEach(piece -> pieces.add(piece.toString()));
        root.put("fewestPiecesProven", plan.fewestPiecesProven());
        root.put("movedEnds", plan.movedEnds());
        root.put("leastMovedEnds", plan.leastMovedEnds());
        ArrayNode missing = root.putArray("missing");
        plan.missing().forEach(missing::add);
        root.put("message", plan.message());
        return root;
    }
}

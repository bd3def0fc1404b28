// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.load.NetworkNotation;
import org.ohmstead.load.Stock;
import org.ohmstead.load.search.Candidate;
import org.ohmstead.load.search.NetworkSearch;
import org.ohmstead.load.search.SearchRequest;
import org.ohmstead.load.search.SearchResult;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds networks of a wanted resistance. */
@Command(
        name = "find",
        description = {
            "Find the networks of the resistors at hand that come nearest to a resistance.",
            "",
            "The search is exact: up to the number of parts that it states, no network comes nearer. Power limits are those for as"
                    + " long as one likes at the ambient temperature, set by the resistor that reaches its limit first.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when nothing meets the limits.",
            "Example: ohmstead load find --target-ohms 4 --stock 2R7,3R9,5R6x2,10 --max-parts 4"
        })
final class LoadFindCommand implements Callable<Integer> {
    private static final int MOST_PARTS = 30;
    private static final int SHOWN_PARETO = 12;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private StockOption stock;

    @Parameters(arity = "0..1", paramLabel = "PROJECT", description = "A project whose stock is used.")
    private Path project;

    @Option(
            names = "--target-ohms",
            paramLabel = "R",
            required = true,
            description = "The resistance wanted, for example 4 or 1R33.")
    private String targetOhms;

    @Option(
            names = "--max-parts",
            paramLabel = "N",
            defaultValue = "7",
            description = "The most resistors in one network, 1 to 30 (default ${DEFAULT-VALUE}).")
    private int maxParts;

    @Option(names = "--within-percent", paramLabel = "P", description = "Only networks at most so far from the target.")
    private String withinPercent;

    @Option(
            names = "--power-watts",
            paramLabel = "W",
            description = "Only networks that take this power for as long as one likes.")
    private String powerWatts;

    @Option(
            names = "--band-hz",
            paramLabel = "F",
            description = "Only networks whose inductance makes less than 1 %% of power up to this frequency.")
    private String bandHz;

    @Mixin
    private AmbientOption ambient;

    @Option(
            names = "--count",
            paramLabel = "N",
            defaultValue = "10",
            description = "How many different resistances to list, 1 to 1000 (default ${DEFAULT-VALUE}).")
    private int count;

    @Mixin
    private TimeLimitOption timeLimit;

    LoadFindCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double target = Quantities.positive(targetOhms, Unit.OHM, "--target-ohms");
        if (maxParts < 1 || maxParts > MOST_PARTS) {
            throw new InputException("--max-parts is " + maxParts + "; it must be between 1 and " + MOST_PARTS + ".");
        }
        if (count < 1 || count > 1000) {
            throw new InputException("--count is " + count + "; it must be between 1 and 1000.");
        }
        OptionalDouble within = withinPercent == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(Quantities.ratio(withinPercent, "--within-percent"));
        Duration limit = timeLimit.limit();
        SearchRequest request = SearchRequest.of(stock(), target, maxParts)
                .withErrorLimitRatio(within)
                .withPowerWatts(Quantities.optionalPositive(powerWatts, Unit.WATT, "--power-watts"))
                .withBandHz(Quantities.optionalPositive(bandHz, Unit.HERTZ, "--band-hz"))
                .withAmbientCelsius(ambient.celsius())
                .withRanking(count, 1)
                .withTimeLimit(limit);
        SearchResult result = NetworkSearch.run(
                request, () -> false, done -> console.progress((int) Math.round(100 * done), 100, "searching"));
        if (json.wanted()) {
            console.json(document(request, result));
        } else {
            print(result);
        }
        if (result.candidates().isEmpty()) {
            console.message(result.message());
            return ExitCodes.FELL_SHORT;
        }
        return ExitCodes.DONE;
    }

    private Stock stock() throws Exception {
        if (project != null && stock.given()) {
            throw new InputException("Both a project and --stock are named; leave one of them out.");
        }
        return project == null ? stock.read() : StockOption.ofFile(project);
    }

    private void print(SearchResult result) {
        if (result.candidates().isEmpty()) {
            return;
        }
        table(result.candidates());
        List<Candidate> others = result.pareto().stream()
                .filter(candidate -> !result.candidates().contains(candidate))
                .limit(SHOWN_PARETO)
                .toList();
        if (!others.isEmpty()) {
            console.line("");
            console.line("Unbeaten in another way: fewer parts, a tighter worst case or more power.");
            table(others);
        }
        console.line("");
        console.line(result.message());
    }

    private void table(List<Candidate> candidates) {
        TextTable table = new TextTable("network", ">ohms", ">error %", ">parts", ">worst case ohms", ">limit W");
        for (Candidate candidate : candidates) {
            table.row(
                    NetworkNotation.format(candidate.network()),
                    Texts.number(candidate.ohms()),
                    Texts.fixed(100 * candidate.errorRatio(), 3),
                    String.valueOf(candidate.parts()),
                    Texts.fixed(candidate.worstCaseLowOhms(), 3) + " to "
                            + Texts.fixed(candidate.worstCaseHighOhms(), 3),
                    candidate.powerLimitWatts().isPresent()
                            ? Texts.fixed(candidate.powerLimitWatts().getAsDouble(), 1)
                            : "unknown");
        }
        table.print(console);
    }

    private static ObjectNode document(SearchRequest request, SearchResult result) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("targetOhms", request.targetOhms());
        ArrayNode candidates = root.putArray("candidates");
        result.candidates().forEach(candidate -> candidates.add(node(candidate)));
        ArrayNode pareto = root.putArray("pareto");
        result.pareto().forEach(candidate -> pareto.add(node(candidate)));
        root.put("exactUpToParts", result.exactUpToParts());
        root.put("ending", result.ending().name());
        root.put("message", result.message());
        return root;
    }

    private static ObjectNode node(Candidate candidate) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("network", NetworkNotation.format(candidate.network()));
        node.put("ohms", candidate.ohms());
        node.put("errorRatio", candidate.errorRatio());
        node.put("parts", candidate.parts());
        node.putArray("worstCaseOhms").add(candidate.worstCaseLowOhms()).add(candidate.worstCaseHighOhms());
        if (candidate.powerLimitWatts().isPresent()) {
            node.put("powerLimitWatts", candidate.powerLimitWatts().getAsDouble());
        } else {
            node.putNull("powerLimitWatts");
        }
        return node;
    }
}

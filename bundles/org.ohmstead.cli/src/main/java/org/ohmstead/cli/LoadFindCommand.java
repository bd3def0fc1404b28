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
        description = {"${bundle:load.find.does}", "", "${bundle:load.find.more}", ""},
        footer = {"", "${bundle:load.find.exit}", "${bundle:load.find.example}"})
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

    @Parameters(arity = "0..1", paramLabel = "PROJECT", descriptionKey = "load.find.PROJECT")
    private Path project;

    @Option(names = "--target-ohms", paramLabel = "R", required = true, descriptionKey = "load.find.target-ohms")
    private String targetOhms;

    @Option(names = "--max-parts", paramLabel = "N", defaultValue = "7", descriptionKey = "load.find.max-parts")
    private int maxParts;

    @Option(names = "--within-percent", paramLabel = "P", descriptionKey = "load.find.within-percent")
    private String withinPercent;

    @Option(names = "--power-watts", paramLabel = "W", descriptionKey = "load.find.power-watts")
    private String powerWatts;

    @Option(names = "--band-hz", paramLabel = "F", descriptionKey = "load.find.band-hz")
    private String bandHz;

    @Mixin
    private AmbientOption ambient;

    @Option(names = "--count", paramLabel = "N", defaultValue = "10", descriptionKey = "load.find.count")
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
            throw new InputException(Texts.of("loadFind.maxParts", maxParts, MOST_PARTS));
        }
        if (count < 1 || count > 1000) {
            throw new InputException(Texts.of("loadFind.count", count));
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
                request,
                () -> false,
                done -> console.progress((int) Math.round(100 * done), 100, Texts.of("loadFind.progress")));
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
            throw new InputException(Texts.of("loadFind.both"));
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
            console.line(Texts.of("loadFind.others"));
            table(others);
        }
        console.line("");
        console.line(result.message());
    }

    private void table(List<Candidate> candidates) {
        TextTable table = TextTable.named("loadFind.columns");
        for (Candidate candidate : candidates) {
            table.row(
                    NetworkNotation.format(candidate.network()),
                    Texts.number(candidate.ohms()),
                    Texts.fixed(100 * candidate.errorRatio(), 3),
                    String.valueOf(candidate.parts()),
                    Texts.between(
                            Texts.fixed(candidate.worstCaseLowOhms(), 3),
                            Texts.fixed(candidate.worstCaseHighOhms(), 3)),
                    candidate.powerLimitWatts().isPresent()
                            ? Texts.fixed(candidate.powerLimitWatts().getAsDouble(), 1)
                            : Texts.of("loadFind.unknown"));
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

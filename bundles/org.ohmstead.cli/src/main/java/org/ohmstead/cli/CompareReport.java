// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import org.ohmstead.history.Comparison;
import org.ohmstead.history.PricePerWatt;
import org.ohmstead.history.SubjectDifference;
import org.ohmstead.history.SubjectPower;
import org.ohmstead.metrology.Estimate;

/**
 * A comparison for people and for machines.
 *
 * @param comparison what came out
 * @param prices of those whose price is known
 */
record CompareReport(Comparison comparison, List<PricePerWatt> prices) {
    CompareReport {
        prices = List.copyOf(prices);
    }

    private double confidence() {
        return comparison.request().confidence();
    }

    private Optional<PricePerWatt> price(SubjectPower power) {
        return prices.stream().filter(each -> each.power().equals(power)).findFirst();
    }

    void print(Console console) {
        if (!comparison.powers().isEmpty()) {
            console.line(comparison.request().words() + ", "
                    + comparison.ground().map(Comparison.Ground::words).orElse(""));
            console.line("");
            TextTable table = TextTable.named("compare.columns");
            for (SubjectPower power : comparison.powers()) {
                row(table, power);
            }
            table.print(console);
            console.line("");
        }
        comparison.differences().forEach(difference -> console.line(difference.sentence()));
        prices.forEach(price -> console.line(price.sentence()));
        comparison.refusals().forEach(console::line);
    }

    private void row(TextTable table, SubjectPower power) {
        Estimate watts = power.watts();
        Optional<PricePerWatt> price = price(power);
        table.row(
                power.subject().name(),
                power.channel(),
                Texts.fixed(watts.value(), 1),
                Texts.fixed(watts.expandedUncertainty(confidence()), 1),
                power.origin() == SubjectPower.Origin.DIRECT ? Texts.of("compare.direct") : Texts.of("compare.curve"),
                price.map(each -> Texts.fixed(each.price().amount(), 2)).orElse(""),
                price.map(each -> each.price().currency()).orElse(""),
                price.map(each -> Texts.three(each.perWatt().value())).orElse(""),
                price.map(each -> Texts.two(each.perWatt().expandedUncertainty(confidence())))
                        .orElse(""),
                price.flatMap(PricePerWatt::adjustedPerWatt)
                        .map(each -> Texts.three(each.value()))
                        .orElse(""));
    }

    ObjectNode document() {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("supplyVolts", comparison.request().supplyVolts());
        root.put("loadOhms", comparison.request().loadOhms());
        root.put("mode", comparison.request().mode().name());
        root.put("kind", comparison.request().kind().name());
        root.put("confidence", confidence());
        comparison.ground().ifPresent(ground -> root.put("endPoint", Texts.endPoint(ground.endPoint()))
                .put("frequencyHz", ground.frequencyHz()));
        ArrayNode powers = root.putArray("powers");
        for (SubjectPower power : comparison.powers()) {
            ObjectNode node = powers.addObject();
            node.put("name", power.subject().name());
            node.put("source", power.subject().source());
            node.put("amplifier", power.subject().specimen().amplifier());
            node.put("serialNumber", power.subject().specimen().serialNumber());
            node.put("channel", power.channel());
            put(node, "Watts", "power", power.watts());
            node.put("origin", power.origin() == SubjectPower.Origin.DIRECT ? "readings" : "curve");
            node.put("readings", power.readings());
            price(power).ifPresent(price -> fill(node.putObject("price"), price));
        }
        ArrayNode differences = root.putArray("differences");
        for (SubjectDifference difference : comparison.differences()) {
            ObjectNode node = differences.addObject();
            node.put("first", difference.first().subject().name());
            node.put("second", difference.second().subject().name());
            put(node, "Watts", "difference", difference.watts());
            node.put("differenceRatio", difference.relative().value());
            node.put("standardUncertaintyRatio", difference.relative().standardUncertainty());
            node.put("sharesInstruments", difference.sharesInstruments());
            node.put("significant", difference.significant());
            node.put("sentence", difference.sentence());
        }
        comparison.refusals().forEach(root.putArray("refusals")::add);
        return root;
    }

    private void put(ObjectNode node, String unit, String name, Estimate estimate) {
        node.put(name + unit, estimate.value());
        node.put("standardUncertainty" + unit, estimate.standardUncertainty());
        node.put("expandedUncertainty" + unit, estimate.expandedUncertainty(confidence()));
    }

    private void fill(ObjectNode node, PricePerWatt price) {
        node.put("amount", price.price().amount());
        node.put("currency", price.price().currency());
        node.put("on", price.price().on().toString());
        node.put("outputs", price.outputs());
        put(node, "PerWatt", "price", price.perWatt());
        price.adjustedPerWatt().ifPresent(adjusted -> {
            ObjectNode item = node.putObject("adjusted");
            item.put("base", price.base().orElseThrow());
            price.adjustedAmount().ifPresent(amount -> item.put("amount", amount));
            put(item, "PerWatt", "price", adjusted);
        });
    }
}

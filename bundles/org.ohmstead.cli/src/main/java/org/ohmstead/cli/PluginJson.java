// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.PluginKind;
import org.ohmstead.measure.engine.PluginView;
import org.ohmstead.model.Problem;

/** Plug-ins as data, for machines. */
final class PluginJson {
    private PluginJson() {}

    static ObjectNode document(CatalogView catalog) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode plugins = root.putArray("plugins");
        catalog.plugins().forEach(plugin -> plugins.add(node(plugin, catalog)));
        ArrayNode problems = root.putArray("problems");
        for (Problem problem : catalog.problems()) {
            problems.addObject()
                    .put("severity", problem.severity().name().toLowerCase(Locale.ROOT))
                    .put("where", problem.where())
                    .put("what", problem.what())
                    .put("remedy", problem.remedy());
        }
        return root;
    }

    static ObjectNode node(PluginView plugin, CatalogView catalog) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("kind", word(plugin.kind()));
        node.put("id", plugin.id());
        node.put("version", plugin.version());
        node.put("name", plugin.name());
        node.put("state", plugin.setAside() ? "setAside" : "inUse");
        node.put("faultsInARow", plugin.faultsInARow());
        node.put("lastFault", plugin.lastFault());
        if (plugin.kind() == PluginKind.MEASUREMENT) {
            catalog.measurements().stream()
                    .filter(info -> info.id().equals(plugin.id()))
                    .findFirst()
                    .ifPresent(info -> fill(node, info));
        } else if (plugin.kind() == PluginKind.DRIVER) {
            catalog.drivers().stream()
                    .filter(info -> info.id().equals(plugin.id()))
                    .findFirst()
                    .ifPresent(info -> fill(node, info));
        }
        return node;
    }

    static String word(PluginKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    static String word(DriverInfo.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    private static void fill(ObjectNode node, MeasurementInfo info) {
        node.put("summary", info.summary());
        info.follows().forEach(node.putArray("follows")::add);
        ArrayNode needs = node.putArray("needs");
        info.needs().stream()
                .sorted()
                .forEach(ability -> needs.addObject().put("id", ability.name()).put("words", ability.words()));
        node.put("longestSeconds", info.longest().toMillis() / 1000.0);
        fillSettings(node, info.settings());
        ArrayNode figures = node.putArray("figures");
        for (FigureInfo figure : info.figures()) {
            figures.addObject()
                    .put("id", figure.id())
                    .put("name", figure.name())
                    .put("unit", figure.unit().symbol())
                    .put("perChannel", figure.perChannel());
        }
    }

    private static void fill(ObjectNode node, DriverInfo info) {
        node.put("bench", word(info.kind()));
        node.put("asksPerson", info.asksPerson());
        node.put("summary", info.summary());
        fillSettings(node, info.settings());
    }

    private static void fillSettings(ObjectNode node, List<Setting> settings) {
        ArrayNode list = node.putArray("settings");
        for (Setting setting : settings) {
            ObjectNode each = list.addObject();
            each.put("id", setting.id());
            each.put("name", setting.name());
            each.put("help", setting.help());
            if (setting instanceof Setting.Number number) {
                each.put("type", "number");
                each.put("unit", number.unit().symbol());
                each.put("default", number.defaultValue());
                each.put("least", number.least());
                each.put("most", number.most());
            } else if (setting instanceof Setting.Count count) {
                each.put("type", "count");
                each.put("default", count.defaultValue());
                each.put("least", count.least());
                each.put("most", count.most());
            } else if (setting instanceof Setting.Flag flag) {
                each.put("type", "flag");
                each.put("default", flag.defaultValue());
            } else {
                each.put("type", setting instanceof Setting.Choice ? "choice" : "text");
                each.put("default", setting.defaultText());
            }
            if (setting instanceof Setting.Choice choice) {
                choice.choices().forEach(each.putArray("choices")::add);
            }
        }
    }
}

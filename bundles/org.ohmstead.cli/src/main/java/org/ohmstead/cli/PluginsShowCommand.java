// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.PluginKind;
import org.ohmstead.measure.engine.PluginView;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Says all about one plug-in. */
@Command(
        name = "show",
        description = {"${bundle:plugins.show.does}", ""},
        footer = {"", "${bundle:plugins.show.note}", "${bundle:plugins.show.example}"})
final class PluginsShowCommand implements Callable<Integer> {
    private final Console console;
    private final PluginSource plugins;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(index = "0", paramLabel = "ID", descriptionKey = "plugins.show.ID")
    private String id;

    PluginsShowCommand(Console console, PluginSource plugins) {
        this.console = console;
        this.plugins = plugins;
    }

    @Override
    public Integer call() throws Exception {
        CatalogView catalog = plugins.catalog(new ConsoleOperator(console)).view();
        PluginView plugin = PluginIds.find(catalog.plugins(), PluginView::id, id, "plugin");
        if (json.wanted()) {
            console.json(PluginJson.node(plugin, catalog));
            return ExitCodes.DONE;
        }
        console.line(plugin.name() + (plugin.version().isEmpty() ? "" : " " + plugin.version()));
        console.line(Texts.of("plugin.head", plugin.kind().words(), plugin.id(), PluginsCommand.state(plugin)));
        if (!plugin.lastFault().isEmpty()) {
            console.line(Texts.of("plugin.failed", plugin.faultsInARow(), plugin.lastFault()));
        }
        if (plugin.kind() == PluginKind.MEASUREMENT) {
            catalog.measurements().stream()
                    .filter(info -> info.id().equals(plugin.id()))
                    .forEach(this::print);
        } else if (plugin.kind() == PluginKind.DRIVER) {
            catalog.drivers().stream()
                    .filter(info -> info.id().equals(plugin.id()))
                    .forEach(this::print);
        } else {
            console.line("");
            console.line(Texts.of("plugin.precaution"));
        }
        return ExitCodes.DONE;
    }

    private void print(MeasurementInfo info) {
        console.line("");
        console.line(info.summary());
        info.follows().forEach(each -> console.line(Texts.of("plugin.follows", each)));
        if (!info.needs().isEmpty()) {
            console.line(Texts.of(
                    "plugin.needs",
                    info.needs().stream().sorted().map(Ability::words).collect(Collectors.joining(", "))));
        }
        console.line(Texts.of("plugin.longest", Texts.time(info.longest().toMillis() / 1000.0)));
        console.line("");
        TextTable figures = TextTable.named("plugin.figures");
        info.figures()
                .forEach(figure -> figures.row(
                        figure.id(), figure.name(), figure.unit().symbol(), Texts.yesNo(figure.perChannel())));
        figures.print(console);
        settings(info.settings());
    }

    private void print(DriverInfo info) {
        console.line("");
        console.line(info.summary());
        console.line(
                switch (info.kind()) {
                    case REAL -> Texts.of("plugin.measures");
                    case REPLAYED -> Texts.of("plugin.replays");
                    case SIMULATED -> Texts.of("plugin.simulates");
                });
        settings(info.settings());
    }

    private void settings(List<Setting> settings) {
        console.line("");
        if (settings.isEmpty()) {
            console.line(Texts.of("plugin.noSettings"));
            return;
        }
        TextTable table = TextTable.named("plugin.settings");
        for (Setting setting : settings) {
            table.row(setting.id(), usual(setting), range(setting), setting.name() + ": " + setting.help());
        }
        table.print(console);
    }

    private static String usual(Setting setting) {
        if (setting instanceof Setting.Number number) {
            return (Texts.number(number.defaultValue()) + " " + number.unit().symbol()).strip();
        }
        if (setting instanceof Setting.Flag flag) {
            return flag.defaultValue() ? "true" : "false";
        }
        return setting.defaultText().isEmpty() ? Texts.of("plugin.empty") : setting.defaultText();
    }

    private static String range(Setting setting) {
        if (setting instanceof Setting.Number number) {
            String ends = Texts.between(Texts.number(number.least()), Texts.number(number.most()));
            return (ends + " " + number.unit().symbol()).strip();
        }
        if (setting instanceof Setting.Count count) {
            return Texts.between(String.valueOf(count.least()), String.valueOf(count.most()));
        }
        if (setting instanceof Setting.Choice choice) {
            return String.join(", ", choice.choices());
        }
        return setting instanceof Setting.Flag ? "true, false" : Texts.of("plugin.words");
    }
}

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
        description = {
            "Say all about a plug-in: what it does, what it follows and needs, what may be set and what it gives.",
            ""
        },
        footer = {
            "",
            "Set what it lists with: ohmstead run PROJECT --driver ID --set NAME=VALUE, of a driver --set driver.NAME=VALUE.",
            "Example: ohmstead plugins show power-at-end-point"
        })
final class PluginsShowCommand implements Callable<Integer> {
    private final Console console;
    private final PluginSource plugins;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(index = "0", paramLabel = "ID", description = "Its id or the last part of it.")
    private String id;

    PluginsShowCommand(Console console, PluginSource plugins) {
        this.console = console;
        this.plugins = plugins;
    }

    @Override
    public Integer call() throws Exception {
        CatalogView catalog = plugins.catalog(new ConsoleOperator(console)).view();
        PluginView plugin = PluginIds.find(catalog.plugins(), PluginView::id, id, "plug-in");
        if (json.wanted()) {
            console.json(PluginJson.node(plugin, catalog));
            return ExitCodes.DONE;
        }
        console.line(plugin.name() + (plugin.version().isEmpty() ? "" : " " + plugin.version()));
        console.line(plugin.kind().words() + " " + plugin.id() + ", " + PluginsCommand.state(plugin));
        if (!plugin.lastFault().isEmpty()) {
            console.line("It failed " + plugin.faultsInARow() + " times in a row. " + plugin.lastFault());
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
            console.line(
                    "It looks at each step before it runs and may name bounds that end it; see: ohmstead run PROJECT --dry-run.");
        }
        return ExitCodes.DONE;
    }

    private void print(MeasurementInfo info) {
        console.line("");
        console.line(info.summary());
        info.follows().forEach(each -> console.line("It follows " + each + "."));
        if (!info.needs().isEmpty()) {
            console.line("It needs a bench that can "
                    + info.needs().stream().sorted().map(Ability::words).collect(Collectors.joining(", ")) + ".");
        }
        console.line("It takes at most " + Texts.time(info.longest().toMillis() / 1000.0) + ".");
        console.line("");
        TextTable figures = new TextTable("it gives", "what", "unit", "for each channel");
        info.figures()
                .forEach(figure -> figures.row(
                        figure.id(), figure.name(), figure.unit().symbol(), figure.perChannel() ? "yes" : "no"));
        figures.print(console);
        settings(info.settings());
    }

    private void print(DriverInfo info) {
        console.line("");
        console.line(info.summary());
        console.line(
                switch (info.kind()) {
                    case REAL -> "It measures.";
                    case REPLAYED -> "Its results are of recordings made before.";
                    case SIMULATED -> "Nothing is measured with it; its results say so.";
                });
        settings(info.settings());
    }

    private void settings(List<Setting> settings) {
        console.line("");
        if (settings.isEmpty()) {
            console.line("Nothing may be set.");
            return;
        }
        TextTable table = new TextTable("setting", "usual", "may be", "what");
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
        return setting.defaultText().isEmpty() ? "(empty)" : setting.defaultText();
    }

    private static String range(Setting setting) {
        if (setting instanceof Setting.Number number) {
            String ends = Texts.number(number.least()) + " to " + Texts.number(number.most());
            return (ends + " " + number.unit().symbol()).strip();
        }
        if (setting instanceof Setting.Count count) {
            return count.least() + " to " + count.most();
        }
        if (setting instanceof Setting.Choice choice) {
            return String.join(", ", choice.choices());
        }
        return setting instanceof Setting.Flag ? "true, false" : "words";
    }
}

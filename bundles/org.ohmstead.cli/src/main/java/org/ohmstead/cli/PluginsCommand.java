// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.StateFolder;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.PluginView;
import org.ohmstead.model.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists what is plugged in. */
@Command(
        name = "plugins",
        description = {"${bundle:plugins.does}", "", "${bundle:plugins.more}", ""},
        synopsisSubcommandLabel = "[${bundle:usage.word}]",
        footer = {"", "${bundle:plugins.exit}", "${bundle:plugins.example}", "${bundle:plugins.example2}"})
final class PluginsCommand implements Callable<Integer> {
    private final Console console;
    private final PluginSource plugins;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    PluginsCommand(Console console, PluginSource plugins) {
        this.console = console;
        this.plugins = plugins;
    }

    /** Returns the words below this one, for the command line to add. */
    Object[] words() {
        return new Object[] {
            new PluginsShowCommand(console, plugins), new PluginsTrustCommand(console, StateFolder.own())
        };
    }

    @Override
    public Integer call() throws Exception {
        CatalogView catalog = plugins.catalog(new ConsoleOperator(console)).view();
        if (json.wanted()) {
            console.json(PluginJson.document(catalog));
        } else {
            print(catalog);
        }
        boolean all = catalog.problems().isEmpty() && catalog.plugins().stream().noneMatch(PluginView::setAside);
        return all ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private void print(CatalogView catalog) {
        List<PluginView> views = catalog.plugins();
        TextTable table = TextTable.named("plugins.columns");
        for (PluginView plugin : views) {
            table.row(plugin.kind().words(), plugin.id(), plugin.version(), plugin.name(), state(plugin));
        }
        table.print(console);
        for (Problem problem : catalog.problems()) {
            console.line("");
            console.line(problem.what());
            console.line("    " + problem.remedy());
        }
        console.line("");
        console.line(Texts.of("plugins.all"));
    }

    static String state(PluginView plugin) {
        return plugin.setAside() ? Texts.of("plugins.setAside") : Texts.of("plugins.inUse");
    }
}

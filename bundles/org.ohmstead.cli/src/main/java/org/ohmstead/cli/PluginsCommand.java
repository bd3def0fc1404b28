// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.PluginView;
import org.ohmstead.model.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists what is plugged in. */
@Command(
        name = "plugins",
        description = {
            "List the plug-ins: the measurements that can be made, the bench drivers to make them with, and the precautions that look at"
                    + " each step before it runs.",
            "",
            "A plug-in that failed several times in a row while the program runs is set aside; one that does not say what it is, or"
                    + " whose id another has too, is not used. Both are said, with the reason.",
            ""
        },
        synopsisSubcommandLabel = "[WORD]",
        footer = {
            "",
            "Exit code 1 when a plug-in is not used.",
            "Example: ohmstead plugins show simulated",
            "Example: ohmstead plugins --json"
        })
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
        return new Object[] {new PluginsShowCommand(console, plugins)};
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
        TextTable table = new TextTable("kind", "id", "version", "name", "state");
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
        console.line("All of one: ohmstead plugins show ID");
    }

    static String state(PluginView plugin) {
        return plugin.setAside() ? "set aside" : "in use";
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.concurrent.Callable;
import org.ohmstead.signal.stimulus.SignalKind;
import org.ohmstead.signal.stimulus.SignalSetting;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The kinds of test signals, with what is to be set for each. */
@Command(
        name = "list",
        description = {"${bundle:signal.list.does}", ""},
        footer = {"", "${bundle:signal.list.example}"})
final class SignalListCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    SignalListCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (json.wanted()) {
            console.json(document());
            return ExitCodes.DONE;
        }
        for (SignalKind kind : SignalKind.values()) {
            console.line(kind.id());
            console.line("  " + kind.purpose());
            for (SignalSetting setting : kind.settings()) {
                console.line(
                        String.format("    %-30s %s", setting.id() + "=" + quoted(setting.usual()), setting.label()));
            }
            console.line("");
        }
        return ExitCodes.DONE;
    }

    private static String quoted(String usual) {
        return usual.contains(" ") ? "\"" + usual + "\"" : usual;
    }

    private static ObjectNode document() {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode kinds = root.putArray("kinds");
        for (SignalKind kind : SignalKind.values()) {
            ObjectNode node = kinds.addObject();
            node.put("kind", kind.id());
            ArrayNode settings = node.putArray("settings");
            for (SignalSetting setting : kind.settings()) {
                settings.addObject()
                        .put("id", setting.id())
                        .put("unit", setting.unit().symbol())
                        .put("usual", setting.usual())
                        .put("lowest", setting.lowest())
                        .put("highest", setting.highest());
            }
        }
        return root;
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.signal.sound.ExpectedLevel;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a change of power should do to the level. */
@Command(
        name = "change",
        description = {
            "By how much the level should change from one power to another, and the level that a loudspeaker gives in the free field.",
            "",
            "Both are estimates: loudspeakers get hot and run out of travel, and a vehicle is no free field.",
            ""
        },
        footer = {
            "",
            "Example: ohmstead sound change --from-watts 50 --to-watts 100",
            "Example: ohmstead sound change --to-watts 50 --sensitivity-db 88 --metres 1"
        })
final class SoundChangeCommand implements Callable<Integer> {
    private static final double HEARD_DB = 1;
    private static final double CLEAR_DB = 3;
    private static final double TWICE_DB = 10;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Option(names = "--from-watts", paramLabel = "P", description = "Power before.")
    private String from;

    @Option(names = "--to-watts", paramLabel = "P", required = true, description = "Power after.")
    private String to;

    @Option(names = "--sensitivity-db", paramLabel = "S", description = "Level of the loudspeaker at 1 m for 1 W.")
    private String sensitivity;

    @Option(
            names = "--metres",
            paramLabel = "D",
            defaultValue = "1",
            description = "Distance, for the level (default 1 m).")
    private String metres;

    SoundChangeCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double toWatts = Quantities.positive(to, Unit.WATT, "--to-watts");
        OptionalDouble fromWatts = Quantities.optionalPositive(from, Unit.WATT, "--from-watts");
        OptionalDouble sensitivityDb = Quantities.optionalWithin(sensitivity, Unit.DECIBEL, 0, 200, "--sensitivity-db");
        double distance = Quantities.positive(metres, Unit.METRE, "--metres");
        if (fromWatts.isEmpty() && sensitivityDb.isEmpty()) {
            throw new InputException("Give --from-watts for a change of level, or --sensitivity-db for a level.");
        }
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        if (fromWatts.isPresent()) {
            double changeDb = ExpectedLevel.changeDb(fromWatts.getAsDouble(), toWatts);
            root.put("changeDb", changeDb);
            say("expected change: " + Texts.fixed(changeDb, 2) + " dB (10 lg P2/P1), " + heard(Math.abs(changeDb)));
        }
        if (sensitivityDb.isPresent()) {
            double levelDb = ExpectedLevel.freeFieldDb(sensitivityDb.getAsDouble(), toWatts, distance);
            root.put("freeFieldDb", levelDb);
            say("estimate in the free field at " + Texts.number(distance) + " m: " + Texts.fixed(levelDb, 1)
                    + " dB (S + 10 lg P - 20 lg d); in a cabin it is another");
        }
        if (json.wanted()) {
            console.json(root);
        }
        return ExitCodes.DONE;
    }

    private void say(String line) {
        if (!json.wanted()) {
            console.line(line);
        }
    }

    private static String heard(double changeDb) {
        if (changeDb < HEARD_DB) {
            return "hardly heard";
        }
        if (changeDb < CLEAR_DB) {
            return "heard in a direct comparison";
        }
        return changeDb < TWICE_DB ? "heard clearly" : "about twice as loud, or half, or more";
    }
}

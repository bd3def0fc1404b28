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
        description = {"${bundle:sound.change.does}", "", "${bundle:sound.change.more}", ""},
        footer = {"", "${bundle:sound.change.example}", "${bundle:sound.change.example2}"})
final class SoundChangeCommand implements Callable<Integer> {
    private static final double HEARD_DB = 1;
    private static final double CLEAR_DB = 3;
    private static final double TWICE_DB = 10;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Option(names = "--from-watts", paramLabel = "P", descriptionKey = "sound.change.from-watts")
    private String from;

    @Option(names = "--to-watts", paramLabel = "P", required = true, descriptionKey = "sound.change.to-watts")
    private String to;

    @Option(names = "--sensitivity-db", paramLabel = "S", descriptionKey = "sound.change.sensitivity-db")
    private String sensitivity;

    @Option(names = "--metres", paramLabel = "D", defaultValue = "1", descriptionKey = "sound.change.metres")
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
            throw new InputException(Texts.of("change.missing"));
        }
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        if (fromWatts.isPresent()) {
            double changeDb = ExpectedLevel.changeDb(fromWatts.getAsDouble(), toWatts);
            root.put("changeDb", changeDb);
            say(Texts.of("change.expected", Texts.fixed(changeDb, 2), heard(Math.abs(changeDb))));
        }
        if (sensitivityDb.isPresent()) {
            double levelDb = ExpectedLevel.freeFieldDb(sensitivityDb.getAsDouble(), toWatts, distance);
            root.put("freeFieldDb", levelDb);
            say(Texts.of("change.freeField", Texts.number(distance), Texts.fixed(levelDb, 1)));
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
            return Texts.of("change.hardly");
        }
        if (changeDb < CLEAR_DB) {
            return Texts.of("change.direct");
        }
        return changeDb < TWICE_DB ? Texts.of("change.clearly") : Texts.of("change.twice");
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.signal.sound.Level;
import org.ohmstead.signal.sound.LevelSums;
import org.ohmstead.signal.sound.Phasor;
import org.ohmstead.signal.sound.TimedLevel;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Sums of levels. */
@Command(
        name = "sum",
        description = {"${bundle:sound.sum.does}", ""},
        footer = {
            "",
            "${bundle:sound.sum.example}",
            "${bundle:sound.sum.example2}",
            "${bundle:sound.sum.example3}",
            "${bundle:sound.sum.example4}"
        })
final class SoundSumCommand implements Callable<Integer> {
    private static final double MOST_DB = 300;
    private static final double SECONDS_PER_MINUTE = 60;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(arity = "1..*", paramLabel = "L", descriptionKey = "sound.sum.L")
    private List<String> levels;

    @Option(names = "--phases", paramLabel = "P", split = ",", descriptionKey = "sound.sum.phases")
    private List<String> phases;

    @Option(names = "--minutes", paramLabel = "T", split = ",", descriptionKey = "sound.sum.minutes")
    private List<String> minutes;

    @Option(names = "--background", paramLabel = "B", descriptionKey = "sound.sum.background")
    private String background;

    SoundSumCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        List<Double> values = numbers(levels, "L", -MOST_DB, MOST_DB);
        if (phases != null && minutes != null) {
            throw new InputException(Texts.of("sum.both"));
        }
        String kind;
        double sumDb;
        if (phases != null) {
            kind = Texts.of("sum.coherent");
            sumDb = coherent(values, numbers(phases, "--phases", -1e6, 1e6));
        } else if (minutes != null) {
            kind = Texts.of("sum.equivalent");
            sumDb = equivalent(values, numbers(minutes, "--minutes", 1e-6, 1e6));
        } else {
            kind = Texts.of("sum.incoherent");
            sumDb = LevelSums.incoherentDb(values);
        }
        double result = background == null ? sumDb : less(sumDb);
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("kind", kind).put("sumDb", sumDb);
            if (background != null) {
                root.put("withoutBackgroundDb", result);
            }
            console.json(root);
        } else {
            console.line(Texts.of("sum.line", kind, Texts.fixed(sumDb, 2)));
            if (background != null) {
                console.line(Texts.of("sum.without", Texts.fixed(result, 2)));
            }
        }
        return ExitCodes.DONE;
    }

    private double coherent(List<Double> values, List<Double> degrees) throws InputException {
        requireAsMany(values, degrees, "--phases");
        List<Phasor> sounds = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            sounds.add(new Phasor(values.get(i), degrees.get(i)));
        }
        try {
            return LevelSums.coherentDb(sounds);
        } catch (IllegalArgumentException nothingLeft) {
            throw new InputException(Texts.of("sum.cancel"));
        }
    }

    private double equivalent(List<Double> values, List<Double> lengths) throws InputException {
        requireAsMany(values, lengths, "--minutes");
        List<TimedLevel> parts = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            parts.add(new TimedLevel(values.get(i), SECONDS_PER_MINUTE * lengths.get(i)));
        }
        return LevelSums.equivalentDb(parts);
    }

    private double less(double sumDb) throws InputException {
        double backgroundDb = Quantities.within(background, Unit.DECIBEL, -MOST_DB, MOST_DB, "--background");
        if (backgroundDb >= sumDb) {
            throw new InputException(Texts.of("sum.background", background, Texts.fixed(sumDb, 2)));
        }
        return LevelSums.withoutBackground(Level.exact(sumDb), Level.exact(backgroundDb))
                .valueDb();
    }

    private static List<Double> numbers(List<String> texts, String name, double lowest, double highest)
            throws InputException {
        List<Double> values = new ArrayList<>();
        for (String text : texts) {
            Unit unit = name.equals("L") ? Unit.DECIBEL : Unit.NONE;
            values.add(Quantities.within(text, unit, lowest, highest, name));
        }
        return values;
    }

    private static void requireAsMany(List<Double> values, List<Double> others, String option) throws InputException {
        if (values.size() != others.size()) {
            throw new InputException(Texts.of("sum.many", option, others.size(), values.size()));
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.signal.sound.ExposureCaution;
import org.ohmstead.signal.sound.ExposureCriterion;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What rules for workplaces say of a level. */
@Command(
        name = "exposure",
        description = {
            "After how long a steady level reaches limits that rules for workplaces set, with each rule named.",
            "",
            "These are cautions, not levels or times to aim at. Levels are A-weighted; never put in one that was read with C or Z.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when the level lasts longer than one of them says, or the peak is higher.",
            "Example: ohmstead sound exposure --level-dba 100"
        })
final class SoundExposureCommand implements Callable<Integer> {
    private static final double SECONDS_PER_MINUTE = 60;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Option(
            names = "--level-dba",
            paramLabel = "L",
            required = true,
            description = "A-weighted level of the whole time.")
    private String level;

    @Option(names = "--minutes", paramLabel = "T", description = "How long it lasts on one day.")
    private String minutes;

    @Option(names = "--peak-dbc", paramLabel = "L", description = "C-weighted peak level.")
    private String peak;

    SoundExposureCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        double levelDbA = Quantities.within(level, Unit.DECIBEL, 0, 200, "--level-dba");
        OptionalDouble lasts = Quantities.optionalPositive(minutes, Unit.NONE, "--minutes");
        OptionalDouble peakDbC = Quantities.optionalWithin(peak, Unit.DECIBEL, 0, 220, "--peak-dbc");
        List<ExposureCriterion> passed = new ArrayList<>();
        for (ExposureCriterion criterion : ExposureCriterion.values()) {
            boolean tooLong =
                    lasts.isPresent() && lasts.getAsDouble() * SECONDS_PER_MINUTE > criterion.seconds(levelDbA);
            boolean tooHigh = peakDbC.isPresent()
                    && criterion.peakCDb().isPresent()
                    && peakDbC.getAsDouble() > criterion.peakCDb().getAsDouble();
            if (tooLong || tooHigh) {
                passed.add(criterion);
            }
        }
        if (json.wanted()) {
            console.json(document(levelDbA, passed));
        } else {
            print(levelDbA, passed);
        }
        return passed.isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private static List<String> cautions(double levelDbA) {
        List<String> cautions = new ArrayList<>(ExposureCaution.about(levelDbA, Locale.ENGLISH));
        cautions.add(ExposureCaution.aboutLimits(Locale.ENGLISH));
        return cautions;
    }

    private void print(double levelDbA, List<ExposureCriterion> passed) {
        TextTable table = new TextTable("reached after", "passed", "limit of");
        for (ExposureCriterion criterion : ExposureCriterion.values()) {
            double seconds = criterion.seconds(levelDbA);
            table.row(
                    seconds > 0 ? ExposureCaution.duration(seconds, Locale.ENGLISH) : "at once",
                    passed.contains(criterion) ? "yes" : "",
                    criterion.source(Locale.ENGLISH));
        }
        table.print(console);
        Cautions.print(console, cautions(levelDbA));
    }

    private static ObjectNode document(double levelDbA, List<ExposureCriterion> passed) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("levelDbA", levelDbA);
        ArrayNode list = root.putArray("criteria");
        for (ExposureCriterion criterion : ExposureCriterion.values()) {
            ObjectNode node = list.addObject();
            node.put("id", criterion.name());
            node.put("seconds", criterion.seconds(levelDbA));
            node.put("passed", passed.contains(criterion));
            criterion.peakCDb().ifPresent(value -> node.put("peakCDb", value));
            node.put("source", criterion.source(Locale.ENGLISH));
        }
        Cautions.put(root, cautions(levelDbA));
        return root;
    }
}

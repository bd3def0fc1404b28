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
import org.ohmstead.units.text.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What rules for workplaces say of a level. */
@Command(
        name = "exposure",
        description = {"${bundle:sound.exposure.does}", "", "${bundle:sound.exposure.more}", ""},
        footer = {"", "${bundle:sound.exposure.exit}", "${bundle:sound.exposure.example}"})
final class SoundExposureCommand implements Callable<Integer> {
    private static final double SECONDS_PER_MINUTE = 60;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Option(names = "--level-dba", paramLabel = "L", required = true, descriptionKey = "sound.exposure.level-dba")
    private String level;

    @Option(names = "--minutes", paramLabel = "T", descriptionKey = "sound.exposure.minutes")
    private String minutes;

    @Option(names = "--peak-dbc", paramLabel = "L", descriptionKey = "sound.exposure.peak-dbc")
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
        List<String> cautions = new ArrayList<>(ExposureCaution.about(levelDbA, Language.current()));
        cautions.add(ExposureCaution.aboutLimits(Language.current()));
        return cautions;
    }

    private void print(double levelDbA, List<ExposureCriterion> passed) {
        TextTable table = TextTable.named("exposure.columns");
        for (ExposureCriterion criterion : ExposureCriterion.values()) {
            double seconds = criterion.seconds(levelDbA);
            table.row(
                    seconds > 0 ? ExposureCaution.duration(seconds, Language.current()) : Texts.of("exposure.atOnce"),
                    passed.contains(criterion) ? Texts.yesNo(true) : "",
                    criterion.source(Language.current()));
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

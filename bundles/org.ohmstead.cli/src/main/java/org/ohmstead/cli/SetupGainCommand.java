// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.measure.standard.SourceFullScale;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Rating;
import org.ohmstead.signal.gain.FullScaleDemand;
import org.ohmstead.signal.gain.GainSetup;
import org.ohmstead.signal.gain.GainWords;
import org.ohmstead.signal.gain.MeterCheck;
import org.ohmstead.signal.gain.SourceLevels;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What level, sensitivity and gain lead to an end point. */
@Command(
        name = "gain",
        description = {"${bundle:setup.gain.does}", "", "${bundle:setup.gain.more}", ""},
        footer = {"", "${bundle:setup.gain.exit}", "${bundle:setup.gain.example}"})
final class SetupGainCommand implements Callable<Integer> {
    private static final double LEAST_VOLTS = 0.001;
    private static final double MOST_VOLTS = 1000;
    private static final double WIDEST_OVERLAP_DB = 60;
    private static final double LOWEST_CHECK_DB = -100;
    private static final double HIGHEST_GAIN_DB = 120;
    private static final double PER_CENT = 100;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(arity = "0..1", paramLabel = "PROJECT", descriptionKey = "setup.gain.PROJECT")
    private Path path;

    @Option(names = "--full-scale-volts", paramLabel = "U", descriptionKey = "setup.gain.full-scale-volts")
    private String fullScale;

    @Option(names = "--overlap-db", paramLabel = "G", defaultValue = "10", descriptionKey = "setup.gain.overlap-db")
    private String overlap;

    @Mixin
    private TargetOptions targetOptions;

    @Option(names = "--check-db", paramLabel = "L", defaultValue = "-20", descriptionKey = "setup.gain.check-db")
    private String check;

    @Option(names = "--gain-db", paramLabel = "G", descriptionKey = "setup.gain.gain-db")
    private String gain;

    SetupGainCommand(Console console) {
        this.console = console;
    }

    /** What is told. */
    private record Answer(GainSetup setup, MeterCheck check, Optional<Rating> rating, Optional<PresentGain> present) {}

    @Override
    public Integer call() throws Exception {
        Optional<ProjectFolder> folder = path == null ? Optional.empty() : Optional.of(ProjectFolder.open(path));
        TargetOptions.Chosen chosen = targetOptions.chosen(folder.map(ProjectFolder::project));
        List<LogEntry> entries = folder.isPresent() ? counting(folder.get()) : List.of();
        GainSetup setup = GainSetup.withOverlap(
                        fullScaleVoltsRms(entries),
                        Quantities.within(overlap, Unit.DECIBEL, -WIDEST_OVERLAP_DB, WIDEST_OVERLAP_DB, "--overlap-db"),
                        chosen.target())
                .withClipWatts(targetOptions.clipWatts());
        MeterCheck meterCheck = setup.checkAt(Quantities.within(check, Unit.DECIBEL, LOWEST_CHECK_DB, 0, "--check-db"));
        Answer answer = new Answer(setup, meterCheck, chosen.rating(), present(folder, entries, setup));
        if (json.wanted()) {
            console.json(document(answer));
        } else {
            print(answer);
        }
        return setup.endPointReached() && setup.amplifierHeadroomDb() >= 0 ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    /** Returns the entries of the log that count, oldest first; none when there is no log. */
    private static List<LogEntry> counting(ProjectFolder folder) throws Exception {
        if (!Files.exists(folder.logFile())) {
            return List.of();
        }
        try (TestLog log = folder.readLog()) {
            return LogTrust.trustedEntries(log).stream()
                    .filter(entry -> !entry.voided()
                            && folder.project().reasonSetAside(entry.id()).isEmpty())
                    .toList();
        }
    }

    private double fullScaleVoltsRms(List<LogEntry> entries) throws InputException {
        if (fullScale != null) {
            return Quantities.within(fullScale, Unit.VOLT, LEAST_VOLTS, MOST_VOLTS, "--full-scale-volts");
        }
        for (int i = entries.size() - 1; i >= 0; i--) {
            OptionalDouble known =
                    entries.get(i).figures().map(SourceFullScale::voltsRms).orElse(OptionalDouble.empty());
            if (known.isPresent()) {
                return known.getAsDouble();
            }
        }
        throw new InputException(Texts.of("gain.noFullScale"));
    }

    private Optional<PresentGain> present(Optional<ProjectFolder> folder, List<LogEntry> entries, GainSetup setup)
            throws InputException {
        if (gain != null) {
            return Optional.of(PresentGain.typed(
                    Quantities.within(gain, Unit.DECIBEL, -HIGHEST_GAIN_DB, HIGHEST_GAIN_DB, "--gain-db")));
        }
        return folder.flatMap(project -> PresentGain.logged(
                entries,
                setup.target().bridged(),
                setup.fullScaleVoltsRms(),
                project.project().bench().meterFor(MeterQuantity.OUTPUT_VOLTS)));
    }

    private void print(Answer answer) {
        GainWords words = GainWords.current();
        GainSetup setup = answer.setup();
        answer.rating()
                .ifPresent(rating -> console.line(
                        rating.wording().isBlank()
                                ? Texts.of("gain.rating", rating.id())
                                : Texts.of("gain.rating.wording", rating.id(), rating.wording())));
        console.line(words.summary(setup));
        console.line("");
        figures(answer).print(console);
        console.line("");
        console.line(words.procedure(answer.check()));
        answer.present()
                .ifPresent(present -> console.line(Texts.of(
                        "gain.present",
                        gainText(present),
                        present.from(),
                        Texts.fixed(setup.atGain(present.gainDb()).overlapDb(), 2),
                        words.change(setup.gainDb() - present.gainDb(), 0.05))));
        if (path != null && answer.present().isEmpty()) {
            console.line(Texts.of("gain.noReading"));
        }
        console.line(words.fullScale(setup));
        Cautions.print(console, words.cautions(setup, answer.check()));
    }

    private static String gainText(PresentGain present) {
        if (present.standardUncertaintyDb().isEmpty()) {
            return Texts.fixed(present.gainDb(), 2) + " dB";
        }
        return Texts.fixed(present.gainDb(), 2) + " \u00b1 "
                + Texts.fixed(2 * present.standardUncertaintyDb().getAsDouble(), 2) + " dB (k=2)";
    }

    private static TextTable figures(Answer answer) {
        GainSetup setup = answer.setup();
        TextTable table = TextTable.named("figures.columns");
        table.row(Texts.of("gainRow.source"), Texts.four(setup.fullScaleVoltsRms()), "V RMS");
        table.row(Texts.of("gainRow.output"), Texts.four(setup.target().outputVoltsRms()), "V RMS");
        table.row(Texts.of("gainRow.level"), Texts.fixed(setup.endPointDbfs(), 2), "dBFS");
        table.row(Texts.of("gainRow.sensitivity"), Texts.four(setup.sensitivityVoltsRms()), "V RMS");
        table.row(Texts.of("gainRow.same"), Texts.fixed(SourceLevels.dbu(setup.sensitivityVoltsRms()), 2), "dBu");
        table.row(Texts.of("gainRow.same"), Texts.fixed(SourceLevels.dbv(setup.sensitivityVoltsRms()), 2), "dBV");
        table.row(Texts.of("gainRow.gain"), Texts.fixed(setup.gainDb(), 2), "dB");
        table.row(Texts.of("gainRow.same"), Texts.four(setup.gainRatio()), "V/V");
        if (setup.target().bridged()) {
            table.row(Texts.of("gainRow.channel"), Texts.fixed(setup.channelGainDb(), 2), "dB");
            table.row(
                    Texts.of("gainRow.channelLoad"), Texts.three(setup.target().channelLoadOhms()), "\u03a9");
            table.row(
                    Texts.of("gainRow.channelOutput"), Texts.four(setup.target().channelVoltsRms()), "V RMS");
        }
        table.row(Texts.of("gainRow.sourceHeadroom"), Texts.fixed(setup.sourceHeadroomDb(), 2), "dB");
        table.row(Texts.of("gainRow.amplifierHeadroom"), Texts.fixed(setup.amplifierHeadroomDb(), 2), "dB");
        table.row(Texts.of("gainRow.reading"), Texts.four(answer.check().outputVoltsRms()), "V RMS");
        table.row(Texts.of("gainRow.checkLevel"), Texts.fixed(answer.check().sourceLevelDbfs(), 2), "dBFS");
        return table;
    }

    private static ObjectNode document(Answer answer) {
        GainSetup setup = answer.setup();
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        answer.rating().ifPresent(rating -> root.put("rating", rating.id()));
        root.put("fullScaleVoltsRms", setup.fullScaleVoltsRms());
        root.put("overlapDb", setup.overlapDb());
        root.put("powerWatts", setup.target().powerWatts());
        root.put("loadOhms", setup.target().loadOhms());
        root.put("bridged", setup.target().bridged());
        root.put("channelLoadOhms", setup.target().channelLoadOhms());
        root.put("channelPowerWatts", setup.target().channelPowerWatts());
        root.put("outputVoltsRms", setup.target().outputVoltsRms());
        root.put("endPointDbfs", setup.endPointDbfs());
        root.put("sensitivityVoltsRms", setup.sensitivityVoltsRms());
        root.put("sensitivityDbu", SourceLevels.dbu(setup.sensitivityVoltsRms()));
        root.put("sensitivityDbv", SourceLevels.dbv(setup.sensitivityVoltsRms()));
        root.put("gainDb", setup.gainDb());
        root.put("gainRatio", setup.gainRatio());
        root.put("channelGainDb", setup.channelGainDb());
        root.put("sourceHeadroomDb", setup.sourceHeadroomDb());
        root.put("amplifierHeadroomDb", setup.amplifierHeadroomDb());
        putFullScale(root.putObject("fullScale"), setup.fullScaleDemand());
        ObjectNode check = root.putObject("check");
        check.put("relativeDb", answer.check().relativeDb());
        check.put("sourceLevelDbfs", answer.check().sourceLevelDbfs());
        check.put("sourceVoltsRms", answer.check().sourceVoltsRms());
        check.put("outputVoltsRms", answer.check().outputVoltsRms());
        check.put("powerWatts", answer.check().powerWatts());
        answer.present().ifPresent(present -> putPresent(root.putObject("present"), setup, present));
        Cautions.put(root, GainWords.of(Locale.ENGLISH).cautions(setup, answer.check()));
        return root;
    }

    private static void putFullScale(ObjectNode node, FullScaleDemand demand) {
        node.put("voltsRms", demand.voltsRms());
        node.put("powerWatts", demand.powerWatts());
        node.put("beyondClipDb", demand.beyondClipDb());
        node.put("clips", demand.clipped().isPresent());
        node.put("clippedPowerWatts", demand.clippedPowerWatts());
        demand.clipped().ifPresent(wave -> node.put("distortionPercent", PER_CENT * wave.thdFRatio()));
    }

    private static void putPresent(ObjectNode node, GainSetup setup, PresentGain present) {
        node.put("gainDb", present.gainDb());
        present.standardUncertaintyDb().ifPresent(value -> node.put("standardUncertaintyDb", value));
        if (!present.entryId().isEmpty()) {
            node.put("entry", present.entryId());
            node.put("channel", present.channel());
        }
        node.put("overlapDb", setup.atGain(present.gainDb()).overlapDb());
        node.put("changeDb", setup.gainDb() - present.gainDb());
    }
}

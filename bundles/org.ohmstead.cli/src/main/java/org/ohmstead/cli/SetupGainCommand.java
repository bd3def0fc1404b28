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
        description = {
            "Level, sensitivity and gain to set for an end point, the headroom left, and what full scale would do.",
            "",
            "The gain overlap is how far below full scale the source already drives the amplifier to its end point. With a project"
                    + " the end point is one of its ratings, and the newest fitting reading of its log tells the present gain.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when the source cannot reach the end point, or the amplifier clips before it.",
            "Example: ohmstead setup gain --full-scale-volts 5 --overlap-db 10 --power-watts 100 --load-ohms 4"
        })
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

    @Parameters(
            arity = "0..1",
            paramLabel = "PROJECT",
            description = "A project whose rating is the end point and whose log tells the present gain.")
    private Path path;

    @Option(
            names = "--full-scale-volts",
            paramLabel = "U",
            description =
                    "What the source gives for a sine at full scale, RMS (that of the bench of the project's newest run if left"
                            + " out).")
    private String fullScale;

    @Option(
            names = "--overlap-db",
            paramLabel = "G",
            defaultValue = "10",
            description = "The gain overlap (default ${DEFAULT-VALUE}, which is common practice).")
    private String overlap;

    @Mixin
    private TargetOptions targetOptions;

    @Option(
            names = "--check-db",
            paramLabel = "L",
            defaultValue = "-20",
            description = "The level below the end point at which the gain is set (default ${DEFAULT-VALUE}).")
    private String check;

    @Option(
            names = "--gain-db",
            paramLabel = "G",
            description = "The amplifier's present gain; goes before what a log tells.")
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
        throw new InputException(
                "What the source gives at full scale is not known. Play a sine at 0 dBFS, read its volts, and"
                        + " give them with --full-scale-volts.");
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
        GainWords words = GainWords.of(Locale.ENGLISH);
        GainSetup setup = answer.setup();
        answer.rating()
                .ifPresent(rating -> console.line(
                        "Rating " + rating.id() + (rating.wording().isBlank() ? "" : ": " + rating.wording())));
        console.line(words.summary(setup));
        console.line("");
        figures(answer).print(console);
        console.line("");
        console.line(words.procedure(answer.check()));
        answer.present()
                .ifPresent(present -> console.line("Present gain: " + gainText(present) + ", "
                        + present.from() + ". With it the overlap is "
                        + Texts.fixed(setup.atGain(present.gainDb()).overlapDb(), 2) + " dB. "
                        + words.change(setup.gainDb() - present.gainDb(), 0.05)));
        if (path != null && answer.present().isEmpty()) {
            console.line("The log has no reading that tells the present gain of this mode.");
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
        TextTable table = new TextTable("figure", ">value", "unit");
        table.row("source at full scale", Texts.four(setup.fullScaleVoltsRms()), "V RMS");
        table.row("output at the end point", Texts.four(setup.target().outputVoltsRms()), "V RMS");
        table.row("source level there", Texts.fixed(setup.endPointDbfs(), 2), "dBFS");
        table.row("sensitivity to set", Texts.four(setup.sensitivityVoltsRms()), "V RMS");
        table.row("the same", Texts.fixed(SourceLevels.dbu(setup.sensitivityVoltsRms()), 2), "dBu");
        table.row("the same", Texts.fixed(SourceLevels.dbv(setup.sensitivityVoltsRms()), 2), "dBV");
        table.row("gain to set", Texts.fixed(setup.gainDb(), 2), "dB");
        table.row("the same", Texts.four(setup.gainRatio()), "V/V");
        if (setup.target().bridged()) {
            table.row("of each channel", Texts.fixed(setup.channelGainDb(), 2), "dB");
            table.row("load that each channel sees", Texts.three(setup.target().channelLoadOhms()), "\u03a9");
            table.row("output of each channel", Texts.four(setup.target().channelVoltsRms()), "V RMS");
        }
        table.row("headroom left in the source", Texts.fixed(setup.sourceHeadroomDb(), 2), "dB");
        table.row("headroom left in the amplifier", Texts.fixed(setup.amplifierHeadroomDb(), 2), "dB");
        table.row("meter reading to look for", Texts.four(answer.check().outputVoltsRms()), "V RMS");
        table.row("source level meanwhile", Texts.fixed(answer.check().sourceLevelDbfs(), 2), "dBFS");
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

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.SoundSeriesCsv;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.sound.BandLevel;
import org.ohmstead.signal.sound.ExposureCaution;
import org.ohmstead.signal.sound.FractionalOctave;
import org.ohmstead.signal.sound.MicrophoneCalibration;
import org.ohmstead.signal.sound.SoundLevelMeter;
import org.ohmstead.signal.sound.SoundLevels;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Levels of one recording. */
@Command(
        name = "level",
        description = {"${bundle:sound.level.does}", "", "${bundle:sound.level.more}", ""},
        footer = {"", "${bundle:sound.level.example}", "${bundle:sound.level.example2}"})
final class SoundLevelCommand implements Callable<Integer> {
    private static final double LOWEST_BAND_HZ = 20;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private MicrophoneOptions microphone;

    @Parameters(paramLabel = "FILE", descriptionKey = "sound.level.FILE")
    private Path file;

    @Option(names = "--weighting", paramLabel = "W", defaultValue = "A", descriptionKey = "sound.level.weighting")
    private FrequencyWeighting weighting;

    @Option(names = "--bands", descriptionKey = "sound.level.bands")
    private boolean bands;

    @Option(names = "--into", paramLabel = "SERIES", descriptionKey = "sound.level.into")
    private Path into;

    @Option(names = "--frequency-hz", paramLabel = "F", descriptionKey = "sound.level.frequency-hz")
    private String frequencyHz;

    @Option(names = "--drive-db", paramLabel = "D", descriptionKey = "sound.level.drive-db")
    private String driveDb;

    @Option(names = "--position", paramLabel = "TEXT", defaultValue = "", descriptionKey = "sound.level.position")
    private String position;

    SoundLevelCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (into != null && frequencyHz == null) {
            throw new InputException(Texts.of("level.noFrequency"));
        }
        MicrophoneCalibration calibration = microphone.calibration();
        Waveform shares = microphone.shares(file);
        boolean clipped = clipped(shares);
        Waveform pascals = calibration.pascals(shares);
        SoundLevels levels = SoundLevelMeter.measure(pascals, weighting);
        double exposureDbA = weighting == FrequencyWeighting.A
                ? levels.equivalentDb()
                : SoundLevelMeter.measure(pascals, FrequencyWeighting.A).equivalentDb();
        List<BandLevel> bandLevels = bands
                ? SoundLevelMeter.bands(pascals, FractionalOctave.THIRD_OCTAVE, weighting, LOWEST_BAND_HZ)
                : List.of();
        List<String> cautions = new ArrayList<>(ExposureCaution.about(exposureDbA, Language.current()));
        if (clipped) {
            cautions.add(0, Texts.of("level.clipped"));
        }
        if (into != null) {
            addTo(levels.equivalentDb(), calibration);
        }
        if (json.wanted()) {
            console.json(document(levels, exposureDbA, calibration, bandLevels, cautions));
        } else {
            print(levels, calibration, bandLevels, cautions);
        }
        return clipped ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private static boolean clipped(Waveform shares) {
        for (int i = 0; i < shares.size(); i++) {
            if (Math.abs(shares.voltsAt(i)) >= 0.9999) {
                return true;
            }
        }
        return false;
    }

    private void addTo(double levelDb, MicrophoneCalibration calibration) throws Exception {
        double hertz = Quantities.within(frequencyHz, Unit.HERTZ, 1, 96_000, "--frequency-hz");
        OptionalDouble drive = Quantities.optionalWithin(driveDb, Unit.DECIBEL, -200, 0, "--drive-db");
        SoundSeries series = Files.exists(into)
                ? SoundSeriesCsv.read(into)
                : new SoundSeries("", "", calibration.standardUncertaintyDb(), SoundSeries.EMPTY.repeatDb(), List.of());
        List<SoundPoint> points = new ArrayList<>(series.points());
        points.add(new SoundPoint(hertz, drive, levelDb, weighting, position));
        SoundSeriesCsv.write(series.withPoints(points), into);
    }

    private void print(
            SoundLevels levels, MicrophoneCalibration calibration, List<BandLevel> bandLevels, List<String> cautions) {
        String letter = weighting.name();
        TextTable table = TextTable.named("level.columns");
        table.row(Texts.of("level.equivalent", letter), db(levels.equivalentDb()));
        table.row(Texts.of("level.fast"), db(levels.highestFastDb()));
        table.row(Texts.of("level.slow"), db(levels.highestSlowDb()));
        table.row(Texts.of("level.exposure"), db(levels.exposureDb()));
        table.row(Texts.of("level.peak"), db(levels.peakCDb()));
        table.print(console);
        console.line("");
        console.line(Texts.of(
                "level.over",
                Texts.three(levels.durationSeconds()),
                Texts.two(2 * calibration.standardUncertaintyDb()),
                Texts.fixed(calibration.highestLevelDb(), 1)));
        if (!bandLevels.isEmpty()) {
            console.line("");
            TextTable bandTable = TextTable.named("level.bands");
            bandLevels.forEach(band -> bandTable.row(Texts.number(band.nominalHz()), db(band.levelDb())));
            bandTable.print(console);
        }
        if (!cautions.isEmpty()) {
            Cautions.print(console, cautions);
        }
    }

    private static String db(double value) {
        return Texts.fixed(value, 1);
    }

    private ObjectNode document(
            SoundLevels levels,
            double exposureDbA,
            MicrophoneCalibration calibration,
            List<BandLevel> bandLevels,
            List<String> cautions) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("file", file.getFileName().toString());
        root.put("weighting", weighting.name());
        root.put("equivalentDb", levels.equivalentDb());
        root.put("highestFastDb", levels.highestFastDb());
        root.put("highestSlowDb", levels.highestSlowDb());
        root.put("exposureDb", levels.exposureDb());
        root.put("peakCDb", levels.peakCDb());
        root.put("equivalentDbA", exposureDbA);
        root.put("durationSeconds", levels.durationSeconds());
        root.put("standardUncertaintyDb", calibration.standardUncertaintyDb());
        root.put("pascalsPerFullScale", calibration.pascalsPerFullScale());
        ArrayNode list = root.putArray("bands");
        bandLevels.forEach(band -> list.addObject()
                .put("centreHz", band.centreHz())
                .put("nominalHz", band.nominalHz())
                .put("levelDb", band.levelDb()));
        Cautions.put(root, cautions);
        return root;
    }
}

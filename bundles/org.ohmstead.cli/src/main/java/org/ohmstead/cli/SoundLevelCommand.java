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
import java.util.Locale;
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
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Levels of one recording. */
@Command(
        name = "level",
        description = {
            "Sound levels of a calibrated recording, by IEC 61672-1: Leq, highest F and S level, C-weighted peak; bands.",
            "",
            "The calibration is a recording of a calibrator's tone with the same microphone and the same gain. The first quarter of a"
                    + " second of a recording does not count.",
            ""
        },
        footer = {
            "",
            "Example: ohmstead sound level seat.wav --calibration tone94.wav --weighting C",
            "Example: ohmstead sound level seat.wav --calibration tone94.wav --into sound/before.csv --frequency-hz 50 --drive-db -20"
        })
final class SoundLevelCommand implements Callable<Integer> {
    private static final double LOWEST_BAND_HZ = 20;

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private MicrophoneOptions microphone;

    @Parameters(paramLabel = "FILE", description = "The recording: a WAV file.")
    private Path file;

    @Option(
            names = "--weighting",
            paramLabel = "W",
            defaultValue = "A",
            description = "A, C or Z (default A; C or Z for bass).")
    private FrequencyWeighting weighting;

    @Option(names = "--bands", description = "Show third-octave bands too.")
    private boolean bands;

    @Option(
            names = "--into",
            paramLabel = "SERIES",
            description = "Add Leq to a series of levels; the file is made if it is not there.")
    private Path into;

    @Option(names = "--frequency-hz", paramLabel = "F", description = "Frequency of the tone, for --into.")
    private String frequencyHz;

    @Option(names = "--drive-db", paramLabel = "D", description = "Drive of the tone, for --into.")
    private String driveDb;

    @Option(
            names = "--position",
            paramLabel = "TEXT",
            defaultValue = "",
            description = "Where the microphone was, for --into.")
    private String position;

    SoundLevelCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (into != null && frequencyHz == null) {
            throw new InputException("A level in a series belongs to a frequency; give --frequency-hz.");
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
        List<String> cautions = new ArrayList<>(ExposureCaution.about(exposureDbA, Locale.ENGLISH));
        if (clipped) {
            cautions.add(0, "The recording reaches full scale, so the recorder was clipped: true levels are higher.");
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
        TextTable table = new TextTable("level", ">dB");
        table.row("Leq, " + letter + "-weighted", db(levels.equivalentDb()));
        table.row("highest with F", db(levels.highestFastDb()));
        table.row("highest with S", db(levels.highestSlowDb()));
        table.row("sound exposure level", db(levels.exposureDb()));
        table.row("peak, C-weighted", db(levels.peakCDb()));
        table.print(console);
        console.line("");
        console.line("Over " + Texts.three(levels.durationSeconds()) + " s. The calibration is uncertain by "
                + Texts.two(2 * calibration.standardUncertaintyDb()) + " dB (k=2); full scale is a sine of "
                + Texts.fixed(calibration.highestLevelDb(), 1) + " dB.");
        if (!bandLevels.isEmpty()) {
            console.line("");
            TextTable bandTable = new TextTable(">band Hz", ">dB");
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

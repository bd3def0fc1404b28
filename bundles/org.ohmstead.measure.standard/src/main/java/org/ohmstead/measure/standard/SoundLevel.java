// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/**
 * The sound level at a place, against frequency at one drive or against drive at one frequency, with the background taken off. It reads
 * the background first, begins with the lowest drive, and plays nothing more once a level is above the highest that was set.
 */
@Component
public final class SoundLevel implements Measurement {
    /** The choice of a series over frequencies. */
    static final String FREQUENCY = "frequency";
    /** The choice of a series over drives. */
    static final String DRIVE = "drive";

    static final FigureInfo LEVEL = new FigureInfo("level", "sound level", Unit.DECIBEL, false);
    static final FigureInfo BACKGROUND = new FigureInfo("background", "background level", Unit.DECIBEL, false);
    static final FigureInfo SHORTFALL =
            new FigureInfo("shortfall", "level short of what the drive would give", Unit.DECIBEL, false);

    private static final MeasurementInfo INFO = new MeasurementInfo(
            "org.ohmstead.sound-level",
            "1.0.0",
            "Sound level",
            "Feeds tones and reads the sound level where the microphone is. Loud sound harms hearing for good: begin low, wear hearing"
                    + " protection, and let nobody sit in the vehicle.",
            List.of(
                    "IEC 61672-1, frequency weightings and equivalent level",
                    "NIOSH publication 98-126 (1998), 29 CFR 1910.95 and Directive 2003/10/EC, for the cautions"),
            Set.of(Ability.TONE, Ability.SOUND_LEVEL),
            settings(),
            List.of(LEVEL, BACKGROUND, SHORTFALL),
            Duration.ofMinutes(30));

    private static List<Setting> settings() {
        return List.of(
                new Setting.Choice(
                        "against",
                        "series",
                        "What is varied from level to level.",
                        List.of(FREQUENCY, DRIVE),
                        FREQUENCY),
                ToneSettings.frequencies("20, 25, 31.5, 40, 50, 63, 80, 100"),
                number("driveDb", "drive", "Of the source's full output, in a series over frequency.", -40, -100, 0),
                new Setting.Number(
                        "frequencyHz", "frequency", "Of the tone in a series over drive.", Unit.HERTZ, 50, 1, 20_000),
                new Setting.Text(
                        "drives",
                        "drives",
                        "In dB of the source's full output, separated by commas, in a series over drive.",
                        "-50, -45, -40, -35, -30"),
                number(
                        "loudestDb",
                        "highest level",
                        "A level above it, weighted as set, ends the series.",
                        100,
                        40,
                        140),
                new Setting.Choice(
                        "weighting", "weighting", "C or Z for bass; A for exposure.", List.of("A", "C", "Z"), "C"),
                new Setting.Text(
                        "position",
                        "position",
                        "Where the microphone is, so that it can be put there again.",
                        "at the driver's head, windows closed"),
                number("meterDb", "meter", "Standard uncertainty that all levels share; k = 1.", 0.7, 0, 10),
                number("repeatDb", "repetition", "Standard uncertainty of each level by itself; k = 1.", 0.5, 0, 10),
                SearchSettings.seconds(1));
    }

    private static Setting number(String id, String name, String help, double usual, double least, double most) {
        return new Setting.Number(id, name, help, Unit.DECIBEL, usual, least, most);
    }

    @Override
    public MeasurementInfo info() {
        return INFO;
    }

    @Override
    public Readiness readiness(Subject subject) {
        return StandardReadiness.forLoad(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        List<Feed.Tone> tones = tones(settings);
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), 0);
        return benchRun.silentAfter(run -> new SoundLevelRun(run, settings).result(tones));
    }

    /** The tones by rising frequency as they were named, or by rising drive. */
    private static List<Feed.Tone> tones(Settings settings) throws MeasurementException {
        List<Feed.Tone> tones = new ArrayList<>();
        if (settings.choice("against").equals(DRIVE)) {
            for (double driveDb : drivesDb(settings.text("drives"))) {
                tones.add(Feed.Tone.of(settings.number("frequencyHz"), driveDb));
            }
        } else {
            for (double frequencyHz : ToneSettings.frequenciesHz(settings)) {
                tones.add(Feed.Tone.of(frequencyHz, settings.number("driveDb")));
            }
        }
        return tones;
    }

    private static List<Double> drivesDb(String text) throws MeasurementException {
        List<Double> drives = new ArrayList<>();
        for (String part : text.split(",")) {
            double driveDb;
            try {
                driveDb = QuantityParser.parse(part.strip(), Unit.DECIBEL).value();
            } catch (QuantityException unread) {
                throw new MeasurementException(say("sound.drives", part.strip()), unread);
            }
            if (driveDb > 0 || driveDb < Feed.LOWEST_DB) {
                throw new MeasurementException(say("sound.drives", part.strip()));
            }
            drives.add(driveDb);
        }
        return drives.stream().sorted().distinct().toList();
    }

    static String say(String key, Object... arguments) {
        return Messages.of(SoundLevel.class).text(key, arguments);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;
import org.osgi.service.component.annotations.Component;

/**
 * The sound level at a place, against frequency at one drive or against drive at one frequency, with the background taken off. It reads
 * the background first, begins with the lowest drive, and plays nothing more once a level is above the highest that was set.
 */
@Component
public final class SoundLevel implements Measurement {
    private static final Messages TEXTS = Messages.of(SoundLevel.class);

    /** The choice of a series over frequencies. */
    static final String FREQUENCY = "frequency";
    /** The choice of a series over drives. */
    static final String DRIVE = "drive";

    static FigureInfo levelFigure() {
        return new FigureInfo("level", TEXTS.text("level.figure.level"), Unit.DECIBEL, false);
    }

    static FigureInfo backgroundFigure() {
        return new FigureInfo("background", TEXTS.text("level.figure.background"), Unit.DECIBEL, false);
    }

    static FigureInfo shortfallFigure() {
        return new FigureInfo("shortfall", TEXTS.text("level.figure.shortfall"), Unit.DECIBEL, false);
    }

    private static List<Setting> settings() {
        return List.of(
                new Setting.Choice(
                        "against",
                        TEXTS.text("level.against"),
                        TEXTS.text("level.against.help"),
                        List.of(FREQUENCY, DRIVE),
                        List.of(TEXTS.text("level.against.frequency"), TEXTS.text("level.against.drive")),
                        FREQUENCY),
                ToneSettings.frequencies("20, 25, 31.5, 40, 50, 63, 80, 100"),
                number("driveDb", TEXTS.text("level.driveDb"), TEXTS.text("level.driveDb.help"), -40, -100, 0),
                new Setting.Number(
                        "frequencyHz",
                        TEXTS.text("level.frequencyHz"),
                        TEXTS.text("level.frequencyHz.help"),
                        Unit.HERTZ,
                        50,
                        1,
                        20_000),
                new Setting.Text(
                        "drives",
                        TEXTS.text("level.drives"),
                        TEXTS.text("level.drives.help"),
                        "-50, -45, -40, -35, -30"),
                number("loudestDb", TEXTS.text("level.loudestDb"), TEXTS.text("level.loudestDb.help"), 100, 40, 140),
                new Setting.Choice(
                        "weighting",
                        TEXTS.text("level.weighting"),
                        TEXTS.text("level.weighting.help"),
                        List.of("A", "C", "Z"),
                        "C"),
                new Setting.Text(
                        "position",
                        TEXTS.text("level.position"),
                        TEXTS.text("level.position.help"),
                        "at the driver's head, windows closed"),
                number("meterDb", TEXTS.text("level.meterDb"), TEXTS.text("level.meterDb.help"), 0.7, 0, 10),
                number("repeatDb", TEXTS.text("level.repeatDb"), TEXTS.text("level.repeatDb.help"), 0.5, 0, 10),
                SearchSettings.seconds(1));
    }

    private static Setting number(String id, String name, String help, double usual, double least, double most) {
        return new Setting.Number(id, name, help, Unit.DECIBEL, usual, least, most);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                "org.ohmstead.sound-level",
                "1.0.0",
                TEXTS.text("level.name"),
                TEXTS.text("level.summary"),
                List.of(
                        "IEC 61672-1, frequency weightings and equivalent level",
                        "NIOSH publication 98-126 (1998), 29 CFR 1910.95 and Directive 2003/10/EC, for the cautions"),
                Set.of(Ability.TONE, Ability.SOUND_LEVEL),
                settings(),
                List.of(levelFigure(), backgroundFigure(), shortfallFigure()),
                Duration.ofMinutes(30));
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
                throw MeasurementException.of(() -> say("sound.drives", part.strip()), unread);
            }
            if (driveDb > 0 || driveDb < Feed.LOWEST_DB) {
                throw MeasurementException.of(() -> say("sound.drives", part.strip()));
            }
            drives.add(driveDb);
        }
        return drives.stream().sorted().distinct().toList();
    }

    /** Returns a note, which the log keeps in English. */
    static String note(String key, Object... arguments) {
        return Language.speaking(Locale.ENGLISH, () -> say(key, arguments));
    }

    static String say(String key, Object... arguments) {
        return TEXTS.text(key, arguments);
    }
}

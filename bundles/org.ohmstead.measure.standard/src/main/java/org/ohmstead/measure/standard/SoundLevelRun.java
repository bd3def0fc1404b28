// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.sound.DriveLinearity;
import org.ohmstead.signal.sound.ExposureCaution;
import org.ohmstead.signal.sound.Level;
import org.ohmstead.signal.sound.LevelSums;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;

/** One run of {@link SoundLevel}: the background, then one tone after the other. */
final class SoundLevelRun {
    private static final double NEAR_DB = 3;

    private final BenchRun run;
    private final boolean overDrive;
    private final FrequencyWeighting weighting;
    private final String position;
    private final double seconds;
    private final double loudestDb;
    private final double repeatDb;
    private final double meterDb;
    private final List<Figure> figures = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final List<SoundPoint> points = new ArrayList<>();
    private double loudestAWeightedDb = Double.NEGATIVE_INFINITY;

    SoundLevelRun(BenchRun run, Settings settings) {
        this.run = run;
        this.overDrive = settings.choice("against").equals(SoundLevel.DRIVE);
        this.weighting = FrequencyWeighting.valueOf(settings.choice("weighting"));
        this.position = settings.text("position").strip();
        this.seconds = settings.number("recordSeconds");
        this.loudestDb = settings.number("loudestDb");
        this.repeatDb = settings.number("repeatDb");
        this.meterDb = settings.number("meterDb");
    }

    MeasurementResult result(List<Feed.Tone> tones) throws MeasurementException, InterruptedException {
        run.progress().at(0, SoundLevel.backgroundFigure().name());
        notes.add(
                position.isEmpty()
                        ? SoundLevel.say("sound.nowhere")
                        : SoundLevel.say("sound.position", position, weighting.name(), seconds));
        Level background = level(heard(new Feed.Silence()));
        add(Figure.of(SoundLevel.backgroundFigure(), background.valueDb())
                .withStandardUncertainty(background.standardUncertaintyDb()));
        notes.add(SoundLevel.note("sound.background", background.valueDb()));
        for (int i = 0; i < tones.size(); i++) {
            Feed.Tone tone = tones.get(i);
            String at = overDrive ? drive(tone) : ToneSettings.at(tone.frequencyHz());
            run.progress().at(i / (double) tones.size(), at);
            Level total = level(heard(tone));
            run.bench().feed(new Feed.Silence());
            take(tone, at, total, background);
            if (total.valueDb() > loudestDb && i + 1 < tones.size()) {
                notes.add(SoundLevel.note("sound.ended", at, total.valueDb(), loudestDb));
                break;
            }
        }
        if (points.isEmpty()) {
            throw MeasurementException.of(() -> SoundLevel.say("sound.none", background.valueDb()));
        }
        if (overDrive) {
            addShortfalls();
        }
        notes.addAll(ExposureCaution.about(loudestAWeightedDb, Locale.ENGLISH));
        return new MeasurementResult(figures, Optional.empty(), notes);
    }

    private SoundObservation heard(Feed feed) throws MeasurementException, InterruptedException {
        run.progress().checkpoint();
        run.bench().feed(feed);
        SoundObservation heard = run.bench().observeSound(weighting, position, seconds);
        run.progress().checkpoint();
        return heard;
    }

    /** What the bench knows of its own meter takes the place of the setting. */
    private Level level(SoundObservation heard) {
        return new Level(
                heard.levelDb(), Math.hypot(heard.standardUncertaintyDb().orElse(meterDb), repeatDb));
    }

    private void take(Feed.Tone tone, String at, Level total, Level background) {
        double overDb = total.valueDb() - background.valueDb();
        if (overDb <= 0) {
            notes.add(SoundLevel.note("sound.hidden", at));
            return;
        }
        if (overDb < NEAR_DB) {
            notes.add(SoundLevel.note("sound.near", at));
        }
        Level level = LevelSums.withoutBackground(total, background);
        add(Figure.of(SoundLevel.levelFigure(), level.valueDb())
                .at(at)
                .withStandardUncertainty(level.standardUncertaintyDb()));
        points.add(new SoundPoint(
                tone.frequencyHz(), OptionalDouble.of(tone.driveDb()), level.valueDb(), weighting, position));
        loudestAWeightedDb = Math.max(
                loudestAWeightedDb,
                level.valueDb()
                        - weighting.gainDb(tone.frequencyHz())
                        + FrequencyWeighting.A.gainDb(tone.frequencyHz()));
    }

    private void addShortfalls() {
        SoundSeries series = new SoundSeries("", "", meterDb, repeatDb, points);
        Optional<DriveLinearity> found =
                DriveLinearity.of(series, points.get(0).frequencyHz(), DriveLinearity.USUAL_THRESHOLD_DB);
        if (found.isEmpty()) {
            notes.add(SoundLevel.note("sound.few"));
            return;
        }
        double most = 0;
        for (DriveLinearity.Point point : found.get().points()) {
            Level shortfall = point.shortfall();
            most = Math.max(most, Math.abs(shortfall.valueDb()));
            add(Figure.of(SoundLevel.shortfallFigure(), shortfall.valueDb())
                    .at(drive(point.driveDb()))
                    .withStandardUncertainty(shortfall.standardUncertaintyDb()));
        }
        notes.add(
                found.get().first().isPresent()
                        ? SoundLevel.note(
                                "sound.compressed",
                                found.get().first().get().driveDb(),
                                found.get().first().get().shortfall().valueDb())
                        : SoundLevel.note("sound.straight", most));
    }

    private void add(Figure figure) {
        figures.add(figure);
        run.progress().live(figure);
    }

    private static String drive(Feed.Tone tone) {
        return drive(tone.driveDb());
    }

    private static String drive(double driveDb) {
        return driveDb == Math.rint(driveDb)
                ? String.format(Locale.ROOT, "%.0f dB", driveDb)
                : String.format(Locale.ROOT, "%.2f dB", driveDb);
    }
}

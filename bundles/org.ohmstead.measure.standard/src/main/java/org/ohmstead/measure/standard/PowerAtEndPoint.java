// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
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
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Reading;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicy;
import org.osgi.service.component.annotations.ReferencePolicyOption;

/**
 * Output power at the end point of a step, by a search for the level: distortion limit, onset of clipping or a set level, with a
 * steady tone or a burst. It gives a reading with the whole level sweep and the uncertainty of {@link PowerUncertainty}.
 */
@Component
public final class PowerAtEndPoint implements Measurement {
    private static final Messages TEXTS = Messages.of(PowerAtEndPoint.class);

    private static List<Setting> settings() {
        List<Setting> all = new ArrayList<>(SearchSettings.all());
        all.add(new Setting.Text("levels", TEXTS.text("power.levels"), TEXTS.text("power.levels.help"), ""));
        return List.copyOf(all);
    }

    private final AtomicReference<PartSharing> sharing = new AtomicReference<>(BudgetSetting.NO_SHARING);

    /** Takes what tells how power falls on the parts of a load, so that their warming is accounted for. */
    @Reference(
            service = PartSharing.class,
            cardinality = ReferenceCardinality.OPTIONAL,
            policy = ReferencePolicy.DYNAMIC,
            policyOption = ReferencePolicyOption.GREEDY)
    public void bindSharing(PartSharing came) {
        sharing.set(Objects.requireNonNull(came, "came"));
    }

    /** Lets it go. */
    public void unbindSharing(PartSharing gone) {
        sharing.compareAndSet(gone, BudgetSetting.NO_SHARING);
    }

    @Override
    public MeasurementInfo info() {
        return new MeasurementInfo(
                PowerProcedure.ID,
                PowerProcedure.VERSION,
                TEXTS.text("power.name"),
                TEXTS.text("power.summary"),
                List.of(
                        "IEC 60268-3, distortion-limited output power (the idea; clause text from memory)",
                        "GUM (JCGM 100:2008), equations 10 and 13, for the uncertainty"),
                Set.of(Ability.TONE, Ability.WAVEFORM),
                settings(),
                List.of(new FigureInfo("power", TEXTS.text("power.figure.power"), Unit.WATT, true)),
                Duration.ofMinutes(20));
    }

    @Override
    public Readiness readiness(Subject subject) {
        return StandardReadiness.forPower(subject);
    }

    @Override
    public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress)
            throws MeasurementException, InterruptedException {
        List<Double> levelsDb = levelsDb(settings.text("levels"));
        BenchRun benchRun = new BenchRun(bench, progress, subject.step().mode(), settings.number("settleSeconds"));
        return benchRun.silentAfter(run -> {
            LevelSearch search = new LevelSearch(
                    run,
                    subject,
                    subject.step().stimulus(),
                    subject.step().endPoint(),
                    SearchSettings.limits(settings, subject.step().stimulus()),
                    info().figures().get(0));
            if (!levelsDb.isEmpty()) {
                search.runThrough(levelsDb);
            } else if (subject.step().endPoint() instanceof EndPoint.FixedLevel fixed) {
                search.runAt(fixed.driveDb());
            } else {
                search.run();
            }
            Reading reading = PowerReadings.ofSearch(subject, search, info(), sharing.get());
            return new MeasurementResult(
                    PowerFigures.of(info().figures().get(0), reading), Optional.of(reading), reading.notes());
        });
    }

    private static List<Double> levelsDb(String text) throws MeasurementException {
        List<Double> levels = new ArrayList<>();
        for (String each : text.isBlank() ? new String[0] : text.split(",")) {
            try {
                levels.add(QuantityParser.parse(each.strip(), Unit.DECIBEL).value());
            } catch (QuantityException e) {
                throw Faults.because(e, "levels.unread", Said.by(e));
            }
        }
        for (double level : levels) {
            if (level > 0 || level < Feed.LOWEST_DB) {
                throw Faults.of("levels.range", level, Feed.LOWEST_DB);
            }
        }
        return levels.stream().distinct().sorted().toList();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.ProgressView;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Step;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.session.BackgroundWork;

/** What is known of the item that is being measured, or was last. User interface's thread only, but for the looks at recordings. */
final class RunProgress implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(RunProgress.class);

    private static final double PERCENT = 100;
    private static final double MILLI = 1e-3;

    private final BackgroundWork work;
    private final Clock clock;
    private final Runnable changed;
    private final ExecutorService looking = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "ohmstead look at recordings");
        thread.setDaemon(true);
        return thread;
    });
    private final Map<LiveFigure.Kind, LiveFigure> figures = new EnumMap<>(LiveFigure.Kind.class);
    private Optional<PlanItem> item = Optional.empty();
    private Optional<Step> step = Optional.empty();
    private Optional<BenchLoad> load = Optional.empty();
    private Optional<ProgressView> view = Optional.empty();
    private Optional<Acquisition> seen = Optional.empty();
    private Optional<Observation> seenMeters = Optional.empty();
    private Optional<AcquisitionLook> look = Optional.empty();
    private Optional<Instant> begun = Optional.empty();
    private Optional<Duration> took = Optional.empty();
    private SearchCourse course = new SearchCourse(Map.of(), OptionalDouble.empty());
    private boolean looks;
    private Optional<Runnable> nextLook = Optional.empty();

    RunProgress(BackgroundWork work, Clock clock, Runnable changed) {
        this.work = work;
        this.clock = clock;
        this.changed = changed;
        forget();
    }

    /** Forgets everything, as when another project is opened. */
    void forget() {
        for (LiveFigure.Kind kind : LiveFigure.Kind.values()) {
            figures.put(kind, LiveFigure.unknown(kind));
        }
        item = Optional.empty();
        view = Optional.empty();
        look = Optional.empty();
        begun = Optional.empty();
        took = Optional.empty();
        seen = Optional.empty();
        seenMeters = Optional.empty();
        nextLook = Optional.empty();
        course = new SearchCourse(Map.of(), OptionalDouble.empty());
    }

    /** An item begins. */
    void begin(PlanItem newItem, Project project) {
        if (item.filter(newItem::equals).isPresent() && begun.isPresent() && took.isEmpty()) {
            return;
        }
        forget();
        item = Optional.of(newItem);
        step = project.step(newItem.stepId());
        load = step.flatMap(each -> project.load(each.loadId()));
        begun = Optional.of(clock.instant());
        step.ifPresent(each -> course = SearchCourse.of(each.endPoint()));
    }

    /** Hears how far it is. */
    void progressed(ProgressView now) {
        view = Optional.of(now);
        now.meters().ifPresent(this::meters);
        now.newest()
                .filter(newest -> seen.filter(last -> last == newest).isEmpty())
                .ifPresent(newest -> {
                    seen = Optional.of(newest);
                    look(newest, now.what());
                });
    }

    /** The item ended. */
    void end(Optional<Reading> reading) {
        took = begun.map(from -> Duration.between(from, clock.instant()));
        reading.ifPresent(found -> course = course.of(found));
    }

    private void meters(Observation meters) {
        if (seenMeters.filter(meters::equals).isPresent()) {
            return;
        }
        seenMeters = Optional.of(meters);
        meters.supplyVolts().ifPresent(value -> add(LiveFigure.Kind.SUPPLY_VOLTS, value, ""));
        meters.supplyAmps().ifPresent(value -> add(LiveFigure.Kind.SUPPLY_AMPS, value, ""));
        String air = meters.ambientCelsius().isPresent()
                ? TEXTS.text(
                        "figure.air",
                        Numbers.format("%.1f", meters.ambientCelsius().getAsDouble()))
                : "";
        meters.caseCelsius().ifPresent(value -> add(LiveFigure.Kind.CASE_CELSIUS, value, air));
    }

    private void add(LiveFigure.Kind kind, double value, String detail) {
        double seconds = MILLI * clock.millis();
        figures.put(kind, figures.get(kind).with(seconds, value, detail));
    }

    // Of recordings that come faster than they can be looked at only the newest counts.
    private void look(Acquisition newest, String what) {
        if (load.isEmpty() || step.isEmpty()) {
            return;
        }
        BenchLoad into = load.get();
        Step of = step.get();
        Optional<PlanItem> mine = item;
        nextLook = Optional.of(() -> {
            AcquisitionLook found = AcquisitionLook.of(newest, into, of.mode(), what);
            work.later(() -> looked(mine, found));
        });
        next();
    }

    private void next() {
        if (!looks && nextLook.isPresent()) {
            looks = true;
            Runnable task = nextLook.get();
            nextLook = Optional.empty();
            looking.execute(() -> {
                try {
                    task.run();
                } finally {
                    work.later(() -> {
                        looks = false;
                        next();
                    });
                }
            });
        }
    }

    private void looked(Optional<PlanItem> of, AcquisitionLook found) {
        if (!of.equals(item)) {
            return;
        }
        look = Optional.of(found);
        if (took.isEmpty()) {
            course = course.with(found);
        }
        figure(found, LiveFigure.Kind.POWER);
        figure(found, LiveFigure.Kind.THD);
        changed.run();
    }

    private void figure(AcquisitionLook found, LiveFigure.Kind kind) {
        boolean power = kind == LiveFigure.Kind.POWER;
        List<AcquisitionLook.Channel> known = found.channels().stream()
                .filter(channel ->
                        channel.powerWatts().isPresent() && channel.thdRatio().isPresent())
                .toList();
        if (known.isEmpty()) {
            return;
        }
        List<Double> values = known.stream()
                .map(channel -> power
                        ? channel.powerWatts().getAsDouble()
                        : PERCENT * channel.thdRatio().getAsDouble())
                .toList();
        double counts = values.stream().reduce(power ? Math::min : Math::max).orElseThrow();
        String each = known.size() < 2
                ? ""
                : known.stream()
                        .map(channel -> channel.name() + " " + Numbers.digits(values.get(known.indexOf(channel)), 3))
                        .collect(Collectors.joining(", "));
        add(kind, counts, each);
    }

    /** Returns which item is meant. */
    Optional<PlanItem> item() {
        return item;
    }

    /** Returns how far it is. */
    Optional<ProgressView> view() {
        return view;
    }

    /** Returns the newest recording. */
    Optional<AcquisitionLook> look() {
        return look;
    }

    /** Returns the levels that were tried. */
    SearchCourse course() {
        return course;
    }

    /** Returns a figure. */
    LiveFigure figure(LiveFigure.Kind kind) {
        return figures.get(kind);
    }

    /** Returns how long it has taken so far, or took; empty when nothing was begun. */
    Optional<Duration> elapsed() {
        return took.or(() -> begun.map(from -> Duration.between(from, clock.instant())));
    }

    /** Looks at nothing any more. */
    @Override
    public void close() {
        looking.shutdown();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Stimulus;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.ChannelAnalysis;
import org.ohmstead.units.text.Said;

/**
 * Looks for an end point by as few and as short recordings at high power as it can: up from a safe level towards what is expected,
 * then between the two levels around the end point until they lie close together. Nothing is fed while it thinks.
 */
final class LevelSearch {
    /** Levels around the end point closer than this settle it: an ideal clipper's power is then right to 0.1 %. */
    private static final double CLOSE_DB = 0.15;
    /** How far on the other side of an estimate the next level is taken. */
    private static final double STRADDLE_DB = 0.05;
    /** Levels below what is expected that are tried first, in dB. */
    private static final double[] APPROACH_DB = {-10, -2, 0};

    private static final double[] BEYOND_STEPS_DB = {0.75, 1.5, 3};
    private static final double BLIND_STEP_DB = 6;
    private static final double DEAD_RATIO = 0.01;
    private static final int DIP_TRIES = 3;

    private final BenchRun run;
    private final Subject subject;
    private final Stimulus stimulus;
    private final SearchGoal goal;
    private final Limits limits;
    private final FigureInfo live;
    private final List<LoadBranch> branches;
    private final OptionalDouble expectedWatts;
    private final List<List<AnalyzedLevel>> channels = new ArrayList<>();
    private final List<TakenLevel> taken = new ArrayList<>();
    private final Set<String> notes = new LinkedHashSet<>();
    private int dips;

    /**
     * What bounds a search.
     *
     * @param startDb the safe level it begins at
     * @param highestDb the highest level that is fed
     * @param mostAcquisitions the most recordings
     * @param recordSeconds length of each
     */
    record Limits(double startDb, double highestDb, int mostAcquisitions, double recordSeconds) {}

    /** One level with what is kept of it. */
    private record TakenLevel(double driveDb, LevelFacts facts) {}

    /** Makes a search for an end point of a step with a stimulus of its own; each level's power is shown as a figure. */
    LevelSearch(BenchRun run, Subject subject, Stimulus stimulus, EndPoint endPoint, Limits limits, FigureInfo live) {
        this.run = run;
        this.subject = subject;
        this.stimulus = stimulus;
        this.goal = new SearchGoal(endPoint);
        this.limits = limits;
        this.live = live;
        this.branches = subject.load().branches();
        this.expectedWatts = ExpectedPower.watts(subject);
        for (int channel = 0; channel < subject.channelCount(); channel++) {
            channels.add(new ArrayList<>());
        }
        if (branches.size() < channels.size()) {
            throw new IllegalArgumentException("subject has a load of " + branches.size()
                    + " resistances; it needs one for each of " + channels.size() + " channels");
        }
    }

    /** Takes the levels that the end point needs. */
    void run() throws MeasurementException, InterruptedException {
        take(limits.startDb());
        requireAlive();
        rise();
        while (taken.size() < limits.mostAcquisitions()) {
            OptionalDouble next = nextBetween();
            if (next.isEmpty()) {
                break;
            }
            take(next.getAsDouble());
        }
        for (int channel = 0; channel < channels.size(); channel++) {
            remark(channel);
        }
    }

    /** Takes a level by way of a safe one. */
    void runAt(double driveDb) throws MeasurementException, InterruptedException {
        if (driveDb > limits.startDb() + 1) {
            take(limits.startDb());
            requireAlive();
        }
        take(driveDb);
    }

    /** Takes the given levels, rising, and no others. */
    void runThrough(List<Double> levelsDb) throws MeasurementException, InterruptedException {
        for (double driveDb : levelsDb) {
            take(driveDb);
        }
        requireAlive();
    }

    private void rise() throws MeasurementException, InterruptedException {
        int step = 0;
        while (taken.size() < limits.mostAcquisitions() && channels.stream().anyMatch(goal::wantsHigher)) {
            double topDb = topDb();
            double next = topDb + BLIND_STEP_DB;
            if (expectedWatts.isPresent()) {
                double expectedDb = expectedDb();
                while (step < APPROACH_DB.length && expectedDb + APPROACH_DB[step] < topDb + 0.1) {
                    step++;
                }
                next = step < APPROACH_DB.length
                        ? expectedDb + APPROACH_DB[step]
                        : topDb + BEYOND_STEPS_DB[Math.min(step - APPROACH_DB.length, BEYOND_STEPS_DB.length - 1)];
                step++;
            }
            next = Math.min(Math.min(next, limits.highestDb()), mostDb());
            if (next < topDb + 0.01) {
                notes.add(String.format(
                        Locale.ROOT,
                        "The level was not raised above %.2f dB, the highest that the source or the load's power limit"
                                + " allows.",
                        topDb));
                return;
            }
            take(next);
        }
    }

    private double topDb() {
        return taken.stream().mapToDouble(TakenLevel::driveDb).max().orElseThrow();
    }

    /** The level at which the strongest channel would give the expected power, if it went on in a straight line. */
    private double expectedDb() {
        return limits.startDb() + 10 * Math.log10(expectedWatts.getAsDouble() / strongestAtStartWatts());
    }

    /** The level at which a branch of the load would reach its power limit. */
    private double mostDb() {
        return limits.startDb() + 10 * Math.log10(subject.load().powerLimitWatts() / strongestAtStartWatts());
    }

    private double strongestAtStartWatts() {
        return channels.stream()
                .mapToDouble(levels -> levels.get(0).analysis().fundamentalPowerWatts())
                .max()
                .orElseThrow();
    }

    private OptionalDouble nextBetween() {
        for (List<AnalyzedLevel> levels : channels) {
            OptionalInt upper = goal.upper(levels);
            if (upper.isPresent()) {
                OptionalDouble next = closer(levels, upper.getAsInt());
                if (next.isPresent()) {
                    return next;
                }
            } else if (goal.beyond(levels.get(levels.size() - 1)) && dips < DIP_TRIES) {
                dips++;
                return OptionalDouble.of(Math.max(Feed.LOWEST_DB, goal.dipDb(levels)));
            }
        }
        return OptionalDouble.empty();
    }

    private OptionalDouble closer(List<AnalyzedLevel> levels, int upper) {
        double belowDb = levels.get(upper - 1).driveDb();
        double aboveDb = levels.get(upper).driveDb();
        double widthDb = aboveDb - belowDb;
        if (widthDb <= CLOSE_DB) {
            return OptionalDouble.empty();
        }
        double next = goal.estimateDb(levels, upper);
        if (next <= belowDb || next >= aboveDb) {
            return OptionalDouble.of(belowDb + widthDb / 2);
        }
        // A level that is close already becomes one end; the next is taken on the other side of the estimate.
        if (next - belowDb < STRADDLE_DB) {
            next += STRADDLE_DB;
        } else if (aboveDb - next < STRADDLE_DB) {
            next -= STRADDLE_DB;
        }
        double room = Math.min(STRADDLE_DB / 2, widthDb / 4);
        return OptionalDouble.of(Math.max(belowDb + room, Math.min(aboveDb - room, next)));
    }

    private void take(double driveDb) throws MeasurementException, InterruptedException {
        double rounded = Math.rint(driveDb * 1000) / 1000;
        run.progress()
                .at(
                        Math.min(1, taken.size() / (double) limits.mostAcquisitions()),
                        String.format(Locale.ROOT, "%.2f dB", rounded));
        Acquisition acquisition = run.record(feed(rounded), limits.recordSeconds());
        LevelFacts facts = AcquisitionFacts.of(acquisition, run.recordedCount());
        for (int channel = 0; channel < channels.size(); channel++) {
            AnalyzedLevel level = analyzed(acquisition, facts, channel, rounded);
            run.progress()
                    .live(Figure.of(live, level.powerWatts())
                            .ofChannel(LevelAnalysis.channelName(subject.step().mode(), channel)));
            channels.get(channel).add(level);
            channels.get(channel).sort(Comparator.comparingDouble(AnalyzedLevel::driveDb));
        }
        taken.add(new TakenLevel(rounded, facts));
    }

    private Feed feed(double driveDb) {
        if (stimulus instanceof Stimulus.ToneBurst burst) {
            return new Feed.Burst(
                    burst.frequencyHz(), driveDb, burst.onSeconds(), burst.periodSeconds(), burst.lowLevelDb());
        }
        return Feed.Tone.of(stimulus.frequencyHz(), driveDb);
    }

    private AnalyzedLevel analyzed(Acquisition acquisition, LevelFacts facts, int channel, double driveDb)
            throws MeasurementException {
        String name = LevelAnalysis.channelName(subject.step().mode(), channel);
        if (acquisition.output().channels().size() <= channel) {
            throw Faults.of("channelMissing", acquisition.output().channels().size(), name);
        }
        Observation meters = acquisition.during();
        try {
            ChannelAnalysis analysis = LevelAnalysis.analyze(
                    acquisition.output().channels().get(channel), branches.get(channel), stimulus.frequencyHz());
            notes.addAll(analysis.notes());
            return new AnalyzedLevel(
                    driveDb,
                    meters.supplyVolts().orElse(subject.step().supplyVolts()),
                    meters.supplyAmps(),
                    facts.capture().sha256(),
                    LevelAnalysis.powerWatts(
                            stimulus, subject.step().id(), facts.capture().fileName(), analysis),
                    analysis);
        } catch (CaptureException e) {
            throw Faults.because(e, "atLevel", name, Said.number("%.1f", driveDb), Said.by(e));
        } catch (EvaluationException e) {
            throw Faults.passedOn(e);
        }
    }

    private void requireAlive() throws MeasurementException {
        double strongest = channels.stream()
                .mapToDouble(levels -> levels.get(0).analysis().fundamentalVoltsRms())
                .max()
                .orElseThrow();
        for (int channel = 0; channel < channels.size(); channel++) {
            double rms = channels.get(channel).get(0).analysis().fundamentalVoltsRms();
            if (rms < DEAD_RATIO * strongest) {
                throw Faults.of(
                        "dead",
                        LevelAnalysis.channelName(subject.step().mode(), channel),
                        Said.number("%.3g", rms),
                        Said.number("%.3g", strongest));
            }
        }
    }

    private void remark(int channel) {
        List<AnalyzedLevel> levels = channels.get(channel);
        String name = LevelAnalysis.channelName(subject.step().mode(), channel);
        OptionalInt upper = goal.upper(levels);
        if (upper.isPresent()) {
            double widthDb = levels.get(upper.getAsInt()).driveDb()
                    - levels.get(upper.getAsInt() - 1).driveDb();
            if (widthDb > CLOSE_DB) {
                notes.add(String.format(
                        Locale.ROOT,
                        "Channel %s: the levels around the end point are still %.2f dB apart after %d recordings.",
                        name,
                        widthDb,
                        taken.size()));
            }
        }
        if (goal.crossings(levels) > 1) {
            notes.add("Channel " + name
                    + ": the end point is passed more than once; the power is that at the first passage above the"
                    + " level of least distortion.");
        }
    }

    /** The levels of each channel, rising. */
    List<List<AnalyzedLevel>> channels() {
        return channels.stream().map(List::copyOf).toList();
    }

    /** What is kept of each level, rising. */
    List<LevelFacts> facts() {
        return taken.stream()
                .sorted(Comparator.comparingDouble(TakenLevel::driveDb))
                .map(TakenLevel::facts)
                .toList();
    }

    /** What is to be said. */
    Set<String> notes() {
        return notes;
    }
}

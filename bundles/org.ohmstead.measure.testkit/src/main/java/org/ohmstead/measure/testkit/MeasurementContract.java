// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.testkit.internal.Call;
import org.ohmstead.measure.testkit.internal.Ended;
import org.ohmstead.measure.testkit.internal.EndingGate;
import org.ohmstead.measure.testkit.internal.FigureFaults;
import org.ohmstead.measure.testkit.internal.Gate;
import org.ohmstead.measure.testkit.internal.LimitedBench;
import org.ohmstead.measure.testkit.internal.LouderBench;
import org.ohmstead.measure.testkit.internal.SettingEdges;
import org.ohmstead.measure.testkit.internal.Trial;
import org.ohmstead.measure.testkit.internal.Turns;
import org.ohmstead.measure.testkit.internal.WatchedBench;

/**
 * What every measurement must keep to. A test of a measurement extends this and says which one; what the figures are worth it tests
 * besides. A measurement that does not run to its end on {@link #bench} fails {@link #givesAResult}, and the tests that need a result are
 * then not run.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
public abstract class MeasurementContract {
    private static final Duration AT_ONCE = Duration.ofSeconds(2);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(60);
    private static final Duration EDGE_TIME = Duration.ofSeconds(1);
    private static final double CHECKPOINT_SECONDS = 1;
    private static final double LOUDER_RATIO = 1.1;

    private Optional<Trial.Run> ordinary = Optional.empty();

    /** Returns a new instance. */
    protected abstract Measurement measurement();

    /** Returns a subject that it is ready for; {@link PracticeSubjects#stereo} unless overridden. */
    protected Subject subject() {
        return PracticeSubjects.stereo();
    }

    /** Returns a new bench that has what the measurement needs and does the same every time; {@link PracticeBench} unless overridden. */
    protected Bench bench() {
        return new PracticeBench(subject());
    }

    /** Returns the settings of the runs as text by id, where the defaults do not suit; none unless overridden. */
    protected Map<String, String> settings() {
        return Map.of();
    }

    /** Returns how long it may take to end after it was told to; the engine waits 3 s, as this does unless overridden. */
    protected Duration grace() {
        return Duration.ofSeconds(3);
    }

    /** Its information is the same at every call, in every instance and after a run. */
    @Test
    public final void saysAlwaysTheSameOfItself() throws Exception {
        Measurement measurement = measurement();
        MeasurementInfo before = measurement.info();
        assertNotNull(before, "The information is null.");
        assertEquals(before, measurement.info(), "The information changed from one call to the next.");
        assertEquals(before, measurement().info(), "Another instance gives other information.");
        run(measurement, bench());
        assertEquals(before, measurement.info(), "A run changed the information.");
    }

    /** With the settings of the test it runs to its end. */
    @Test
    public final void givesAResult() throws Exception {
        Trial.Run run = ran();
        assertTrue(run.ended().value().isPresent(), "The run " + run.ended().words() + "; it must give a result.");
    }

    /** Every value that its settings allow, taken at the edges, leads to a result or to a sentence that says why there is none. */
    @Test
    public final void acceptsEverySettingWithinItsRange() throws Exception {
        List<Setting> all = measurement().info().settings();
        List<String> faults = SettingEdges.faults(all);
        assertTrue(faults.isEmpty(), () -> String.join(" ", faults));
        for (Setting setting : all) {
            for (String value : SettingEdges.within(setting)) {
                Ended<MeasurementResult> ended = atEdge(setting.id(), value);
                boolean allowed = ended.value().isPresent()
                        || ended.threw(MeasurementException.class)
                        || ended.threw(InterruptedException.class);
                assertTrue(
                        allowed,
                        "With " + setting.id() + " = " + value + " the run " + ended.words()
                                + "; a value in range gives a result, or a MeasurementException that says what to do.");
            }
        }
    }

    private Ended<MeasurementResult> atEdge(String id, String value) throws Exception {
        Measurement measurement = measurement();
        Map<String, String> given = new TreeMap<>(settings());
        given.put(id, value);
        Trial trial =
                new Trial(measurement, subject(), Settings.of(measurement.info().settings(), given));
        try (Bench bench = bench()) {
            Trial.makeReady(bench, subject());
            EndingGate gate = new EndingGate(Long.MAX_VALUE);
            Call<MeasurementResult> call = trial.begin(new WatchedBench(bench, gate));
            Ended<MeasurementResult> ended = call.await(EDGE_TIME);
            if (!ended.inTime()) {
                // A long run is as good as any; it only has to end now.
                gate.tell();
                call.interrupt();
                ended = call.await(LONGEST_WAIT);
            }
            return ended;
        }
    }

    /** Whatever the subject, it answers at once, and always the same. */
    @Test
    public final void readinessIsAnAnswer() throws Exception {
        Measurement measurement = measurement();
        for (Subject subject : PracticeSubjects.various()) {
            Ended<Readiness> ended = Call.of(AT_ONCE, () -> measurement.readiness(subject));
            assertTrue(
                    ended.value().isPresent(),
                    "Asked for its readiness for " + subject.step() + " it " + ended.words());
            assertEquals(
                    ended.value().get(), measurement.readiness(subject), "Its readiness changed for " + subject.step());
        }
        assertEquals(
                new Readiness.Ready(),
                measurement.readiness(subject()),
                "It must be ready for the test's own subject.");
    }

    /** Each figure is one of those in its information, is there once, and says its channel where it has one. */
    @Test
    public final void givesOnlyFiguresThatItAnnounces() throws Exception {
        Trial.Run run = finished();
        FigureFaults check = new FigureFaults(measurement().info().figures());
        List<String> faults =
                check.unannounced(run.ended().value().orElseThrow().figures());
        assertTrue(faults.isEmpty(), () -> String.join(" ", faults));
    }

    /** Figures of the result, and those shown meanwhile, are in the units of its information. */
    @Test
    public final void givesFiguresInTheUnitsThatItAnnounces() throws Exception {
        Trial.Run run = finished();
        FigureFaults check = new FigureFaults(measurement().info().figures());
        List<String> faults = new ArrayList<>(
                check.otherUnits(run.ended().value().orElseThrow().figures()));
        faults.addAll(check.otherUnits(run.watched().liveFigures()));
        assertTrue(faults.isEmpty(), () -> String.join(" ", faults));
    }

    /** Runs of one instance, one after the other and two at once that take turns at every call, find what each finds alone. */
    @Test
    public final void keepsNothingBetweenRuns() throws Exception {
        List<Object> first = finished().outcome();
        assertEquals(
                first, run(measurement(), bench()).outcome(), "The test's bench does not give the same every time.");
        List<Object> second = run(measurement(), louder()).outcome();
        Measurement one = measurement();
        assertEquals(first, run(one, bench()).outcome(), "Another instance finds something else.");
        assertEquals(second, run(one, louder()).outcome(), "A second run finds something else than it would alone.");
        assertEquals(first, run(one, bench()).outcome(), "A third run finds something else than the first.");
        List<List<Object>> together = together(measurement());
        String word = "Two runs at once find something else than each alone.";
        assertEquals(first, together.get(0), word);
        assertEquals(second, together.get(1), word);
    }

    private Bench louder() {
        return new LouderBench(bench(), LOUDER_RATIO);
    }

    private List<List<Object>> together(Measurement one) throws Exception {
        Turns turns = new Turns();
        Call<Trial.Run> other = Call.start(() -> inTurn(one, louder(), turns, 1));
        Trial.Run run = inTurn(one, bench(), turns, 0);
        Ended<Trial.Run> ended = other.await(LONGEST_WAIT);
        return List.of(
                run.outcome(),
                ended.value()
                        .orElseThrow(() -> new AssertionError(ended.words()))
                        .outcome());
    }

    private Trial.Run inTurn(Measurement one, Bench bench, Turns turns, int party) throws Exception {
        try {
            return run(one, bench, turns.gate(party));
        } finally {
            turns.end(party);
        }
    }

    /** Told to end at its first call, in the middle and at its last, it ends with what it was told, and soon. */
    @Test
    public final void endsWhenItIsTold() throws Exception {
        EndingGate never = new EndingGate(Long.MAX_VALUE);
        assumeFinished(run(measurement(), bench(), never));
        assertTrue(never.passed() > 0, "It uses neither the bench nor a checkpoint.");
        for (long passes : new TreeSet<>(List.of(0L, never.passed() / 2, never.passed() - 1))) {
            Ended<MeasurementResult> ended =
                    trial(measurement()).end(bench(), new EndingGate(passes), limit(), grace());
            assertTrue(
                    ended.threw(InterruptedException.class),
                    "Told to end at call " + (passes + 1) + " it " + ended.words() + " (" + grace().toMillis()
                            + " ms); it must let the InterruptedException through.");
        }
    }

    /** It ends in the time that it says, on a bench whose recordings take as long as they are. */
    @Test
    public final void endsWithinItsLongestTime() throws Exception {
        Trial.Run run = finished();
        double longestSeconds = measurement().info().longest().toNanos() / 1e9;
        double tookSeconds = run.tookSeconds() + run.watched().savedSeconds();
        assertTrue(
                tookSeconds <= longestSeconds,
                "It takes " + tookSeconds + " s on a bench that is no faster than time; longest is " + longestSeconds
                        + " s.");
    }

    /** It does not begin a recording when more than a second of others has passed since a checkpoint. */
    @Test
    public final void asksOftenWhetherItMayGoOn() throws Exception {
        double seconds = finished().watched().longestSinceCheckpointSeconds();
        assertTrue(
                seconds <= CHECKPOINT_SECONDS,
                "It began a recording when others of " + seconds
                        + " s had passed since a checkpoint. Call it at least once"
                        + " a second, as far as recordings allow.");
    }

    /** What it says of its progress lies between 0 and 1 and has words. */
    @Test
    public final void saysHowFarItIs() throws Exception {
        List<String> faults = finished().watched().faults();
        assertTrue(faults.isEmpty(), () -> String.join("; ", faults));
    }

    /** Nothing is fed any more when it has ended. */
    @Test
    public final void leavesTheFeedSilent() throws Exception {
        assertFalse(finished().watched().fed(), "Something is still fed when it has ended.");
    }

    /** On a bench that has only what it needs it does the same, and asks for nothing else. */
    @Test
    public final void usesOnlyWhatItNeeds() throws Exception {
        finished();
        try (Bench all = bench()) {
            Trial.makeReady(all, subject());
            LimitedBench limited = new LimitedBench(all, measurement().info().needs());
            WatchedBench watched = new WatchedBench(limited, () -> {});
            Ended<MeasurementResult> ended = trial(measurement()).begin(watched).await(limit());
            assertTrue(limited.beyond().isEmpty(), "It does not say that it needs, but tried to: " + limited.beyond());
            assertTrue(ended.value().isPresent(), "On a bench with only what it needs it " + ended.words());
        }
    }

    /** No thread that it opened is there when it has ended. */
    @Test
    public final void leavesNoThreadBehind() throws Exception {
        Trial.Run run = finished();
        assertTrue(run.threadsLeft().isEmpty(), "Threads outlive the run: " + run.threadsLeft());
    }

    private Duration limit() {
        Duration longest = measurement().info().longest();
        return longest.compareTo(LONGEST_WAIT) < 0 ? longest : LONGEST_WAIT;
    }

    private Trial trial(Measurement measurement) {
        try {
            return new Trial(
                    measurement, subject(), Settings.of(measurement.info().settings(), settings()));
        } catch (SettingException wrong) {
            return fail("The settings of the test do not fit. " + wrong.getMessage());
        }
    }

    private Trial.Run run(Measurement measurement, Bench bench) throws Exception {
        return run(measurement, bench, () -> {});
    }

    private Trial.Run run(Measurement measurement, Bench bench, Gate gate) throws Exception {
        return trial(measurement).run(bench, gate, limit());
    }

    /** Returns a run of a new instance to its end; the same for all tests. */
    private Trial.Run ran() throws Exception {
        if (ordinary.isEmpty()) {
            ordinary = Optional.of(run(measurement(), bench()));
        }
        return ordinary.get();
    }

    private Trial.Run finished() throws Exception {
        return assumeFinished(ran());
    }

    private static Trial.Run assumeFinished(Trial.Run run) {
        assumeTrue(run.ended().value().isPresent(), "it gives no result");
        return run;
    }
}

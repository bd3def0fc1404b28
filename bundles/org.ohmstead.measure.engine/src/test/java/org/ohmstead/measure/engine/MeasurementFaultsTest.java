// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.model.Problem;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.units.Unit;

@Timeout(60)
class MeasurementFaultsTest {
    @TempDir
    Path folder;

    private static final class RudeException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        @Override
        public String getMessage() {
            throw new IllegalStateException("no message");
        }
    }

    private static Figure peak(double value) {
        return Figure.of(FakeMeasurement.PEAK, value).ofChannel("A");
    }

    private static int deep(int depth) {
        return deep(depth + 1) + 1;
    }

    static Stream<Arguments> crimes() {
        return Stream.of(
                crime("NullPointerException", (bench, progress) -> {
                    throw new NullPointerException("oh");
                }),
                crime("NoClassDefFoundError", (bench, progress) -> {
                    throw new NoClassDefFoundError("org/example/Missing");
                }),
                crime("AssertionError", (bench, progress) -> {
                    throw new AssertionError("never");
                }),
                crime("StackOverflowError", (bench, progress) -> MeasurementResult.of(peak(deep(0)))),
                crime("RudeException", (bench, progress) -> {
                    throw new RudeException();
                }),
                crime("InterruptedException", (bench, progress) -> {
                    throw new InterruptedException("by myself");
                }),
                crime("throws while it feeds", "IllegalStateException", (bench, progress) -> {
                    bench.feed(Feed.Tone.of(1000, -3));
                    throw new IllegalStateException("left on");
                }),
                crime("gave no result", (bench, progress) -> null),
                crime("value is NaN", (bench, progress) -> MeasurementResult.of(peak(Double.NaN))),
                crime("doneRatio is NaN", (bench, progress) -> {
                    progress.at(Double.NaN, "x");
                    return MeasurementResult.of(peak(1));
                }),
                crime(
                        "in \"W\"",
                        (bench, progress) ->
                                MeasurementResult.of(Figure.of(new FigureInfo("peak", "peak", Unit.WATT, true), 1)
                                        .ofChannel("A"))),
                crime(
                        "which it did not announce",
                        (bench, progress) ->
                                MeasurementResult.of(Figure.of(new FigureInfo("other", "other", Unit.VOLT, true), 1))),
                crime(
                        "for which channel",
                        (bench, progress) -> MeasurementResult.of(Figure.of(FakeMeasurement.PEAK, 1))),
                crime("twice", (bench, progress) -> MeasurementResult.of(peak(1), peak(2))),
                crime(
                        "notes",
                        (bench, progress) -> new MeasurementResult(
                                List.of(peak(1)), Optional.empty(), Collections.nCopies(100_000, "note"))),
                crime("more than 5 times", (bench, progress) -> {
                    Acquisition one = bench.acquire(0.01);
                    while (true) {
                        progress.recorded(one);
                        progress.checkpoint();
                    }
                }),
                crime("seconds is -1.0", (bench, progress) -> {
                    bench.acquire(-1);
                    return MeasurementResult.of(peak(1));
                }));
    }

    private static Arguments crime(String word, FakeMeasurement.Work work) {
        return crime(word, word, work);
    }

    private static Arguments crime(String name, String word, FakeMeasurement.Work work) {
        return Arguments.of(Named.of(name, word), work);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("crimes")
    void whatAMeasurementDoesEndsItsRunAndNothingElse(String word, FakeMeasurement.Work work) throws Exception {
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, true);
            assertTrue(failed.sentence().contains(word), failed.sentence());
            LogEntry note = stage.log.entries(LogQuery.everything()).get(0);
            assertTrue(note.note().orElseThrow().text().contains(word), "the log says so");
        }
    }

    @Test
    void anOrderlyFailureIsNoFault() throws Exception {
        FakeMeasurement.Work work = (bench, progress) -> {
            throw new MeasurementException("The recorder is clipped. Choose a higher range.");
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, false);
            assertTrue(
                    failed.sentence().contains("The recorder is clipped. Choose a higher range."), failed.sentence());
            for (int i = 0; i < 4; i++) {
                stage.plan.run(stage.first);
            }
            assertFalse(stage.isSetAside());
        }
    }

    @Test
    void oneThatHangsAndObeysIsEnded() throws Exception {
        FakeMeasurement.Work work = (bench, progress) -> {
            bench.feed(Feed.Tone.of(1000, -3));
            new CountDownLatch(1).await();
            return null;
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, Duration.ofMillis(200), work))) {
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, true);
            assertTrue(failed.sentence().contains("took longer than"), failed.sentence());
            assertEquals(List.of(), failed.remarks());
        }
    }

    @Test
    void oneThatHangsAndDoesNotObeyIsGivenUpAndItsLateCallsAreRefused() throws Exception {
        CountDownLatch goOn = new CountDownLatch(1);
        AtomicReference<String> late = new AtomicReference<>("");
        FakeMeasurement.Work work = (bench, progress) -> {
            while (goOn.getCount() > 0) {
                LockSupport.parkNanos(1_000_000);
                Thread.interrupted();
            }
            try {
                bench.feed(Feed.Tone.of(1000, 0));
            } catch (IllegalStateException refused) {
                late.set(refused.getMessage());
            }
            return MeasurementResult.of(peak(1));
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, Duration.ofMillis(200), work))) {
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, true);
            assertTrue(failed.remarks().toString().contains("does not end"), failed.toString());
            goOn.countDown();
            Stage.await(() -> late.get().contains("The run is over"));
            assertFalse(stage.driver.fed);
            Stage.await(() -> stage.catalog.view().problems().stream()
                    .map(Problem::what)
                    .anyMatch(what -> what.contains(Stage.BAD) && what.contains("after its run was over")));
            assertEquals(1, stage.log.entries(LogQuery.validFigures()).size(), "its late result counts for nothing");
        }
    }

    @Test
    void aFloodIsCoalesced() throws Exception {
        int count = 200_000;
        FakeMeasurement.Work work = (bench, progress) -> {
            for (int i = 0; i < count; i++) {
                progress.at(i / (double) count, "line " + i);
                progress.live(peak(i).at("place " + i));
            }
            return MeasurementResult.of(peak(1));
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            List<ProgressView> seen = new ArrayList<>();
            stage.plan.addListener(new RunListener() {
                @Override
                public void progress(PlanItem item, ProgressView progress) {
                    seen.add(progress);
                }
            });
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            ProgressView last = seen.get(seen.size() - 1);
            assertTrue(seen.size() < 400, "times told: " + seen.size());
            assertEquals(Stage.LIMITS.mostLines(), last.lines().size());
            assertEquals(count - Stage.LIMITS.mostLines(), last.linesLeftOut());
            assertEquals("line " + (count - 1), last.what());
            assertTrue(last.live().size() <= 200);
        }
    }

    @Test
    void threadsLeftBehindAreFoundAndEnded() throws Exception {
        FakeMeasurement.Work work = (bench, progress) -> {
            Thread left = new Thread(() -> {
                while (!Thread.currentThread().isInterrupted()) {
                    LockSupport.parkNanos(1_000_000);
                }
            });
            left.setName("left-behind");
            left.start();
            return MeasurementResult.of(peak(1));
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            RunOutcome outcome = stage.plan.run(stage.first);
            assertInstanceOf(RunOutcome.Finished.class, outcome);
            assertTrue(
                    outcome.remarks().toString().contains("left 1 thread running (left-behind)"), outcome.toString());
            stage.plan.run(stage.first);
            stage.plan.run(stage.first);
            assertTrue(stage.isSetAside(), "three times in a row");
        }
    }

    @Test
    void callsBackAfterItsEndAreRefused() throws Exception {
        AtomicReference<Progress> kept = new AtomicReference<>();
        FakeMeasurement.Work work = (bench, progress) -> {
            kept.set(progress);
            return FakeMeasurement.peak(bench, progress);
        };
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            int refused = 0;
            for (int i = 0; i < 1000; i++) {
                try {
                    kept.get().at(0.5, "still here");
                } catch (IllegalStateException over) {
                    refused++;
                }
            }
            assertEquals(1000, refused);
            assertEquals(1, stage.catalog.view().problems().size(), "said once");
        }
    }

    @Test
    void textsThatNoFileCanHoldAreMended() throws Exception {
        FakeMeasurement.Work work = (bench, progress) ->
                new MeasurementResult(List.of(peak(1).at("\ud800")), Optional.empty(), List.of("half \udc00 a letter"));
        try (Stage stage = new Stage(folder, new FakeMeasurement(Stage.BAD, work))) {
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            assertTrue(stage.log.verify().intact());
        }
    }

    @Test
    void afterThreeFaultsInARowItIsSetAsideUntilBroughtBack() throws Exception {
        FakeMeasurement measurement = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            throw new IllegalStateException("again");
        });
        try (Stage stage = new Stage(folder, measurement)) {
            for (int i = 0; i < 3; i++) {
                assertInstanceOf(RunOutcome.Failed.class, stage.plan.run(stage.first));
            }
            stage.catalog.unbindMeasurement(measurement);
            stage.catalog.bindMeasurement(measurement);
            RunOutcome refused = stage.plan.run(stage.first);
            assertInstanceOf(RunOutcome.Refused.class, refused);
            assertTrue(refused.sentence().contains("was set aside"), refused.sentence());
            assertTrue(stage.catalog.view().problems().toString().contains("was set aside after 3 faults in a row"));
            stage.catalog.bringBack(PluginKind.MEASUREMENT, Stage.BAD);
            assertInstanceOf(RunOutcome.Failed.class, stage.plan.run(stage.first));
            stage.goesOn();
        }
    }

    @Test
    void oneThatGoesAwayMidRunEndsThatRun() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        FakeMeasurement measurement = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            bench.feed(Feed.Tone.of(1000, -3));
            begun.countDown();
            while (true) {
                bench.acquire(0.01);
                progress.checkpoint();
            }
        });
        try (Stage stage = new Stage(folder, measurement)) {
            Thread remover = new Thread(() -> {
                Stage.await(() -> begun.getCount() == 0);
                stage.catalog.unbindMeasurement(measurement);
            });
            remover.start();
            RunOutcome.Failed failed = stage.failsAndGoesOn(PluginKind.MEASUREMENT, false);
            assertTrue(failed.sentence().contains("was removed while it was in use"), failed.sentence());
            remover.join();
        }
    }

    @Test
    void anotherWithTheSameIdThatComesMidRunChangesNothing() throws Exception {
        FakeMeasurement other = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            throw new IllegalStateException("the second of two");
        });
        Stage[] stages = new Stage[1];
        FakeMeasurement measurement = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            stages[0].catalog.bindMeasurement(other);
            return FakeMeasurement.peak(bench, progress);
        });
        try (Stage stage = new Stage(folder, measurement)) {
            stages[0] = stage;
            assertInstanceOf(RunOutcome.Finished.class, stage.plan.run(stage.first));
            String problems = stage.catalog.view().problems().toString();
            assertTrue(problems.contains("there is another with the id " + Stage.BAD), problems);
            assertTrue(stage.plan.runAll().complete());
            assertTrue(stage.log.verify().intact());
        }
    }
}

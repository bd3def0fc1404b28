// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.RejectedExecutionException;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.shared.LabSyncState.Kind;
import org.ohmstead.testlog.shared.SharedLabException.Reason;

class LabSyncTest {
    private static final RandomGenerator MIDDLE = () -> Long.MIN_VALUE; // nextDouble() is one half

    private final Deque<Runnable> toDo = new ArrayDeque<>();
    private final Deque<SharedLabException> failures = new ArrayDeque<>();
    private final List<LabSyncState> told = new ArrayList<>();
    private Instant now = Instant.parse("2026-03-02T09:00:00Z");
    private int handOvers;
    private final LabSync sync = new LabSync(this::handOver, toDo::add, () -> now, MIDDLE, told::add);

    private HandOverReport handOver() throws SharedLabException {
        handOvers++;
        SharedLabException failure = failures.poll();
        if (failure != null) {
            throw failure;
        }
        return new HandOverReport(List.of());
    }

    private void work() {
        while (!toDo.isEmpty()) {
            toDo.poll().run();
        }
    }

    private void pass(long millis) {
        now = now.plusMillis(millis);
        sync.run();
        work();
    }

    private void fail(Reason reason) {
        failures.add(new SharedLabException(reason, "It did not work."));
    }

    @Test
    void beginsByItselfAndThenOnlyWhenSomethingWasAdded() {
        assertEquals(Kind.WAITING, sync.state().kind());
        sync.run();
        assertEquals(Kind.HANDING_OVER, sync.state().kind());
        work();
        assertEquals(Kind.IN_STEP, sync.state().kind());
        pass(1_000_000);
        assertEquals(1, handOvers);
        sync.appended(3);
        assertEquals(3, sync.state().waiting());
        assertEquals(Optional.of(now), sync.state().since());
        work();
        assertEquals(2, handOvers);
        assertEquals(new LabSyncState(Kind.IN_STEP, 0, Optional.empty(), "", Optional.empty()), sync.state());
    }

    @Test
    void whatIsAddedMeanwhileGoesWithTheNext() {
        sync.run();
        sync.appended(2);
        sync.appended(1);
        assertEquals(1, toDo.size(), "one at a time");
        toDo.poll().run();
        assertEquals(1, handOvers);
        assertEquals(Kind.HANDING_OVER, sync.state().kind(), "the next has begun");
        work();
        assertEquals(2, handOvers);
        assertEquals(0, sync.state().waiting());
    }

    @Test
    void waitsTwiceAsLongAfterEachFailureUpToFiveMinutes() {
        Instant added = now;
        sync.appended(1);
        List<Duration> pauses = new ArrayList<>();
        for (int time = 0; time < 10; time++) {
            fail(Reason.UNREACHABLE);
            sync.run();
            work();
            LabSyncState state = sync.state();
            assertEquals(Kind.WAITING, state.kind());
            assertEquals(1, state.waiting());
            assertEquals(Optional.of(added), state.since());
            assertEquals("It did not work.", state.why());
            Duration pause = Duration.between(now, state.nextTry().orElseThrow());
            pauses.add(pause);
            int before = handOvers;
            pass(pause.toMillis() - 1);
            assertEquals(before, handOvers, "not before its time");
            now = now.plusMillis(1);
        }
        assertEquals(
                List.of(2L, 4L, 8L, 16L, 32L, 64L, 128L, 256L, 300L, 300L),
                pauses.stream().map(Duration::toSeconds).toList());
        pass(0);
        assertEquals(Kind.IN_STEP, sync.state().kind());
        fail(Reason.BUSY);
        sync.appended(1);
        work();
        assertEquals(
                Duration.ofSeconds(2),
                Duration.between(now, sync.state().nextTry().orElseThrow()),
                "after a success it begins anew");
    }

    @Test
    void aClockThatIsSetBackDoesNotMakeItWaitForDays() {
        fail(Reason.UNREACHABLE);
        sync.run();
        work();
        now = now.minusSeconds(3 * 24 * 3600);
        pass(0);
        assertEquals(2, handOvers);
        assertEquals(Kind.IN_STEP, sync.state().kind());
    }

    @Test
    void whatIsAddedInAPauseDoesNotShortenIt() {
        fail(Reason.UNREACHABLE);
        sync.run();
        work();
        sync.appended(5);
        work();
        assertEquals(1, handOvers);
        assertEquals(5, sync.state().waiting());
        pass(2000);
        assertEquals(2, handOvers);
        assertEquals(0, sync.state().waiting());
    }

    @Test
    void stopsForPeopleAndGoesOnWhenTheySaySo() {
        fail(Reason.WRONG_PASSWORD);
        sync.run();
        work();
        assertEquals(Kind.STOPPED, sync.state().kind());
        assertEquals(Optional.empty(), sync.state().nextTry());
        sync.appended(1);
        pass(10_000_000);
        assertEquals(1, handOvers, "a wrong password is not tried over and over");
        sync.retry();
        work();
        assertEquals(Kind.IN_STEP, sync.state().kind());
        assertEquals(0, sync.state().waiting());
    }

    @Test
    void aFaultOfItsOwnIsNotHidden() {
        LabSync broken = new LabSync(
                () -> {
                    throw new IllegalStateException("broken");
                },
                toDo::add,
                () -> now,
                MIDDLE,
                told::add);
        broken.run();
        assertTrue(assertThrows(IllegalStateException.class, this::work)
                .getMessage()
                .contains("broken"));
        assertEquals(Kind.STOPPED, broken.state().kind());
    }

    @Test
    void anUnreadableLogStopsIt() {
        LabSync unreadable = new LabSync(
                () -> {
                    throw new TestLogException("The log is damaged.");
                },
                toDo::add,
                () -> now,
                MIDDLE,
                told::add);
        unreadable.run();
        work();
        assertEquals(Kind.STOPPED, unreadable.state().kind());
        assertEquals("The log is damaged.", unreadable.state().why());
    }

    @Test
    void anExecutorThatCloses() {
        LabSync closing = new LabSync(
                this::handOver,
                task -> {
                    throw new RejectedExecutionException();
                },
                () -> now,
                MIDDLE,
                told::add);
        closing.run();
        assertEquals(Kind.STOPPED, closing.state().kind());
    }

    @Test
    void tellsOfEveryChange() {
        fail(Reason.UNREACHABLE);
        sync.run();
        work();
        pass(2000);
        assertEquals(
                List.of(Kind.HANDING_OVER, Kind.WAITING, Kind.HANDING_OVER, Kind.IN_STEP),
                told.stream().map(LabSyncState::kind).toList());
    }
}

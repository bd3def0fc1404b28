// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.jobs.SharingState.Kind;
import org.ohmstead.model.Project;
import org.ohmstead.model.SharedLog;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.shared.HandOverReport;
import org.ohmstead.testlog.shared.LabSync;
import org.ohmstead.testlog.shared.LabSyncState;
import org.ohmstead.testlog.shared.SharedLabException;
import org.ohmstead.testlog.shared.SharedLabException.Reason;

class LabSharingTest {
    private static final Path DEMO = Path.of("../../demo-data/larkspur.ohmstead");
    private static final Map<String, String> CREDENTIALS =
            Map.of("OHMSTEAD_LOG_USER", "bench", "OHMSTEAD_LOG_PASSWORD", "not a secret");
    private static final Instant NOW = Instant.parse("2026-03-02T09:00:00Z");
    private static final Duration LONG = Duration.ofSeconds(60);

    @TempDir
    private Path folder;

    private final Deque<Runnable> toDo = new ArrayDeque<>();
    private final Deque<SharedLabException> failures = new ArrayDeque<>();
    private final List<Kind> told = new ArrayList<>();
    private long onOffer;

    private final LabSharing sharing = new LabSharing(
            "lab.example.org:5432/tests", this::handOver, toDo::add, () -> NOW, state -> told.add(state.kind()));

    private HandOverReport handOver() throws SharedLabException {
        if (!failures.isEmpty()) {
            throw failures.poll();
        }
        long handedOver = onOffer;
        onOffer = 0;
        return new HandOverReport(
                List.of(new HandOverReport.Part("ab".repeat(32), "", "ab".repeat(32), handedOver, 7, "Done.")));
    }

    private void work() {
        while (!toDo.isEmpty()) {
            toDo.poll().run();
        }
    }

    private LabSharing ofDemo(SharedLog shared, Map<String, String> environment) throws Exception {
        Project project = ProjectFolder.open(DEMO).project().withSharedLog(Optional.of(shared));
        return LabSharing.of(project, folder, environment, Runnable::run, state -> told.add(state.kind()))
                .orElseThrow();
    }

    @Test
    void aProjectWithoutASharedLogHandsNothingOver() throws Exception {
        Project project = ProjectFolder.open(DEMO).project();
        assertEquals(Optional.empty(), LabSharing.of(project, folder, Map.of(), Runnable::run, state -> {}));
    }

    @Test
    void beginsWithTheFirstTickAndCountsWhatWentOver() {
        assertEquals(List.of(), told);
        onOffer = 3;
        sharing.tick();
        assertEquals(Kind.HANDING_OVER, sharing.state().kind());
        work();
        assertEquals(Kind.IN_STEP, sharing.state().kind());
        assertEquals(3, sharing.state().handedOver());
        onOffer = 1;
        sharing.appended(1);
        assertEquals(
                "1 entry is being handed over to the shared log lab.example.org:5432/tests.",
                sharing.state().sentence());
        work();
        assertEquals(
                "The shared log lab.example.org:5432/tests has all entries of this log; 4 entries were handed over.",
                sharing.state().sentence());
        assertEquals(List.of(Kind.HANDING_OVER, Kind.IN_STEP, Kind.HANDING_OVER, Kind.IN_STEP), told);
    }

    @Test
    void saysWhatWaitsSinceWhenAndWhy() {
        failures.add(new SharedLabException(Reason.UNREACHABLE, "Nothing answers there. Look after the network."));
        sharing.appended(2);
        work();
        SharingState state = sharing.state();
        assertEquals(Kind.WAITING, state.kind());
        assertEquals(2, state.waiting());
        assertEquals(Optional.of(NOW), state.since());
        assertTrue(state.nextTry().orElseThrow().isAfter(NOW));
        assertEquals(
                "2 entries wait here for the shared log lab.example.org:5432/tests. Nothing answers there. Look after"
                        + " the network.",
                state.sentence());
    }

    @Test
    void stopsForPeopleUntilTheySayThatItIsPutRight() {
        failures.add(new SharedLabException(Reason.WRONG_PASSWORD, "The password is wrong. Correct it."));
        sharing.tick();
        work();
        sharing.appended(1);
        sharing.tick();
        work();
        assertEquals(Kind.STOPPED, sharing.state().kind());
        sharing.retry();
        work();
        assertEquals(Kind.IN_STEP, sharing.state().kind());
        assertEquals(0, sharing.state().waiting());
    }

    @Test
    void tellsNobodyAndBeginsNothingOnceClosed() {
        sharing.tick();
        sharing.close();
        work();
        sharing.appended(1);
        sharing.retry();
        sharing.tick();
        assertEquals(List.of(), List.copyOf(toDo));
        assertEquals(List.of(Kind.HANDING_OVER), told);
    }

    @Test
    void settlesWithASecondTryAtTheEnd() throws Exception {
        ExecutorService thread = Executors.newSingleThreadExecutor();
        try (LabSharing other = new LabSharing("lab", this::handOver, thread, () -> NOW, state -> {})) {
            failures.add(new SharedLabException(Reason.BUSY, "The server starts just now."));
            onOffer = 5;
            other.appended(5);
            SharingState state = other.settle(LONG);
            if (state.kind() == Kind.WAITING) {
                // The first try had not failed yet when the wait began, so there was no second one.
                state = other.settle(LONG);
            }
            assertEquals(Kind.IN_STEP, state.kind());
            assertEquals(5, state.handedOver());
        } finally {
            thread.shutdown();
        }
    }

    @Test
    void waitsNoLongerForAServerThanSaid() throws Exception {
        CountDownLatch answer = new CountDownLatch(1);
        ExecutorService thread = Executors.newSingleThreadExecutor();
        LabSync.Work silent = () -> {
            try {
                answer.await();
            } catch (InterruptedException ended) {
                Thread.currentThread().interrupt();
            }
            return new HandOverReport(List.of());
        };
        try (LabSharing other = new LabSharing("lab", silent, thread, () -> NOW, state -> {})) {
            other.appended(1);
            SharingState state = other.settle(Duration.ofMillis(20));
            assertEquals(Kind.HANDING_OVER, state.kind());
            assertEquals(1, state.waiting());
            answer.countDown();
            assertEquals(Kind.IN_STEP, other.settle(LONG).kind());
        } finally {
            answer.countDown();
            thread.shutdown();
        }
    }

    @Test
    void findsWhatPeopleMustPutRightWithoutAnyServer() throws Exception {
        LabSharing noCertificate =
                ofDemo(new SharedLog("lab.example.org", 5432, "tests", "Bench 1", "missing.pem"), CREDENTIALS);
        noCertificate.tick();
        assertEquals(Kind.STOPPED, noCertificate.state().kind());
        assertTrue(
                noCertificate.state().why().contains("missing.pem"),
                noCertificate.state().why());
        LabSharing noUser = ofDemo(
                new SharedLog("lab.example.org", 5432, "tests", "Bench 1", ""),
                Map.of("OHMSTEAD_LOG_PASSWORD", "not a secret"));
        noUser.tick();
        assertEquals(Kind.STOPPED, noUser.state().kind());
        assertTrue(
                noUser.state().why().contains("OHMSTEAD_LOG_USER"),
                noUser.state().why());
        assertFalse(noUser.state().why().contains("not a secret"));
    }

    @Test
    void entriesWaitWhileNothingAnswersAndAnEmptyProjectHasNone() throws Exception {
        int port;
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        LabSharing unreachable = ofDemo(new SharedLog("127.0.0.1", port, "tests", "Bench 1", ""), CREDENTIALS);
        unreachable.tick();
        assertEquals(Kind.IN_STEP, unreachable.state().kind(), "without a log there is nothing to hand over");
        TestLog.open(folder.resolve(TestLog.FILE_NAME)).close();
        unreachable.appended(4);
        assertEquals(Kind.WAITING, unreachable.state().kind());
        assertEquals(4, unreachable.state().waiting());
        assertEquals("127.0.0.1:" + port + "/tests", unreachable.state().place());
        assertTrue(
                unreachable.state().why().contains(String.valueOf(port)),
                unreachable.state().why());
    }

    @Test
    void aLogThatCannotBeReadStopsIt() {
        try (LabSharing unreadable = new LabSharing(
                "lab",
                () -> {
                    throw new TestLogException("The log is damaged.");
                },
                Runnable::run,
                () -> NOW,
                state -> {})) {
            unreadable.tick();
            assertEquals(Kind.STOPPED, unreadable.state().kind());
            assertEquals(
                    "It is not known whether the shared log lab has all entries of this log. The log is damaged.",
                    unreadable.state().sentence());
        }
    }

    @ParameterizedTest
    @EnumSource(LabSyncState.Kind.class)
    void hasTheSameKindsAsTheHandOver(LabSyncState.Kind kind) {
        assertEquals(kind.name(), Kind.valueOf(kind.name()).name());
        assertEquals(LabSyncState.Kind.values().length, Kind.values().length);
    }

    @Test
    void refusesImpossibleCounts() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new SharingState(Kind.IN_STEP, "lab", -1, 0, Optional.empty(), "", Optional.empty()));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.ohmstead.model.Problem;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Said;

/**
 * Carries out a plan: item by item, each result in the log before the next begins. What the log holds of the same plan and the same
 * state of the project is done; so after a crash it goes on behind the last entry. Between items nothing is fed.
 *
 * <p>Before an item the amplifier rests as long as {@link Rests} says, when a real bench is used: at one that is simulated or replays
 * recordings nothing gets warm.
 *
 * <p>{@link #run} and {@link #runAll} wait on the thread that calls them. {@link #cancel}, {@link #emergencyStop}, notes and voids may
 * come on any thread at any time. The log and the runner stay open when this is not used any more.
 */
public final class PlanRun {
    private final PlanSetup setup;
    private final Catalog catalog;
    private final Runner runner;
    private final TestLog log;
    private final Clock clock;
    private final RestWait restWait;
    private final PlanLog planLog;
    private final PlanChecks checks;
    private final Set<PlanChecks.Yes> confirmed = new HashSet<>();
    private final Map<PlanItem, String> failures = new HashMap<>();
    private final List<RunListener> listeners = new CopyOnWriteArrayList<>();
    private final AtomicBoolean busy = new AtomicBoolean();
    private volatile boolean cancelled;
    private Optional<PlanItem> running = Optional.empty();
    private List<ItemState> logged;

    /**
     * Prepares a plan and sees what of it is done.
     *
     * @param rests how long the amplifier is to rest before each item
     * @throws TestLogException when the log cannot be read
     */
    public PlanRun(PlanSetup setup, Catalog catalog, Runner runner, TestLog log, Rests rests) throws TestLogException {
        this(setup, catalog, runner, log, rests, Clock.systemUTC());
    }

    PlanRun(PlanSetup setup, Catalog catalog, Runner runner, TestLog log, Rests rests, Clock clock)
            throws TestLogException {
        this.setup = setup;
        this.catalog = catalog;
        this.runner = runner;
        this.log = log;
        this.clock = clock;
        this.planLog = new PlanLog(setup, log);
        this.checks = new PlanChecks(catalog, runner.limits(), setup.precautions());
        this.restWait = new RestWait(rests, catalog, runner);
        this.logged = planLog.states();
    }

    /** Adds somebody who hears how it goes. */
    public void addListener(RunListener listener) {
        listeners.add(listener);
    }

    /** Lets somebody go who heard how it goes. */
    public void removeListener(RunListener listener) {
        listeners.remove(listener);
    }

    private void tell(Consumer<RunListener> what) {
        for (RunListener listener : listeners) {
            Contained.here(() -> {
                what.accept(listener);
                return null;
            });
        }
    }

    /** Returns how far it is. */
    public synchronized PlanState state() {
        return new PlanState(logged.stream().map(this::withRun).toList(), runner.halted());
    }

    private ItemState withRun(ItemState state) {
        if (running.filter(state.item()::equals).isPresent()) {
            return new ItemState(state.item(), ItemState.Status.RUNNING, state.entryIds(), "");
        }
        String failure = failures.get(state.item());
        return failure == null || state.status() != ItemState.Status.PENDING
                ? state
                : new ItemState(state.item(), ItemState.Status.FAILED, List.of(), failure);
    }

    /** Looks at the log anew, after somebody else may have changed it. */
    public void refresh() throws TestLogException {
        List<ItemState> now = planLog.states();
        synchronized (this) {
            logged = now;
        }
        tellState();
    }

    private void tellState() {
        PlanState state = state();
        tell(listener -> listener.changed(state));
    }

    /** Goes through everything that is still to be done, without a bench: readiness, precautions, stop limits, what needs a yes. */
    public DryRun dryRun() {
        return new DryRun(state().items().stream()
                .filter(PlanState::isOpen)
                .map(each -> check(each.item()))
                .toList());
    }

    private DryStep check(PlanItem item) {
        Set<PlanChecks.Yes> yes;
        synchronized (this) {
            yes = Set.copyOf(confirmed);
        }
        return checks.check(item, setup.subject(item), yes);
    }

    /**
     * Says yes to a warning of a step. It holds as long as this lives and the warning stays the same; after a restart it must be said
     * anew, because the bench may stand otherwise.
     *
     * @param who says it, not blank
     * @param why, not blank
     * @throws TestLogException when it could not be logged; then it does not hold
     */
    public void confirm(String stepId, Problem problem, String who, String why) throws TestLogException {
        if (who.isBlank() || why.isBlank()) {
            throw new IllegalArgumentException("who or why is blank; both need a text");
        }
        note(
                "Confirmed for the step \"" + stepId + "\": " + checks.kept(setup, stepId, problem) + " Reason: "
                        + why.strip(),
                who);
        synchronized (this) {
            confirmed.add(new PlanChecks.Yes(stepId, problem.what()));
        }
        tellState();
    }

    /**
     * Measures what is still to be done, in order, until all is done, somebody cancels it, or an item gives no result.
     *
     * @return how far it is then
     * @throws TestLogException when a result could not be logged; nothing further was begun
     */
    public PlanState runAll() throws TestLogException {
        return runAll(false);
    }

    /**
     * Measures what is still to be done, in order, each once, until all was tried, somebody cancels it or presses the emergency stop, or
     * what was recorded cannot be kept.
     *
     * @param goOnAfterFailure whether the others are still tried when an item gives no result
     * @return how far it is then
     * @throws TestLogException when a result could not be logged; nothing further was begun
     */
    public PlanState runAll(boolean goOnAfterFailure) throws TestLogException {
        cancelled = false;
        Set<PlanItem> tried = new HashSet<>();
        Optional<PlanItem> next = nextBut(tried);
        while (next.isPresent() && !cancelled) {
            tried.add(next.get());
            RunOutcome outcome = measure(next.get());
            boolean failedAlone = outcome instanceof RunOutcome.Failed
                    || outcome instanceof RunOutcome.Refused
                    || outcome instanceof RunOutcome.Stopped;
            boolean goOn = outcome instanceof RunOutcome.Finished || failedAlone && goOnAfterFailure;
            next = goOn && !runner.halted() ? nextBut(tried) : Optional.empty();
        }
        return state();
    }

    private Optional<PlanItem> nextBut(Set<PlanItem> tried) {
        return state().items().stream()
                .filter(PlanState::isOpen)
                .map(ItemState::item)
                .filter(item -> !tried.contains(item))
                .findFirst();
    }

    /**
     * Measures an item, also one that is done or skipped already: then there are two results, and the older one stays unless it is
     * voided.
     *
     * @throws TestLogException when the result could not be logged
     */
    public RunOutcome run(PlanItem item) throws TestLogException {
        cancelled = false;
        return measure(item);
    }

    private RunOutcome measure(PlanItem item) throws TestLogException {
        if (!setup.items().contains(item)) {
            throw new IllegalArgumentException("item is " + item + "; the plan does not have it");
        }
        if (!busy.compareAndSet(false, true)) {
            return new RunOutcome.Refused(Sentences.of("refused.plan"), List.of());
        }
        RunOutcome outcome;
        try {
            requireLog(item);
            DryStep step = rested(item);
            setRunning(Optional.of(item));
            if (cancelled && !runner.halted()) {
                outcome = record(item, new RunOutcome.Cancelled(Sentences.of("run.cancelled.before"), List.of()));
            } else if (step.mayRun()) {
                RunRequest request = new RunRequest(
                        setup.subject(item),
                        item.measurementId(),
                        item.settings(),
                        step.stopLimits(),
                        checks.kept(item, setup.subject(item), step.stopLimits()),
                        setup.projectFolder());
                outcome = record(item, runner.run(request, view -> progress(item, view)));
            } else {
                outcome = record(item, new RunOutcome.Refused(Said.asIs(step.blocked()), List.of()));
            }
        } finally {
            setRunning(Optional.empty());
            busy.set(false);
        }
        tell(listener -> listener.ended(item, outcome));
        return outcome;
    }

    /** Checks an item, and lets the amplifier rest when nothing is in the way of it. */
    private DryStep rested(PlanItem item) {
        DryStep step = check(item);
        Duration rest = step.mayRun() ? restWait.due(item, state()) : Duration.ZERO;
        if (rest.isZero()) {
            return step;
        }
        try {
            restWait.await(rest, () -> cancelled, left -> tell(listener -> listener.resting(item, left)));
        } catch (InterruptedException told) {
            cancelled = true;
            Thread.currentThread().interrupt();
        }
        return check(item);
    }

    /** Ends the rest before an item, if the amplifier is at rest; the item begins at once. Any thread may call it. */
    public void endRest() {
        restWait.end();
    }

    private void progress(PlanItem item, ProgressView view) {
        if (cancelled) {
            // In the moment before the run began.
            runner.cancel("");
        }
        tell(listener -> listener.progress(item, view));
    }

    /** Nothing is fed when it is known beforehand that nothing can be kept. */
    private void requireLog(PlanItem item) throws TestLogException {
        try {
            log.headHash();
        } catch (TestLogException unreadable) {
            keepFailure(item, unreadable.getMessage());
            throw unreadable;
        }
    }

    private void setRunning(Optional<PlanItem> item) {
        synchronized (this) {
            running = item;
        }
        tellState();
    }

    /** Logs what came of a run; returns how it ended in the end. */
    private RunOutcome record(PlanItem item, RunOutcome outcome) throws TestLogException {
        String failure = outcome.sentence();
        try {
            if (outcome instanceof RunOutcome.Finished finished) {
                List<LogEntry> entries = planLog.append(finished, clock.instant());
                failure = "";
                entries.forEach(entry -> tell(listener -> listener.logged(entry)));
                done(item, entries);
            } else if (!(outcome instanceof RunOutcome.Refused)) {
                note(PlanLog.failureText(item, outcome), setup.operator());
            }
            return outcome;
        } catch (IllegalArgumentException unwritable) {
            RunOutcome.Failed failed = PlanLog.unwritable(item, outcome, unwritable);
            catalog.measurement(item.measurementId()).ifPresent(plugin -> catalog.fault(plugin, failed.sentence()));
            failure = failed.sentence();
            return failed;
        } catch (TestLogException notLogged) {
            failure = notLogged.getMessage();
            throw notLogged;
        } finally {
            keepFailure(item, failure);
        }
    }

    private synchronized void done(PlanItem item, List<LogEntry> entries) {
        List<ItemState> now = new ArrayList<>();
        for (ItemState each : logged) {
            List<String> ids = new ArrayList<>(each.entryIds());
            entries.forEach(entry -> ids.add(entry.id()));
            now.add(each.item().equals(item) ? new ItemState(item, ItemState.Status.DONE, ids, "") : each);
        }
        logged = List.copyOf(now);
    }

    private synchronized void keepFailure(PlanItem item, String failure) {
        if (failure.isEmpty()) {
            failures.remove(item);
        } else {
            failures.put(item, failure);
        }
    }

    /**
     * Leaves an item out; the log says so, and it stays left out after a restart until it is run or the note is voided.
     *
     * @param reason why, not blank
     * @param who decides it; may be empty
     */
    public void skip(PlanItem item, String reason, String who) throws TestLogException {
        if (reason.isBlank() || !setup.items().contains(item)) {
            throw new IllegalArgumentException("reason is blank, or the plan does not have the item " + item);
        }
        note(planLog.skipText(item, reason), who);
        refresh();
    }

    /** Adds a remark to the log. */
    public LogEntry note(String text, String who) throws TestLogException {
        LogEntry entry = log.note(Contained.clean(text), Contained.clean(who));
        tell(listener -> listener.logged(entry));
        return entry;
    }

    /** Takes an entry of the log back; when it was the result of an item, that is still to be done again. */
    public LogEntry voidEntry(String entryId, String reason, String who) throws TestLogException {
        LogEntry entry = log.voidEntry(entryId, reason, who);
        tell(listener -> listener.logged(entry));
        refresh();
        return entry;
    }

    /** Ends the item at hand, or the rest before it, in an orderly way and begins no other. */
    public void cancel(String who) {
        cancelled = true;
        restWait.end();
        runner.cancel(who);
    }

    /**
     * Makes the bench safe at once, ends the item at hand and begins no other until {@link #release}. Any thread may call it.
     *
     * @return what went wrong, whole sentences; empty when the bench is safe
     */
    public List<String> emergencyStop(String who) {
        boolean endsRun = runner.press(who);
        cancelled = true;
        List<String> wrong = new ArrayList<>(runner.standDown());
        restWait.end();
        if (!endsRun) {
            try {
                note("The emergency stop was pressed between two steps.", who);
            } catch (TestLogException notLogged) {
                wrong.add(notLogged.getMessage());
            }
        }
        tellState();
        return wrong;
    }

    /** Allows runs again after an emergency stop; the log says so. */
    public void release(String who) throws TestLogException {
        note("The emergency stop was released.", who);
        runner.release();
        tellState();
    }
}

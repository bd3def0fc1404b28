// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/**
 * Makes measurements on one bench, one at a time. The bench is opened for the first and stays open for the next; between them nothing is
 * fed. Whatever a plug-in does, a run ends with an outcome, and the bench is made safe.
 *
 * <p>{@link #run} waits on the thread that calls it; cancelling and stopping may be done on any other.
 */
public final class Runner implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(Runner.class);

    private final Catalog catalog;
    private final BenchChoice choice;
    private final RunLimits limits;
    private final ThreadGroup group = new ThreadGroup("ohmstead runs");
    private final AtomicBoolean busy = new AtomicBoolean();
    private volatile Optional<RunToken> current = Optional.empty();
    private volatile Optional<BenchLink> link = Optional.empty();
    /** What is said to whoever wants to run something while the emergency stop is pressed. */
    private volatile Optional<String> halted = Optional.empty();

    private boolean claimed;

    /** Makes a runner; the bench is not opened yet. */
    public Runner(Catalog catalog, BenchChoice choice, RunLimits limits) {
        this.catalog = catalog;
        this.choice = choice;
        this.limits = limits;
    }

    /** Returns which bench it uses. */
    public BenchChoice bench() {
        return choice;
    }

    RunLimits limits() {
        return limits;
    }

    /**
     * Makes a measurement and waits for its end. An interrupt of the calling thread cancels the run.
     *
     * @param request what
     * @param watcher hears how far it is, at most ten times a second, on this thread
     */
    public RunOutcome run(RunRequest request, Consumer<ProgressView> watcher) {
        if (!busy.compareAndSet(false, true)) {
            return refused(TEXTS.text("refused.busy"));
        }
        try {
            return prepared(request, watcher);
        } finally {
            current = Optional.empty();
            busy.set(false);
        }
    }

    private RunOutcome prepared(RunRequest request, Consumer<ProgressView> watcher) {
        Optional<Plugin<Measurement, MeasurementInfo>> measurement = catalog.measurement(request.measurementId());
        Optional<Plugin<BenchDriver, DriverInfo>> driver = catalog.driver(choice.driverId());
        if (measurement.isEmpty()) {
            return refused(TEXTS.text("refused.measurement", request.measurementId()));
        }
        if (driver.isEmpty()) {
            closeLink();
            return refused(TEXTS.text("refused.driver", choice.driverId()));
        }
        for (Plugin<?, ?> plugin : List.of(measurement.get(), driver.get())) {
            if (catalog.isSetAside(plugin)) {
                return refused(TEXTS.text("refused.setAside", plugin.title()));
            }
        }
        RunToken token = new RunToken(measurement.get(), catalog);
        current = Optional.of(token);
        if (halted.isPresent()) {
            token.end(refused(halted.get()));
            return token.ended().orElseThrow();
        }
        try {
            Settings settings = Settings.of(measurement.get().info().settings(), request.settings());
            Optional<RunOutcome> blocked = claim(driver.get());
            if (blocked.isPresent()) {
                return blocked.get();
            }
            return watched(new BenchRun(token, request, settings, link.orElseThrow(), limits, group), watcher);
        } catch (SettingException wrong) {
            return refused(wrong.getMessage());
        }
    }

    private Optional<RunOutcome> claim(Plugin<BenchDriver, DriverInfo> driver) throws SettingException {
        boolean stale = link.filter(open -> open.broken() || open.driver().instance() != driver.instance())
                .isPresent();
        if (stale) {
            closeLink();
        }
        if (link.isPresent()) {
            return Optional.empty();
        }
        Settings settings = Settings.of(driver.info().settings(), choice.settings());
        if (!claimed && !catalog.claimBench(benchKey())) {
            return Optional.of(refused(TEXTS.text("refused.inUse", driver.title())));
        }
        claimed = true;
        link = Optional.of(new BenchLink(driver, settings, limits));
        return Optional.empty();
    }

    private String benchKey() {
        return choice.driverId() + " " + new TreeMap<>(choice.settings());
    }

    private RunOutcome watched(BenchRun run, Consumer<ProgressView> watcher) {
        CatalogListener gone = view -> run.endIfGone(catalog);
        catalog.addListener(gone);
        RunOutcome outcome;
        try {
            gone.changed(catalog.view());
            outcome = run.run(watcher);
        } finally {
            catalog.removeListener(gone);
            if (run.benchIsLost()) {
                run.remark(closeLink());
            }
        }
        outcome = outcome.with(run.remarks());
        judge(run, outcome);
        return outcome;
    }

    private void judge(BenchRun run, RunOutcome outcome) {
        Plugin<Measurement, MeasurementInfo> measurement = run.token().measurement();
        Plugin<BenchDriver, DriverInfo> driver = run.link().driver();
        boolean driverFailed = false;
        if (outcome instanceof RunOutcome.Failed failed && failed.fault()) {
            driverFailed = failed.kind() == PluginKind.DRIVER;
            catalog.fault(driverFailed ? driver : measurement, outcome.sentence());
        } else if (!run.leaks().isEmpty()) {
            catalog.fault(measurement, run.leaks().stream().map(Said::shown).collect(Collectors.joining(" ")));
        } else if (outcome instanceof RunOutcome.Finished) {
            catalog.didWell(measurement);
        }
        if (outcome instanceof RunOutcome.Finished && !run.benchIsLost()) {
            catalog.didWell(driver);
        }
    }

    /**
     * Ends the run that is going on in an orderly way.
     *
     * @param who cancels it; may be empty
     * @return whether there was one
     */
    public boolean cancel(String who) {
        Optional<RunToken> token = current;
        Said sentence = byWhom("run.cancelled", who);
        token.ifPresent(run -> run.end(new RunOutcome.Cancelled(sentence, List.of())));
        return token.isPresent();
    }

    /**
     * Makes the bench safe at once and ends the run. Nothing runs until {@link #release}. Any thread may call it.
     *
     * @param who presses it; may be empty
     * @return what went wrong, whole sentences; empty when the bench is safe
     */
    public List<String> emergencyStop(String who) {
        press(who);
        return standDown();
    }

    /** Lets nothing run any more; returns whether a run ends by it. */
    boolean press(String who) {
        Said sentence = byWhom("run.stopped", who);
        halted = Optional.of(
                who.isBlank() ? TEXTS.text("refused.halted") : TEXTS.text("refused.halted.by", who.strip()));
        return current.filter(run -> run.end(new RunOutcome.EmergencyStopped(sentence, List.of())))
                .isPresent();
    }

    /** Makes the bench safe; returns what went wrong. */
    List<String> standDown() {
        return link.map(BenchLink::standDown).orElse(List.of()).stream()
                .map(Said::shown)
                .toList();
    }

    private static Said byWhom(String key, String who) {
        return who.isBlank() ? Sentences.of(key) : Sentences.of(key + ".by", who.strip());
    }

    /** Allows runs again after an emergency stop. */
    public void release() {
        halted = Optional.empty();
    }

    /** Returns whether the emergency stop is pressed. */
    public boolean halted() {
        return halted.isPresent();
    }

    private List<Said> closeLink() {
        List<Said> wrong = link.map(BenchLink::close).orElse(List.of());
        link.ifPresent(closed -> wrong.forEach(each -> catalog.remark(closed.driver(), each.shown())));
        link = Optional.empty();
        if (claimed) {
            claimed = false;
            catalog.releaseBench(benchKey());
        }
        return wrong;
    }

    /** Cancels what runs, makes the bench safe and lets it go. A run that goes on meanwhile on another thread ends first. */
    @Override
    public void close() {
        cancel("");
        link.ifPresent(BenchLink::standDown);
        long end = System.nanoTime() + 3 * limits.grace().toNanos();
        while (!busy.compareAndSet(false, true) && System.nanoTime() - end < 0) {
            LockSupport.parkNanos(1_000_000);
        }
        closeLink();
        busy.set(false);
    }

    private static RunOutcome refused(String sentence) {
        return new RunOutcome.Refused(Said.asIs(sentence), List.of());
    }
}

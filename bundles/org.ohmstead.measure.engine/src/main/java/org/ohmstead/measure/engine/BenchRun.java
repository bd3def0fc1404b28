// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.units.text.Said;

/** One run on an open bench, from connecting the load until nothing is fed any more. */
final class BenchRun {
    private static final long TICK_NANOS = TimeUnit.MILLISECONDS.toNanos(100);
    private static final long JOIN_MILLIS = 10;

    private final RunToken token;
    private final RunRequest request;
    private final Settings settings;
    private final BenchLink link;
    private final RunLimits limits;
    private final ThreadGroup group;
    private final LimitWatch watch;
    private final CaptureKeeper keeper;
    private final GuardedProgress progress;
    private final List<Said> remarks = new ArrayList<>();
    private final List<Said> leaks = new ArrayList<>();
    private boolean opened;
    private boolean unsafe;

    BenchRun(
            RunToken token,
            RunRequest request,
            Settings settings,
            BenchLink link,
            RunLimits limits,
            ThreadGroup group) {
        this.token = token;
        this.request = request;
        this.settings = settings;
        this.link = link;
        this.limits = limits;
        this.group = group;
        this.watch = new LimitWatch(request.stopLimits(), request.keptLimits(), request.subject());
        this.keeper = new CaptureKeeper(request.projectFolder());
        this.progress = new GuardedProgress(token, limits, keeper);
    }

    RunToken token() {
        return token;
    }

    BenchLink link() {
        return link;
    }

    List<Said> remarks() {
        return remarks;
    }

    List<Said> leaks() {
        return leaks;
    }

    void remark(List<Said> more) {
        remarks.addAll(more);
    }

    /** Returns whether the bench must be closed and opened anew. */
    boolean benchIsLost() {
        return link.broken() || unsafe || !opened;
    }

    /** Ends the run when a plug-in that it needs has gone. */
    void endIfGone(Catalog catalog) {
        for (Plugin<?, ?> plugin : List.of(token.measurement(), link.driver())) {
            if (!catalog.isThere(plugin)) {
                token.end(token.failure(plugin, false, "run.removed"));
            }
        }
    }

    RunOutcome run(Consumer<ProgressView> watcher) {
        RunOutcome outcome;
        boolean calm = false;
        try {
            outcome = measured(setUp(), watcher);
            calm = outcome instanceof RunOutcome.Finished && silence();
        } catch (MeasurementException failed) {
            outcome = ended().orElse(failed(false, failed));
        } catch (IllegalArgumentException refused) {
            outcome = ended().orElse(token.failure(link.driver(), true, "run.setUp", Contained.words(refused)));
        } catch (InterruptedException told) {
            outcome = interrupted();
        } finally {
            token.close();
            if (!calm) {
                List<Said> wrong = link.standDown();
                wrong.stream().filter(sentence -> !remarks.contains(sentence)).forEach(remarks::add);
                unsafe = !wrong.isEmpty();
            }
        }
        if (outcome instanceof RunOutcome.Failed failed && failed.kind() == PluginKind.DRIVER) {
            unsafe = true;
        }
        token.end(outcome);
        // Also one that is pressed when all but silencing the bench is done.
        return token.ended()
                .filter(RunOutcome.EmergencyStopped.class::isInstance)
                .orElse(outcome);
    }

    private Optional<RunOutcome> ended() {
        return token.ended();
    }

    private RunOutcome interrupted() {
        if (token.end(new RunOutcome.Cancelled(Sentences.of("run.cancelled"), List.of()))) {
            Thread.currentThread().interrupt();
        }
        return token.ended().orElseThrow();
    }

    private RunOutcome failed(boolean fault, MeasurementException failed) {
        Plugin<?, ?> culprit = link.isOurs(failed) ? link.driver() : token.measurement();
        return token.failure(culprit, fault, "run.couldNot", why(failed));
    }

    private static Said why(MeasurementException failed) {
        return failed.getMessage() == null || failed.getMessage().isBlank()
                ? Sentences.of("run.silent")
                : new Said(Contained.cut(failed.getMessage()), Contained.cut(failed.getLocalizedMessage()));
    }

    private GuardedBench setUp() throws MeasurementException, InterruptedException {
        Subject subject = request.subject();
        if (link.isClosed()) {
            link.open(token, subject);
        } else if (!link.fits(token, subject)) {
            link.reopen(token, subject);
        }
        opened = true;
        Set<Ability> abilities = link.abilities(token);
        Set<Ability> missing = EnumSet.noneOf(Ability.class);
        missing.addAll(token.measurement().info().needs());
        missing.removeAll(abilities);
        if (!missing.isEmpty()) {
            Said lacks = missing.stream()
                    .map(ability -> Said.of(ability::words))
                    .reduce((some, more) -> Sentences.of("ability.or", some, more))
                    .orElseThrow();
            token.end(new RunOutcome.Refused(
                    Sentences.of(
                            "refused.abilities",
                            link.driver(),
                            lacks,
                            token.measurement().name()),
                    List.of()));
            token.stopIfEnded();
        }
        remarks.addAll(watch.blindSpots(abilities));
        GuardedBench bench = new GuardedBench(link, token, limits, watch, abilities, progress::seen);
        bench.feed(new Feed.Silence());
        if (abilities.contains(Ability.SELECT_LOAD)) {
            bench.connect(subject.step().mode(), subject.load());
        } else {
            remarks.add(Sentences.of("run.takenConnected", subject.load().id()));
        }
        if (abilities.contains(Ability.SET_SUPPLY_VOLTS)) {
            bench.setSupplyVolts(subject.step().supplyVolts());
        } else {
            remarks.add(Sentences.of("run.takenSet"));
        }
        return bench;
    }

    private RunOutcome measured(GuardedBench bench, Consumer<ProgressView> watcher) {
        LeftThreads left = new LeftThreads(group, limits).sinceNow();
        Attempt<MeasurementResult> task =
                new Attempt<>(() -> token.measurement().instance().run(request.subject(), settings, bench, progress));
        Thread worker =
                new Thread(group, task, "ohmstead run " + token.measurement().id());
        worker.setDaemon(true);
        worker.start();
        token.workOn(worker);
        RunOutcome outcome = waited(task, bench, watcher);
        if (!(outcome instanceof RunOutcome.Finished)) {
            // At once: the measurement may take its time to end.
            remarks.addAll(link.standDown());
        }
        boolean ended = ends(worker);
        token.close();
        if (ended) {
            leaks.addAll(left.found(token.measurement()));
        } else {
            leaks.add(Sentences.of("run.givenUp", token.measurement()));
        }
        remarks.addAll(leaks);
        return outcome;
    }

    private RunOutcome waited(Attempt<MeasurementResult> task, GuardedBench bench, Consumer<ProgressView> watcher) {
        long end = System.nanoTime() + token.measurement().info().longest().toNanos() - link.personNanos();
        long shown = 0;
        while (token.ended().isEmpty()) {
            try {
                Optional<Contained.Answer<MeasurementResult>> answer = task.within(TICK_NANOS);
                if (answer.isPresent()) {
                    show(watcher);
                    return token.ended().orElseGet(() -> ended(answer.get(), bench));
                }
            } catch (InterruptedException told) {
                return interrupted();
            }
            if (System.nanoTime() - end - link.personNanos() > 0) {
                token.end(token.failure(
                        token.measurement(),
                        true,
                        "run.tooLong",
                        token.measurement().info().longest().toSeconds()));
            }
            shown = showIfChanged(watcher, shown);
            look(bench);
        }
        return token.ended().orElseThrow();
    }

    private RunOutcome ended(Contained.Answer<MeasurementResult> answer, GuardedBench bench) {
        return answer instanceof Contained.Answer.Threw<MeasurementResult> threw
                ? threw(threw.cause())
                : checked(((Contained.Answer.Value<MeasurementResult>) answer).value(), bench);
    }

    private RunOutcome threw(Throwable cause) {
        if (cause instanceof MeasurementException orderly) {
            return failed(false, orderly);
        }
        return token.failure(token.measurement(), true, "run.threw", Contained.words(cause));
    }

    private void look(GuardedBench bench) {
        try {
            bench.lookIfDue();
        } catch (MeasurementException failed) {
            token.end(failed(false, failed));
        } catch (IllegalArgumentException | IllegalStateException refused) {
            token.end(token.failure(link.driver(), true, "run.look", Contained.words(refused)));
        } catch (InterruptedException told) {
            interrupted();
        }
    }

    private long showIfChanged(Consumer<ProgressView> watcher, long shown) {
        long now = progress.changes();
        if (now != shown) {
            show(watcher);
        }
        return now;
    }

    private void show(Consumer<ProgressView> watcher) {
        ProgressView view = progress.view();
        Contained.here(() -> {
            watcher.accept(view);
            return null;
        });
    }

    private RunOutcome checked(MeasurementResult result, GuardedBench bench) {
        MeasurementInfo info = token.measurement().info();
        Optional<Said> fault = new ResultCheck(token.measurement(), request.subject(), keeper.kept()).fault(result);
        if (fault.isPresent()) {
            return token.failure(token.measurement(), true, "run.wrongResult", fault.get());
        }
        DriverInfo driver = link.driver().info();
        DriverUsed used = new DriverUsed(
                driver.id(),
                driver.version(),
                BenchKind.valueOf(driver.kind().name()),
                link.settings().texts());
        return new RunOutcome.Finished(
                new RunRecord(request.subject(), info, settings.texts(), used, result, keeper.kept(), bench.last()),
                List.of());
    }

    private boolean ends(Thread worker) {
        boolean interrupted = Thread.interrupted();
        long end = System.nanoTime() + limits.grace().toNanos();
        while (worker.isAlive() && System.nanoTime() - end < 0) {
            try {
                worker.join(JOIN_MILLIS);
            } catch (InterruptedException told) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        return !worker.isAlive();
    }

    /** Sees to it that nothing is fed between runs; returns whether that went well. */
    private boolean silence() {
        try {
            link.use(token, "feed", link.callLimit(), bench -> {
                bench.feed(new Feed.Silence());
                return true;
            });
            return true;
        } catch (MeasurementException | IllegalArgumentException failed) {
            remarks.add(Sentences.of("run.notSilent", link.driver(), Said.by(failed)));
            return false;
        } catch (InterruptedException told) {
            if (token.ended().isEmpty()) {
                Thread.currentThread().interrupt();
            }
            return false;
        }
    }
}

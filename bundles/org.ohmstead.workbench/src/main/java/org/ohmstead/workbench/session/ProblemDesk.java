// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;

/** The part of the desk that keeps the problems of the project, or without one those of the program. User interface's thread only. */
final class ProblemDesk {
    private static final Messages TEXTS = Messages.of(ProblemDesk.class);
    static final Duration DEBOUNCE = Duration.ofMillis(150);
    private static final Duration LONGEST_CHECK = Duration.ofSeconds(10);

    private final BackgroundWork work;
    private final Alarm alarm;
    private final DeskListeners listeners;
    private final Supplier<Optional<ProjectView>> views;
    private final ProblemCollector collector;
    private final AtomicLong latest = new AtomicLong();
    private List<Problem> problems = List.of();
    private Optional<Registration> due = Optional.empty();
    private boolean disposed;

    ProblemDesk(
            BackgroundWork work,
            Alarm alarm,
            DeskListeners listeners,
            Supplier<Optional<ProjectView>> views,
            ProblemCollector collector) {
        this.work = work;
        this.alarm = alarm;
        this.listeners = listeners;
        this.views = views;
        this.collector = collector;
    }

    static ProblemCollector usualCollector() {
        ProblemCollector collector = new ProblemCollector(LONGEST_CHECK);
        collector.add(new ProjectProblems());
        collector.add(new LogProblems());
        collector.add(new CaptureProblems());
        return collector;
    }

    List<Problem> problems() {
        return problems;
    }

    Registration add(ProblemProvider provider) {
        Registration registration = collector.add(provider);
        changed();
        return () -> {
            registration.close();
            changed();
        };
    }

    /** Hears that the problems may be others now; asks for them when it has been quiet for a short while. */
    void changed() {
        if (disposed) {
            return;
        }
        stop();
        due = Optional.of(alarm.after(DEBOUNCE, () -> work.later(this::collect)));
    }

    /** Ends for good; what was due is not looked at any more. */
    void dispose() {
        disposed = true;
        stop();
    }

    private void stop() {
        due.ifPresent(Registration::close);
        due = Optional.empty();
    }

    private void collect() {
        due = Optional.empty();
        if (disposed) { // the alarm had gone off before
            return;
        }
        Optional<ProjectView> view = views.get();
        long mine = latest.incrementAndGet();
        work.start(
                TEXTS.text(view.isPresent() ? "check.project.job" : "check.modules.job"),
                progress -> mine == latest.get() ? find(view, progress) : List.<Problem>of(),
                found -> collected(mine, view.isPresent(), found),
                failure -> collected(mine, view.isPresent(), List.of(notChecked(failure))));
    }

    private List<Problem> find(Optional<ProjectView> view, WorkProgress progress) throws InterruptedException {
        return view.isPresent() ? collector.collect(view.get(), progress) : collector.collectWithoutProject(progress);
    }

    private static Problem notChecked(Exception failure) {
        return new Problem(
                Severity.WARNING,
                "check:all",
                TEXTS.text("check.none", Guard.reason(failure)),
                TEXTS.text("check.none.remedy"));
    }

    private void collected(long number, boolean ofProject, List<Problem> found) {
        if (number == latest.get() && views.get().isPresent() == ofProject) {
            show(found);
        }
    }

    /** Shows no problems of a project, as none is open; then those that there are without one. */
    void clear() {
        latest.incrementAndGet();
        show(List.of());
        changed();
    }

    private void show(List<Problem> found) {
        if (!found.equals(problems)) {
            problems = List.copyOf(found);
            listeners.tell(listener -> listener.problemsChanged(found));
        }
    }
}

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

/** The part of the desk that keeps the problems of the project. User interface's thread only. */
final class ProblemDesk {
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
        stop();
        due = Optional.of(alarm.after(DEBOUNCE, () -> work.later(this::collect)));
    }

    void stop() {
        due.ifPresent(Registration::close);
        due = Optional.empty();
    }

    private void collect() {
        due = Optional.empty();
        Optional<ProjectView> view = views.get();
        long mine = latest.incrementAndGet();
        if (view.isEmpty()) {
            show(List.of());
            return;
        }
        work.start(
                "Checking the project",
                progress -> mine == latest.get() ? collector.collect(view.get(), progress) : List.<Problem>of(),
                found -> collected(mine, found),
                failure -> collected(
                        mine,
                        List.of(new Problem(
                                Severity.WARNING,
                                "check:all",
                                "The project was not checked (" + Guard.reason(failure) + ").",
                                "Edit or reopen the project to check it again."))));
    }

    private void collected(long number, List<Problem> found) {
        if (number == latest.get()) {
            show(views.get().isPresent() ? found : List.of());
        }
    }

    /** Shows no problems, as no project is open. */
    void clear() {
        stop();
        latest.incrementAndGet();
        show(List.of());
    }

    private void show(List<Problem> found) {
        if (!found.equals(problems)) {
            problems = List.copyOf(found);
            listeners.tell(listener -> listener.problemsChanged(found));
        }
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;

/** Asks all providers of problems, each on its own so that none harms another. */
final class ProblemCollector {
    private static final Messages TEXTS = Messages.of(ProblemCollector.class);

    /** A provider with the name it had when it was added, which is asked for only once. */
    private record Known(ProblemProvider provider, String name) {}

    private final List<Known> providers = new CopyOnWriteArrayList<>();
    private final Map<Known, FutureTask<List<Problem>>> hanging = new ConcurrentHashMap<>();
    private final Duration longest;

    ProblemCollector(Duration longest) {
        this.longest = longest;
    }

    Registration add(ProblemProvider provider) {
        String[] name = {provider.getClass().getName()};
        Optional<Throwable> nameless = Guard.run(() -> name[0] = provider.name());
        Known known = new Known(
                provider,
                nameless.isPresent() || name[0] == null ? provider.getClass().getName() : name[0]);
        providers.add(known);
        return () -> {
            providers.remove(known);
            hanging.remove(known);
        };
    }

    /** Returns the problems in the order of the providers, each only once. */
    List<Problem> collect(ProjectView view, WorkProgress progress) throws InterruptedException {
        return collect(provider -> provider.problems(view), progress);
    }

    /** Returns the problems that there are without a project, in the order of the providers, each only once. */
    List<Problem> collectWithoutProject(WorkProgress progress) throws InterruptedException {
        return collect(ProblemProvider::problemsWithoutProject, progress);
    }

    private synchronized List<Problem> collect(Function<ProblemProvider, List<Problem>> question, WorkProgress progress)
            throws InterruptedException {
        Set<Problem> all = new LinkedHashSet<>();
        int done = 0;
        for (Known known : providers) {
            progress.stopIfCancelled();
            progress.step(done++, Math.max(done, providers.size()), known.name());
            all.addAll(ask(known, question));
        }
        return List.copyOf(all);
    }

    private List<Problem> ask(Known known, Function<ProblemProvider, List<Problem>> question)
            throws InterruptedException {
        FutureTask<List<Problem>> before = hanging.get(known);
        if (before != null && !before.isDone()) {
            return List.of(fault(known, TEXTS.text("check.busy", known.name())));
        }
        FutureTask<List<Problem>> task = new FutureTask<>(() -> List.copyOf(question.apply(known.provider())));
        hanging.put(known, task);
        Thread thread = new Thread(task, "Check " + known.name());
        thread.setDaemon(true);
        thread.start();
        try {
            List<Problem> found = task.get(longest.toMillis(), TimeUnit.MILLISECONDS);
            hanging.remove(known);
            return found;
        } catch (ExecutionException failure) {
            hanging.remove(known);
            return List.of(fault(known, TEXTS.text("check.failed", known.name(), Guard.reason(failure.getCause()))));
        } catch (TimeoutException late) {
            thread.interrupt();
            return List.of(fault(known, TEXTS.text("check.late", known.name(), Long.toString(longest.toSeconds()))));
        }
    }

    private static Problem fault(Known known, String sentence) {
        return new Problem(Severity.WARNING, "check:" + known.name(), sentence, TEXTS.text("check.remedy"));
    }
}

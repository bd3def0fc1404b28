// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.DoubleStream;

/** Plans the rest of a run that has begun. */
public final class Reschedule {
    private Reschedule() {}

    /**
     * A stretch of a run as it was.
     *
     * @param jobId the job that was on; empty while nothing was
     * @param seconds for how long, at least 0
     */
    public record Stretch(Optional<String> jobId, double seconds) {
        public Stretch {
            Require.present(jobId, "jobId");
            Require.notNegative(seconds, "seconds");
        }
    }

    /**
     * Returns the state of the model after what has been done, as it should be; better it with {@link StateEstimate}.
     *
     * @param task the whole task
     * @param run what was done, in order
     */
    public static List<Double> stateAfter(ScheduleTask task, List<Stretch> run) {
        double[] state = Plant.plain(task.startState());
        for (Stretch stretch : run) {
            List<Double> watts = stretch.jobId().isEmpty()
                    ? task.idleWatts()
                    : task.jobs().get(number(task, stretch.jobId().get())).watts();
            task.model().advance(state, Plant.plain(watts), stretch.seconds());
        }
        return DoubleStream.of(state).boxed().toList();
    }

    /**
     * Returns the task of what is left; empty when nothing is. A fixed order stays fixed.
     *
     * @param task the whole task
     * @param doneIds jobs done, in the order in which they were; the last one tells from where the next change-over is
     * @param state state of the model now
     */
    public static Optional<ScheduleTask> remaining(ScheduleTask task, List<String> doneIds, List<Double> state) {
        Set<Integer> done = new HashSet<>();
        int last = -1;
        for (String id : doneIds) {
            last = number(task, id);
            if (!done.add(last)) {
                throw new IllegalArgumentException("doneIds holds \"" + id + "\" twice; a job is done once");
            }
        }
        List<Integer> left = new ArrayList<>();
        for (int job = 0; job < task.jobs().size(); job++) {
            if (!done.contains(job)) {
                left.add(job);
            }
        }
        if (left.isEmpty()) {
            return Optional.empty();
        }
        List<Double> first = last < 0
                ? task.changes().firstSeconds()
                : task.changes().seconds().get(last);
        ChangeOvers changes = ChangeOvers.of(
                left, (from, to) -> task.changes().seconds().get(from).get(to), first::get);
        return Optional.of(new ScheduleTask(
                task.model(),
                task.ambientCelsius(),
                task.marginKelvin(),
                left.stream().map(job -> task.jobs().get(job)).toList(),
                task.idleWatts(),
                task.idleSupplyWatts(),
                changes,
                precedence(task, left),
                state,
                task.fixedOrder().map(order -> order.stream()
                        .filter(left::contains)
                        .map(left::indexOf)
                        .toList())));
    }

    private static List<Before> precedence(ScheduleTask task, List<Integer> left) {
        Precedence whole = new Precedence(task.jobs().size(), task.precedence());
        List<Before> pairs = new ArrayList<>();
        for (int i = 0; i < left.size(); i++) {
            for (int k = 0; k < left.size(); k++) {
                if (whole.before(left.get(i), left.get(k))) {
                    pairs.add(new Before(i, k));
                }
            }
        }
        return pairs;
    }

    private static int number(ScheduleTask task, String id) {
        for (int job = 0; job < task.jobs().size(); job++) {
            if (task.jobs().get(job).id().equals(id)) {
                return job;
            }
        }
        throw new IllegalArgumentException("job \"" + id + "\" is not in the task");
    }
}

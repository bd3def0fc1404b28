// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.ohmstead.measure.engine.BenchChoice;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.measure.engine.RunLimits;
import org.ohmstead.measure.engine.RunListener;
import org.ohmstead.measure.engine.Runner;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/**
 * A plan that is ready to be carried out, with its log and its bench.
 *
 * @param order what it was made from
 * @param log its log, open for adding
 * @param runner has the bench
 * @param run the plan
 */
record OpenRun(Order order, TestLog log, Runner runner, PlanRun run) {
    /**
     * What a plan is made from.
     *
     * @param project as it stands in its file
     * @param revision of that file
     * @param folder of the project
     * @param logFile its log
     * @param items what is to be measured
     * @param bench the bench
     * @param operator who runs it; may be empty
     */
    record Order(
            Project project,
            String revision,
            Path folder,
            Path logFile,
            List<PlanItem> items,
            BenchChoice bench,
            String operator) {
        Order {
            items = List.copyOf(items);
        }
    }

    /**
     * Opens a plan; takes a while.
     *
     * @param before what is open already: what of it can serve on is taken over, the rest closed
     */
    static OpenRun open(Order order, Optional<OpenRun> before, Catalog catalog, Plans plans, RunLimits limits)
            throws TestLogException {
        Optional<OpenRun> sameLog = before.filter(open -> open.order.logFile().equals(order.logFile()));
        Optional<OpenRun> sameBench = sameLog.filter(open -> open.order.bench().equals(order.bench()));
        if (sameBench.isEmpty()) {
            before.ifPresent(open -> open.runner.close());
        }
        if (sameLog.isEmpty() && before.isPresent()) {
            before.get().log.close();
        }
        TestLog log = sameLog.isPresent() ? sameLog.get().log : TestLog.open(order.logFile());
        Runner runner = sameBench.isPresent() ? sameBench.get().runner : new Runner(catalog, order.bench(), limits);
        try {
            return new OpenRun(order, log, runner, plan(order, catalog, plans, runner, log));
        } catch (TestLogException unreadable) {
            runner.close();
            log.close();
            throw unreadable;
        }
    }

    private static PlanRun plan(Order order, Catalog catalog, Plans plans, Runner runner, TestLog log)
            throws TestLogException {
        // The rests follow what this run measures, too.
        List<LogEntry> entries = new CopyOnWriteArrayList<>(log.entries(LogQuery.everything()));
        PlanRun run = new PlanRun(
                plans.setup(order.project(), order.revision(), order.folder(), order.items(), order.operator()),
                catalog,
                runner,
                log,
                plans.rests(order.project(), entries));
        run.addListener(new RunListener() {
            @Override
            public void logged(LogEntry entry) {
                entries.add(entry);
            }
        });
        return run;
    }

    /** Ends what runs, makes the bench safe and lets log and bench go; takes a while. */
    void close() throws TestLogException {
        run.cancel("");
        runner.close();
        log.close();
    }
}

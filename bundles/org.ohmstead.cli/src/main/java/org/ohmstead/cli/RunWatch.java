// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.ProgressView;
import org.ohmstead.measure.engine.RunListener;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;

/** Says on the console how a run goes, and keeps how each item ended. */
final class RunWatch implements RunListener {
    private static final QuantityFormat LIVE = QuantityFormat.digits(4);
    private static final int MOST_LIVE = 4;
    private static final double NANOS_PER_SECOND = 1e9;

    /**
     * How a run of an item ended.
     *
     * @param outcome how
     * @param seconds how long it took, rests included
     */
    record Ended(RunOutcome outcome, double seconds) {}

    private final Console console;
    private final List<LogEntry> entries;
    private final int total;
    private final Map<PlanItem, Ended> ended = new LinkedHashMap<>();
    private final Set<String> saidRemarks = new LinkedHashSet<>();
    private long since = System.nanoTime();

    /**
     * Makes a watch.
     *
     * @param entries gets every new entry of the log
     * @param total how many items are to be measured
     */
    RunWatch(Console console, List<LogEntry> entries, int total) {
        this.console = console;
        this.entries = entries;
        this.total = total;
    }

    /** Returns how each item ended that was tried. */
    Map<PlanItem, Ended> ended() {
        return Map.copyOf(ended);
    }

    Optional<Ended> ended(PlanItem item) {
        return Optional.ofNullable(ended.get(item));
    }

    @Override
    public void changed(PlanState state) {
        state.running()
                .ifPresent(running ->
                        console.progress(number(), total, running.item().stepId()));
    }

    @Override
    public void progress(PlanItem item, ProgressView view) {
        String live = view.live().stream().limit(MOST_LIVE).map(RunWatch::words).collect(Collectors.joining(", "));
        console.progress(
                number(), total, item.stepId() + ": " + view.what() + (live.isEmpty() ? "" : " (" + live + ")"));
    }

    private static String words(Figure figure) {
        String place = (figure.channel() + " " + figure.at()).strip();
        return (place.isEmpty() ? "" : place + " ") + LIVE.format(new Quantity(figure.value(), figure.unit()));
    }

    @Override
    public void resting(PlanItem item, Duration left) {
        console.progress(
                number(), total, Texts.of("run.rests", item.stepId(), PlanText.clock(left.toMillis() / 1000.0)));
    }

    @Override
    public void logged(LogEntry entry) {
        entries.add(entry);
    }

    @Override
    public void ended(PlanItem item, RunOutcome outcome) {
        long now = System.nanoTime();
        int number = number();
        ended.put(item, new Ended(outcome, (now - since) / NANOS_PER_SECOND));
        since = now;
        console.status(String.format("%3d/%d  %s: %s", number, total, item.stepId(), outcome.sentence()));
        for (String remark : outcome.remarks()) {
            if (saidRemarks.add(remark)) {
                console.status("        " + remark);
            }
        }
    }

    /** Number of the item at hand, from 1. */
    private int number() {
        return Math.min(total, ended.size() + 1);
    }
}

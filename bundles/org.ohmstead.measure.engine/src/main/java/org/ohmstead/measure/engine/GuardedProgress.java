// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Progress;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Said;

/** Takes what a measurement says while it runs, as much as fits; only the newest is kept of what comes faster than anybody reads. */
final class GuardedProgress implements Progress {
    private static final int MOST_LIVE_FIGURES = 200;

    private final RunToken token;
    private final RunLimits limits;
    private final CaptureKeeper keeper;
    private final Deque<String> lines = new ArrayDeque<>();
    private final Map<List<String>, Figure> live = new LinkedHashMap<>();
    private double doneRatio;
    private String what = "";
    private long leftOut;
    private Optional<Acquisition> newest = Optional.empty();
    private Optional<Observation> meters = Optional.empty();
    private long changes;

    GuardedProgress(RunToken token, RunLimits limits, CaptureKeeper keeper) {
        this.token = token;
        this.limits = limits;
        this.keeper = keeper;
    }

    @Override
    public synchronized void at(double newDoneRatio, String newWhat) {
        token.refuseIfOver("progress");
        if (!Double.isFinite(newDoneRatio)) {
            throw new IllegalArgumentException("doneRatio is " + newDoneRatio + "; it must lie between 0 and 1");
        }
        doneRatio = Math.max(0, Math.min(1, newDoneRatio));
        String text = newWhat == null ? "" : Contained.cut(newWhat);
        if (!text.equals(what)) {
            what = text;
            lines.addLast(text);
            if (lines.size() > limits.mostLines()) {
                lines.removeFirst();
                leftOut++;
            }
        }
        changes++;
    }

    @Override
    public synchronized void live(Figure figure) {
        token.refuseIfOver("progress");
        List<String> key = List.of(figure.id(), figure.channel(), figure.at());
        if (live.size() < MOST_LIVE_FIGURES || live.containsKey(key)) {
            live.put(key, figure);
        }
        changes++;
    }

    @Override
    public void recorded(Acquisition acquisition) {
        token.refuseIfOver("progress");
        if (acquisition == null) {
            throw new IllegalArgumentException("acquisition is missing");
        }
        if (keeper.count() >= limits.mostCaptures()) {
            token.end(token.failure(token.measurement(), true, "progress.tooMany", limits.mostCaptures()));
            return;
        }
        // An interrupt would close the file that is being written.
        boolean interrupted = Thread.interrupted();
        try {
            keeper.keep(acquisition);
        } catch (TestLogException failed) {
            token.end(new RunOutcome.NotKept(Said.by(failed), List.of()));
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
        synchronized (this) {
            newest = Optional.of(acquisition);
            changes++;
        }
    }

    @Override
    public void checkpoint() throws InterruptedException {
        token.refuseIfOver("progress");
        token.stopIfEnded();
        if (Thread.interrupted()) {
            throw new InterruptedException("The thread was interrupted.");
        }
    }

    /** Takes what the meters show. */
    synchronized void seen(Observation observation) {
        meters = Optional.of(observation);
        changes++;
    }

    /** Returns a number that grows with every change. */
    synchronized long changes() {
        return changes;
    }

    synchronized ProgressView view() {
        return new ProgressView(
                doneRatio,
                what,
                new ArrayList<>(live.values()),
                keeper.count(),
                new ArrayList<>(lines),
                leftOut,
                newest,
                meters);
    }
}

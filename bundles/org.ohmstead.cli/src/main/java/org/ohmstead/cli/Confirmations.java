// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.model.Problem;
import org.ohmstead.testlog.TestLogException;

/** Gets a yes or a no to each warning before anything is fed. */
final class Confirmations {
    /**
     * A yes.
     *
     * @param stepIds to which steps
     * @param what to what
     * @param who said it
     * @param reason why
     */
    record Yes(List<String> stepIds, String what, String who, String reason) {
        Yes {
            stepIds = List.copyOf(stepIds);
        }
    }

    private record Warning(String what, String remedy) {}

    private record Place(String stepId, Problem problem) {}

    private final Console console;
    private final RunOptions options;
    private final List<Yes> given = new ArrayList<>();

    Confirmations(Console console, RunOptions options) {
        this.console = console;
        this.options = options;
    }

    /** Returns what was said yes to. */
    List<Yes> given() {
        return List.copyOf(given);
    }

    /**
     * Asks about the warnings of some steps, or takes them as confirmed where the options say so. The same warning of several steps is
     * asked once.
     *
     * @param run where a yes is kept
     * @param steps what is to be measured
     * @return whether all were confirmed
     */
    boolean all(PlanRun run, List<DryStep> steps) throws TestLogException, InputException, InterruptedException {
        Map<Warning, List<Place>> warnings = warnings(steps);
        boolean all = true;
        for (Map.Entry<Warning, List<Place>> each : warnings.entrySet()) {
            Optional<String> reason = reason(each.getKey(), stepIds(each.getValue()));
            if (reason.isEmpty()) {
                all = false;
                continue;
            }
            for (Place place : each.getValue()) {
                run.confirm(place.stepId(), place.problem(), options.who(), reason.get());
            }
            given.add(new Yes(stepIds(each.getValue()), each.getKey().what(), options.who(), reason.get()));
        }
        if (!all && !console.hasPerson()) {
            console.message(Texts.of("confirm.nobody"));
        }
        return all;
    }

    private static Map<Warning, List<Place>> warnings(List<DryStep> steps) {
        Map<Warning, List<Place>> warnings = new LinkedHashMap<>();
        for (DryStep step : steps) {
            for (Problem problem : step.unconfirmed()) {
                warnings.computeIfAbsent(new Warning(problem.what(), problem.remedy()), any -> new ArrayList<>())
                        .add(new Place(step.item().stepId(), problem));
            }
        }
        return warnings;
    }

    private static List<String> stepIds(List<Place> places) {
        return places.stream().map(Place::stepId).distinct().toList();
    }

    private Optional<String> reason(Warning warning, List<String> stepIds) throws InputException, InterruptedException {
        if (options.yes()) {
            return Optional.of(options.reason());
        }
        console.status(Texts.of("confirm.warning", Texts.some(stepIds)));
        console.status("    " + warning.what());
        console.status("    " + warning.remedy());
        if (!console.hasPerson()) {
            return Optional.empty();
        }
        return console.ask(Texts.of("confirm.ask")).filter(line -> !line.isEmpty());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;
import java.util.Optional;

/**
 * Everything about one test: the amplifier, the bench, the loads, the plan, and what the sheet says.
 *
 * @param title what the project is called, not blank
 * @param amplifier the device under test
 * @param bench where and with what it is tested
 * @param loads the bench's loads
 * @param plan the steps, in the order they are run
 * @param sheet settings of the results sheet
 */
public record Project(
        String title, Amplifier amplifier, Bench bench, List<BenchLoad> loads, List<Step> plan, SheetSettings sheet) {
    public Project {
        Checks.named(title, "title");
        Checks.present(amplifier, "amplifier");
        Checks.present(bench, "bench");
        loads = List.copyOf(loads);
        plan = List.copyOf(plan);
        Checks.present(sheet, "sheet");
    }

    /** Returns the load with an id, or empty. */
    public Optional<BenchLoad> load(String id) {
        return loads.stream().filter(load -> load.id().equals(id)).findFirst();
    }

    /** Returns the step with an id, or empty. */
    public Optional<Step> step(String id) {
        return plan.stream().filter(step -> step.id().equals(id)).findFirst();
    }

    /** Returns this project with another amplifier. */
    public Project withAmplifier(Amplifier newAmplifier) {
        return new Project(title, newAmplifier, bench, loads, plan, sheet);
    }

    /** Returns this project with another bench. */
    public Project withBench(Bench newBench) {
        return new Project(title, amplifier, newBench, loads, plan, sheet);
    }

    /** Returns this project with other loads. */
    public Project withLoads(List<BenchLoad> newLoads) {
        return new Project(title, amplifier, bench, newLoads, plan, sheet);
    }

    /** Returns this project with another plan. */
    public Project withPlan(List<Step> newPlan) {
        return new Project(title, amplifier, bench, loads, newPlan, sheet);
    }

    /** Returns this project with other sheet settings. */
    public Project withSheet(SheetSettings newSheet) {
        return new Project(title, amplifier, bench, loads, plan, newSheet);
    }

    /** Returns this project with another title. */
    public Project withTitle(String newTitle) {
        return new Project(newTitle, amplifier, bench, loads, plan, sheet);
    }
}

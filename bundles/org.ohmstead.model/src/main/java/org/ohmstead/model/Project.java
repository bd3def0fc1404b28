// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Everything about one test: the amplifier, the bench, the loads, the plan, and what the sheet says.
 *
 * @param title what the project is called, not blank
 * @param amplifier the device under test
 * @param bench where and with what it is tested
 * @param loads the bench's loads
 * @param plan the steps, in the order they are run
 * @param sheet settings of the results sheet
 * @param setAside readings that are left out of curves and verdicts; each entry once
 * @param heat what the forecast of heat, current and time needs
 * @param checkStandards what shows whether the bench still is what it was
 * @param sharedLog where the laboratory's shared log lies, when there is one
 */
public record Project(
        String title,
        Amplifier amplifier,
        Bench bench,
        List<BenchLoad> loads,
        List<Step> plan,
        SheetSettings sheet,
        List<SetAside> setAside,
        HeatData heat,
        List<CheckStandard> checkStandards,
        Optional<SharedLog> sharedLog) {
    public Project {
        Checks.named(title, "title");
        Checks.present(amplifier, "amplifier");
        Checks.present(bench, "bench");
        loads = List.copyOf(loads);
        plan = List.copyOf(plan);
        Checks.present(sheet, "sheet");
        setAside = List.copyOf(setAside);
        Checks.present(heat, "heat");
        checkStandards = List.copyOf(checkStandards);
        Checks.present(sharedLog, "sharedLog");
        Set<String> entries = new HashSet<>();
        for (SetAside each : setAside) {
            if (!entries.add(each.entryId())) {
                throw new IllegalArgumentException(
                        "setAside is holding the entry \"" + each.entryId() + "\" twice; a reading is set aside once");
            }
        }
    }

    /** Makes a project without check standards and without a shared log. */
    public Project(
            String title,
            Amplifier amplifier,
            Bench bench,
            List<BenchLoad> loads,
            List<Step> plan,
            SheetSettings sheet,
            List<SetAside> setAside,
            HeatData heat) {
        this(title, amplifier, bench, loads, plan, sheet, setAside, heat, List.of(), Optional.empty());
    }

    /** Makes a project of which no reading is set aside, and of whose heat nothing is known. */
    public Project(
            String title,
            Amplifier amplifier,
            Bench bench,
            List<BenchLoad> loads,
            List<Step> plan,
            SheetSettings sheet) {
        this(title, amplifier, bench, loads, plan, sheet, List.of(), HeatData.NONE);
    }

    /** Returns why the reading of a log entry is set aside; empty when it is not. */
    public Optional<String> reasonSetAside(String entryId) {
        return setAside.stream()
                .filter(each -> each.entryId().equals(entryId))
                .map(SetAside::reason)
                .findFirst();
    }

    /** Returns the load with an id, or empty. */
    public Optional<BenchLoad> load(String id) {
        return loads.stream().filter(load -> load.id().equals(id)).findFirst();
    }

    /** Returns the step with an id, or empty. */
    public Optional<Step> step(String id) {
        return plan.stream().filter(step -> step.id().equals(id)).findFirst();
    }

    /** Returns the check standard with an id, or empty. */
    public Optional<CheckStandard> checkStandard(String id) {
        return checkStandards.stream().filter(each -> each.id().equals(id)).findFirst();
    }

    /** Returns this project with another amplifier. */
    public Project withAmplifier(Amplifier newAmplifier) {
        return new Project(title, newAmplifier, bench, loads, plan, sheet, setAside, heat, checkStandards, sharedLog);
    }

    /** Returns this project with another bench. */
    public Project withBench(Bench newBench) {
        return new Project(title, amplifier, newBench, loads, plan, sheet, setAside, heat, checkStandards, sharedLog);
    }

    /** Returns this project with other loads. */
    public Project withLoads(List<BenchLoad> newLoads) {
        return new Project(title, amplifier, bench, newLoads, plan, sheet, setAside, heat, checkStandards, sharedLog);
    }

    /** Returns this project with another plan. */
    public Project withPlan(List<Step> newPlan) {
        return new Project(title, amplifier, bench, loads, newPlan, sheet, setAside, heat, checkStandards, sharedLog);
    }

    /** Returns this project with other sheet settings. */
    public Project withSheet(SheetSettings newSheet) {
        return new Project(title, amplifier, bench, loads, plan, newSheet, setAside, heat, checkStandards, sharedLog);
    }

    /** Returns this project with another title. */
    public Project withTitle(String newTitle) {
        return new Project(newTitle, amplifier, bench, loads, plan, sheet, setAside, heat, checkStandards, sharedLog);
    }

    /** Returns this project with other readings set aside. */
    public Project withSetAside(List<SetAside> newSetAside) {
        return new Project(title, amplifier, bench, loads, plan, sheet, newSetAside, heat, checkStandards, sharedLog);
    }

    /** Returns this project with other data for the forecast of heat. */
    public Project withHeat(HeatData newHeat) {
        return new Project(title, amplifier, bench, loads, plan, sheet, setAside, newHeat, checkStandards, sharedLog);
    }

    /** Returns this project with other check standards. */
    public Project withCheckStandards(List<CheckStandard> newCheckStandards) {
        return new Project(title, amplifier, bench, loads, plan, sheet, setAside, heat, newCheckStandards, sharedLog);
    }

    /** Returns this project with another shared log, or none. */
    public Project withSharedLog(Optional<SharedLog> newSharedLog) {
        return new Project(title, amplifier, bench, loads, plan, sheet, setAside, heat, checkStandards, newSharedLog);
    }
}

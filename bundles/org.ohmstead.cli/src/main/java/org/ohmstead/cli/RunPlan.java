// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.PlanRuns;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.SettingException;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.engine.BenchChoice;
import org.ohmstead.measure.engine.CatalogView;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;

/**
 * What is to be run, made out of the options and checked against the plug-ins that are there.
 *
 * @param driver on which bench; empty when none is named, which will do for a dry run
 * @param bench the same with its settings
 * @param items what is to be measured, in order
 * @param leftOut ids of steps whose load the project does not have
 */
record RunPlan(Optional<DriverInfo> driver, BenchChoice bench, List<PlanItem> items, List<String> leftOut) {
    private static final String OF_DRIVER = "driver.";
    private static final String NO_DRIVER = "none";

    RunPlan {
        items = List.copyOf(items);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Makes it.
     *
     * @throws JobException when something does not fit; the message says what would
     */
    static RunPlan of(ProjectFolder folder, CatalogView catalog, RunOptions options) throws JobException {
        Optional<DriverInfo> driver = Optional.empty();
        if (options.driver().isPresent()) {
            driver = Optional.of(PluginIds.find(
                    catalog.drivers(), DriverInfo::id, options.driver().get(), "driver"));
        }
        Map<String, String> all = settings(options.settings());
        Map<String, String> ofDriver = new LinkedHashMap<>();
        Map<String, String> ofMeasurement = new LinkedHashMap<>();
        all.forEach((name, value) -> {
            if (name.startsWith(OF_DRIVER)) {
                ofDriver.put(name.substring(OF_DRIVER.length()), value);
            } else {
                ofMeasurement.put(name, value);
            }
        });
        Settings driverSettings = driverSettings(driver, ofDriver);
        List<Step> steps = steps(folder, options.steps());
        List<Step> whole = steps.stream()
                .filter(step -> folder.project().load(step.loadId()).isPresent())
                .toList();
        List<PlanItem> items = items(folder.project(), whole, measurements(catalog, options.measurements()));
        items = withSettings(items, ofMeasurement, catalog);
        if (driver.filter(RunPlan::playsFolderBack).isPresent()) {
            items = PlanRuns.atRecordedLevels(items, recordings(driverSettings.text("folder")));
        }
        List<String> leftOut = steps.stream()
                .filter(step -> !whole.contains(step))
                .map(Step::id)
                .toList();
        return new RunPlan(
                driver, new BenchChoice(driver.map(DriverInfo::id).orElse(NO_DRIVER), ofDriver), items, leftOut);
    }

    private static Settings driverSettings(Optional<DriverInfo> driver, Map<String, String> given)
            throws InputException {
        if (driver.isEmpty() && !given.isEmpty()) {
            throw new InputException(Texts.of("runPlan.noBench"));
        }
        return checked(
                driver.map(DriverInfo::settings).orElse(List.of()),
                given,
                Texts.of("runPlan.driver", driver.map(DriverInfo::id).orElse(NO_DRIVER)));
    }

    private static boolean playsFolderBack(DriverInfo driver) {
        return driver.kind() == DriverInfo.Kind.REPLAYED
                && driver.settings().stream()
                        .anyMatch(setting ->
                                setting instanceof Setting.Text && setting.id().equals("folder"));
    }

    private static Path recordings(String folder) throws InputException {
        if (folder.isBlank()) {
            throw new InputException(Texts.of("runPlan.noFolder"));
        }
        try {
            return Path.of(folder);
        } catch (InvalidPathException impossible) {
            throw new InputException(Texts.of("runPlan.badFolder", folder));
        }
    }

    private static Map<String, String> settings(List<String> texts) throws InputException {
        Map<String, String> settings = new LinkedHashMap<>();
        for (String text : texts) {
            int equals = text.indexOf('=');
            if (equals < 1) {
                throw new InputException(Texts.of("runPlan.noSetting", text));
            }
            String name = text.substring(0, equals).strip();
            if (settings.put(name, text.substring(equals + 1).strip()) != null) {
                throw new InputException(Texts.of("runPlan.twice", name));
            }
        }
        return settings;
    }

    private static Settings checked(List<Setting> known, Map<String, String> given, String whose)
            throws InputException {
        try {
            return Settings.of(known, given);
        } catch (SettingException wrong) {
            throw new InputException(Texts.of("runPlan.wrongSetting", whose, wrong.getMessage()));
        }
    }

    private static List<Step> steps(ProjectFolder folder, List<String> ids) throws InputException {
        List<Step> plan = folder.project().plan();
        for (String id : ids) {
            if (folder.project().step(id).isEmpty()) {
                throw new InputException(Texts.of(
                        "runPlan.noStep",
                        id,
                        Texts.some(plan.stream().map(Step::id).toList())));
            }
        }
        if (plan.isEmpty()) {
            throw new InputException(Texts.of("runPlan.empty", folder.folder()));
        }
        return ids.isEmpty()
                ? plan
                : plan.stream().filter(step -> ids.contains(step.id())).toList();
    }

    private static List<String> measurements(CatalogView catalog, List<String> wanted) throws InputException {
        Set<String> ids = new LinkedHashSet<>();
        for (String each : wanted) {
            ids.add(PluginIds.find(catalog.measurements(), MeasurementInfo::id, each, "measurement")
                    .id());
        }
        return List.copyOf(ids);
    }

    private static List<PlanItem> items(Project project, List<Step> steps, List<String> measurementIds) {
        if (measurementIds.isEmpty()) {
            Set<String> ids = steps.stream().map(Step::id).collect(Collectors.toSet());
            return PlanRuns.items(project).stream()
                    .filter(item -> ids.contains(item.stepId()))
                    .toList();
        }
        List<PlanItem> items = new ArrayList<>();
        for (Step step : steps) {
            measurementIds.forEach(id -> items.add(PlanRuns.item(step, id)));
        }
        return items;
    }

    /** Each measurement gets those settings that it has; a setting that none has is refused. */
    private static List<PlanItem> withSettings(List<PlanItem> items, Map<String, String> given, CatalogView catalog)
            throws InputException {
        if (given.isEmpty()) {
            return items;
        }
        Map<String, MeasurementInfo> infos = new LinkedHashMap<>();
        for (PlanItem item : items) {
            info(catalog, item).ifPresent(info -> infos.put(info.id(), info));
        }
        Set<String> known = infos.values().stream()
                .flatMap(info -> info.settings().stream())
                .map(Setting::id)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        for (String name : given.keySet()) {
            if (!known.contains(name)) {
                throw new InputException(Texts.of("runPlan.unknown", name, String.join(", ", known), OF_DRIVER));
            }
        }
        List<PlanItem> set = new ArrayList<>();
        for (PlanItem item : items) {
            Map<String, String> settings = new LinkedHashMap<>(item.settings());
            List<Setting> its =
                    info(catalog, item).map(MeasurementInfo::settings).orElse(List.of());
            its.stream()
                    .map(Setting::id)
                    .filter(given::containsKey)
                    .forEach(name -> settings.put(name, given.get(name)));
            checked(its, settings, Texts.of("runPlan.measurement", item.measurementId()));
            set.add(new PlanItem(item.stepId(), item.measurementId(), settings));
        }
        return set;
    }

    private static Optional<MeasurementInfo> info(CatalogView catalog, PlanItem item) {
        return catalog.measurements().stream()
                .filter(info -> info.id().equals(item.measurementId()))
                .findFirst();
    }
}

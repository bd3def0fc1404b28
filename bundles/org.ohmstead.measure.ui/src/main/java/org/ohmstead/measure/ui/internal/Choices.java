// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.ohmstead.measure.engine.BenchChoice;
import org.ohmstead.measure.engine.PlanItem;

/**
 * What the technician chose: the bench, what is measured at each step, and who they are.
 *
 * @param driverId the bench driver; empty when none is chosen yet
 * @param benchSettings values of that driver's settings that differ from the usual ones
 * @param measured ids of the measurements at a step, by the step's id, where they differ from the usual ones
 * @param measurementSettings values of measurements' settings that differ from the usual ones, by the measurement's id
 * @param operator who runs the plan; may be empty
 */
record Choices(
        String driverId,
        Map<String, String> benchSettings,
        Map<String, List<String>> measured,
        Map<String, Map<String, String>> measurementSettings,
        String operator) {
    /** Nothing chosen. */
    static final Choices NONE = new Choices("", Map.of(), Map.of(), Map.of(), "");

    private static final String DRIVER = "driver";
    private static final String BENCH = "bench.";
    private static final String MEASURED = "measured";
    private static final String MEASUREMENT = "measurement.";
    private static final String WITH_SETTINGS = "measurements";
    private static final String OPERATOR = "operator";

    Choices {
        benchSettings = Map.copyOf(benchSettings);
        measured = copy(measured, List::copyOf);
        measurementSettings = copy(measurementSettings, Map::copyOf);
    }

    private static <T> Map<String, T> copy(Map<String, T> map, UnaryOperator<T> copied) {
        return map.entrySet().stream()
                .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, each -> copied.apply(each.getValue())));
    }

    /**
     * Reads what was chosen last.
     *
     * @param project names the project; what is chosen for it comes before what was chosen last anywhere
     */
    static Choices read(ConsoleMemory memory, String project) {
        String ofProject = memory.get(project + "." + DRIVER);
        String driver = ofProject.isEmpty() ? memory.get(DRIVER) : ofProject;
        Map<String, List<String>> measured = new TreeMap<>();
        TextMap.read(memory.get(project + "." + MEASURED))
                .forEach((step, ids) -> measured.put(step, Arrays.asList(ids.split(","))));
        Map<String, Map<String, String>> settings = new TreeMap<>();
        for (String id : TextMap.read(memory.get(WITH_SETTINGS)).keySet()) {
            settings.put(id, TextMap.read(memory.get(MEASUREMENT + id)));
        }
        return new Choices(driver, TextMap.read(memory.get(BENCH + driver)), measured, settings, memory.get(OPERATOR));
    }

    /** Returns the settings that were last chosen for a driver. */
    static Map<String, String> settings(ConsoleMemory memory, String driverId) {
        return TextMap.read(memory.get(BENCH + driverId));
    }

    /** Keeps what is chosen. */
    void write(ConsoleMemory memory, String project) {
        memory.put(DRIVER, driverId);
        memory.put(project + "." + DRIVER, driverId);
        memory.put(BENCH + driverId, TextMap.write(benchSettings));
        Map<String, String> lists = new TreeMap<>();
        measured.forEach((step, ids) -> lists.put(step, String.join(",", ids)));
        memory.put(project + "." + MEASURED, TextMap.write(lists));
        Map<String, String> with = new TreeMap<>();
        measurementSettings.forEach((id, values) -> {
            with.put(id, "");
            memory.put(MEASUREMENT + id, TextMap.write(values));
        });
        memory.put(WITH_SETTINGS, TextMap.write(with));
        memory.put(OPERATOR, operator);
    }

    /** Returns the bench as the engine wants it. */
    BenchChoice bench() {
        return new BenchChoice(driverId, benchSettings);
    }

    /** Returns what is to be measured: the usual at each step, unless something else was chosen for it. */
    List<PlanItem> items(List<PlanItem> usual) {
        List<PlanItem> items = new ArrayList<>();
        for (PlanItem each : usual) {
            List<String> ids = measured.getOrDefault(each.stepId(), List.of(each.measurementId()));
            for (String id : ids) {
                Map<String, String> settings =
                        new TreeMap<>(each.measurementId().equals(id) ? each.settings() : Map.of());
                settings.putAll(measurementSettings.getOrDefault(id, Map.of()));
                items.add(new PlanItem(each.stepId(), id, settings));
            }
        }
        return List.copyOf(items);
    }

    Choices withDriver(String newDriverId, Map<String, String> settings) {
        return new Choices(newDriverId, settings, measured, measurementSettings, operator);
    }

    Choices withBenchSetting(String id, String text) {
        return new Choices(driverId, with(benchSettings, id, text), measured, measurementSettings, operator);
    }

    /** Returns these with other measurements at a step; none for the usual one. */
    Choices withMeasured(String stepId, List<String> ids) {
        Map<String, List<String>> more = new TreeMap<>(measured);
        if (ids.isEmpty()) {
            more.remove(stepId);
        } else {
            more.put(stepId, ids);
        }
        return new Choices(driverId, benchSettings, more, measurementSettings, operator);
    }

    Choices withMeasurementSetting(String measurementId, String id, String text) {
        Map<String, Map<String, String>> more = new TreeMap<>(measurementSettings);
        more.put(measurementId, with(measurementSettings.getOrDefault(measurementId, Map.of()), id, text));
        return new Choices(driverId, benchSettings, measured, more, operator);
    }

    Choices withOperator(String newOperator) {
        return new Choices(driverId, benchSettings, measured, measurementSettings, newOperator);
    }

    private static Map<String, String> with(Map<String, String> map, String id, String text) {
        Map<String, String> more = new TreeMap<>(map);
        more.put(id, text);
        return more;
    }
}

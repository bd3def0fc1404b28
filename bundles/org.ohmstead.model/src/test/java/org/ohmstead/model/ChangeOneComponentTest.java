// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The invariant of every {@code withX}: it changes the component X as asked and no other. */
class ChangeOneComponentTest {
    static Stream<Record> records() {
        Project project = SampleProject.sound();
        // Taken out one by one: Eclipse's compiler casts an element that goes straight into a stream of records to a
        // wrong type.
        LowestLoad lowestLoad = project.amplifier().lowestLoads().get(0);
        Fuse fuse = project.amplifier().fuses().get(0);
        Rating rating = project.amplifier().ratings().get(0);
        Meter meter = project.bench().meters().get(0);
        Part part = project.bench().parts().get(0);
        BenchLoad load = project.loads().get(0);
        LoadBranch branch = load.branches().get(0);
        Step step = project.plan().get(0);
        List<Record> records = new ArrayList<>();
        records.add(project);
        records.add(project.amplifier());
        records.add(lowestLoad);
        records.add(fuse);
        records.add(rating);
        records.add(project.bench());
        records.add(project.bench().supply());
        records.add(project.bench().cable());
        records.add(meter);
        records.add(meter.accuracy());
        records.add(part);
        records.add(part.traits());
        records.add(load);
        records.add(branch);
        records.add(step);
        records.add(project.sheet());
        records.add(project.sheet()
                .layout()
                .withLogoFile("sheets/logo.svg")
                .withComparedProjects(List.of("../other.ohmstead"))
                .withComparedPeriods(List.of("2025")));
        SetAside setAside = project.setAside().get(0);
        records.add(setAside);
        records.add(project.heat());
        records.add(project.heat().amplifier());
        records.add(project.heat().supply());
        records.add(project.heat().pacing());
        CheckStandard standard = project.checkStandards().get(0);
        records.add(standard);
        records.add(meter.stability());
        Repeatability repeatability = project.bench().repeatability().orElseThrow();
        records.add(repeatability);
        VerdictRule verdictRule = project.sheet().verdictRule().orElseThrow();
        records.add(verdictRule);
        Price price = project.amplifier().price().orElseThrow();
        records.add(price);
        SharedLog sharedLog = project.sharedLog().orElseThrow();
        records.add(sharedLog);
        records.add(new Stimulus.ContinuousSine(1000));
        records.add(new Stimulus.ToneBurst(1000, 0.02, 0.5, -20));
        return records.stream();
    }

    @ParameterizedTest
    @MethodSource("records")
    void withChangesOneComponentOnly(Record before) throws ReflectiveOperationException {
        RecordComponent[] components = before.getClass().getRecordComponents();
        int changed = 0;
        for (RecordComponent component : components) {
            String name = component.getName();
            String withName = "with" + name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
            Method with = before.getClass().getMethod(withName, component.getType());
            Object value = other(component.getAccessor().invoke(before));
            Object after = with.invoke(before, value);
            for (RecordComponent each : components) {
                Object now = each.getAccessor().invoke(after);
                assertEquals(each.equals(component) ? value : each.getAccessor().invoke(before), now, name);
            }
            assertNotEquals(before, after);
            changed++;
        }
        assertTrue(changed > 0);
        assertEquals(
                changed,
                Arrays.stream(before.getClass().getDeclaredMethods())
                        .filter(method -> method.getName().startsWith("with") && !method.isBridge())
                        .count());
    }

    private static Object other(Object value) {
        if (value instanceof Double number) {
            return number < 0 ? number - 1 : number == 0 ? 0.125 : number * 0.75;
        } else if (value instanceof Integer number) {
            return number + 1;
        } else if (value instanceof Boolean flag) {
            return !flag;
        } else if (value instanceof String text) {
            return text + "x";
        } else if (value instanceof OptionalDouble number) {
            return number.isPresent() ? OptionalDouble.of(number.getAsDouble() * 0.75) : OptionalDouble.of(0.5);
        } else if (value instanceof Optional<?> held && held.orElse(null) instanceof Record) {
            return Optional.empty();
        } else if (value instanceof Optional<?>) {
            return Optional.of(LocalDate.of(2031, 5, 6));
        } else if (value instanceof LocalDate day) {
            return day.plusDays(1);
        } else if (value instanceof List<?> list
                && list.size() == 1
                && (list.get(0) instanceof SetAside || list.get(0) instanceof Rest)) {
            return List.of(); // no entry may be there twice
        } else if (value instanceof List<?> list) {
            return list.size() > 1
                    ? list.subList(0, 1)
                    : Stream.of(list, list).flatMap(List::stream).toList();
        } else if (value instanceof Enum<?> constant) {
            Object[] all = constant.getDeclaringClass().getEnumConstants();
            return all[(constant.ordinal() + 1) % all.length];
        }
        return otherRecord(value);
    }

    private static Object otherRecord(Object value) {
        if (value instanceof Amplifier amplifier) {
            return amplifier.withNotes("changed");
        } else if (value instanceof Bench bench) {
            return bench.withPlace("changed");
        } else if (value instanceof Supply supply) {
            return supply.withName("changed");
        } else if (value instanceof Cable cable) {
            return cable.withLoopMetres(9);
        } else if (value instanceof PartTraits traits) {
            return traits.withMeasured(!traits.measured());
        } else if (value instanceof Accuracy accuracy) {
            return accuracy.withFixed(9);
        } else if (value instanceof MeterStability stability) {
            return stability.withFromCelsius(9);
        } else if (value instanceof SheetLayout layout) {
            return layout.withPaper(PaperSize.LETTER);
        } else if (value instanceof SheetSettings sheet) {
            return sheet.withRemarks("changed");
        } else if (value instanceof Stimulus stimulus) {
            return stimulus.withFrequencyHz(50);
        } else if (value instanceof HeatData heat) {
            return heat.withPacing(heat.pacing().withStepSeconds(7));
        } else if (value instanceof AmplifierHeat amplifier) {
            return amplifier.withOutputClass(OutputClass.CLASS_D);
        } else if (value instanceof SupplyLimits supply) {
            return supply.withBattery(!supply.battery());
        } else if (value instanceof Pacing pacing) {
            return pacing.withStepSeconds(7);
        } else if (value instanceof EndPoint) {
            return new EndPoint.ClippingOnset();
        }
        throw new IllegalArgumentException("value is of an unknown type: " + value);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;

@Timeout(60)
class CatalogTest {
    private final Catalog catalog = new Catalog();

    private static List<String> ids(CatalogView view) {
        return view.measurements().stream().map(MeasurementInfo::id).toList();
    }

    @Test
    void ofTwoWithOneIdTheFirstCountsUntilItGoes() {
        FakeMeasurement one = FakeMeasurement.good("org.example.same");
        FakeMeasurement two = FakeMeasurement.good("org.example.same");
        catalog.bindMeasurement(one);
        catalog.bindMeasurement(two);
        assertEquals(List.of("org.example.same"), ids(catalog.view()));
        assertEquals(one, catalog.measurement("org.example.same").orElseThrow().instance());
        String problem = catalog.view().problems().get(0).what();
        assertTrue(problem.contains("there is another with the id org.example.same, which came first"), problem);
        catalog.unbindMeasurement(one);
        assertEquals(two, catalog.measurement("org.example.same").orElseThrow().instance());
        assertEquals(List.of(), catalog.view().problems());
        catalog.unbindMeasurement(two);
        assertEquals(List.of(), ids(catalog.view()));
    }

    /** A measurement whose information is faulty. */
    private interface Info {
        MeasurementInfo get() throws InterruptedException;
    }

    private record Odd(Info info2) implements Measurement {
        @Override
        public MeasurementInfo info() {
            try {
                return info2.get();
            } catch (InterruptedException told) {
                throw new IllegalStateException("interrupted", told);
            }
        }

        @Override
        public Readiness readiness(Subject subject) {
            return new Readiness.Ready();
        }

        @Override
        public MeasurementResult run(Subject subject, Settings settings, Bench bench, Progress progress) {
            throw new IllegalStateException("never");
        }
    }

    static Stream<Odd> oddities() {
        return Stream.of(
                new Odd(() -> null),
                new Odd(() -> {
                    throw new IllegalStateException("no information");
                }),
                new Odd(() -> {
                    throw new ExceptionInInitializerError("static");
                }),
                new Odd(() ->
                        new MeasurementInfo("no dots", "1", "", "", List.of(), Set.of(), List.of(), List.of(), null)),
                new Odd(() -> {
                    new CountDownLatch(1).await();
                    return null;
                }));
    }

    @ParameterizedTest
    @MethodSource("oddities")
    void oneThatDoesNotSayWhatItIsIsAProblemAndNothingElse(Odd odd) {
        catalog.bindMeasurement(FakeMeasurement.good("org.example.good"));
        catalog.bindMeasurement(odd);
        assertEquals(List.of("org.example.good"), ids(catalog.view()));
        assertEquals(1, catalog.view().problems().size());
        assertTrue(catalog.view().problems().get(0).what().contains(Odd.class.getName()));
        catalog.unbindMeasurement(odd);
        assertEquals(List.of(), catalog.view().problems());
    }

    @Test
    void listenersHearOfChangesAndMayThrow() {
        List<CatalogView> seen = new ArrayList<>();
        catalog.addListener(view -> {
            throw new IllegalStateException("deaf");
        });
        catalog.addListener(seen::add);
        catalog.bindDriver(new FakeDriver());
        catalog.bindMeasurement(FakeMeasurement.good("org.example.good"));
        assertEquals(2, seen.size());
        assertEquals(List.of(), ids(seen.get(0)), "an older view stays as it was");
        assertEquals(List.of("org.example.good"), ids(seen.get(1)));
        assertEquals(FakeDriver.ID, seen.get(0).drivers().get(0).id());
    }
}

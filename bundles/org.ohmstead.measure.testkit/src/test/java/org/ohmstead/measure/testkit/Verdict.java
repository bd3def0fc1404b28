// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.platform.engine.discovery.DiscoverySelectors.selectClass;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.launcher.Launcher;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

/** Runs the contract of a plug-in and tells which tests of it failed. */
final class Verdict {
    private final Map<String, TestExecutionResult> results = new TreeMap<>();

    private Verdict() {}

    static Verdict of(Class<?> contract) {
        Verdict verdict = new Verdict();
        Launcher launcher = LauncherFactory.create();
        launcher.execute(
                LauncherDiscoveryRequestBuilder.request()
                        .selectors(selectClass(contract))
                        .build(),
                new TestExecutionListener() {
                    @Override
                    public void executionFinished(TestIdentifier test, TestExecutionResult result) {
                        if (test.isTest()) {
                            verdict.results.put(test.getDisplayName().replace("()", ""), result);
                        }
                    }
                });
        long tests =
                Arrays.stream(contract.getMethods()).filter(Verdict::isTest).count();
        assertEquals(tests, verdict.results.size(), "not every test of " + contract + " was run");
        return verdict;
    }

    private static boolean isTest(Method method) {
        return method.isAnnotationPresent(Test.class);
    }

    private Set<String> ended(TestExecutionResult.Status status) {
        Set<String> names = new TreeSet<>();
        results.forEach((name, result) -> {
            if (result.getStatus() == status) {
                names.add(name);
            }
        });
        return names;
    }

    void passes() {
        assertEquals(Set.of(), ended(TestExecutionResult.Status.FAILED), this::words);
        assertEquals(Set.of(), ended(TestExecutionResult.Status.ABORTED), this::words);
    }

    /** Everything else has passed, or was not run. */
    void fails(String test, String saying) {
        assertEquals(Set.of(test), ended(TestExecutionResult.Status.FAILED), this::words);
        String message = results.get(test).getThrowable().orElseThrow().getMessage();
        assertTrue(message.contains(saying), message);
    }

    /** These have failed and nothing else, with certain words. */
    void failsWith(String saying, String... tests) {
        assertEquals(new TreeSet<>(List.of(tests)), ended(TestExecutionResult.Status.FAILED), this::words);
        assertTrue(words().contains(saying), this::words);
    }

    private String words() {
        StringBuilder words = new StringBuilder();
        results.forEach((name, result) -> result.getThrowable()
                .ifPresent(
                        cause -> words.append(name).append(": ").append(cause).append('\n')));
        return words.toString();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;

/**
 * Looks at a step before it runs, and names bounds that end it while it runs. A plug-in: a class with {@code @Component} that implements
 * this. It keeps nothing between calls, which may come on any thread.
 */
public interface Precaution {
    /** Returns a short name, unique among all precautions, written like a package: "org.example.ears". */
    String id();

    /**
     * Returns what is to be said before a step, each with a remedy. An error forbids the step; a warning needs a yes.
     *
     * @param project the whole project
     * @param step one of its plan
     */
    List<Problem> check(Project project, Step step);

    /**
     * Returns the bounds that end a step.
     *
     * @param project the whole project
     * @param step one of its plan
     */
    List<StopLimit> stopLimits(Project project, Step step);
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;

/** Collects what was noticed while reading a file. For one reading, one thread. */
public final class Findings {
    private static final int MOST_REPORTED = 100;

    private final List<Problem> problems = new ArrayList<>();
    private final Set<String> unknownPaths = new HashSet<>();

    void add(Problem problem) {
        problems.add(problem);
    }

    void unknownField(String path, String name) {
        unknownPaths.add(path);
        if (unknownPaths.size() <= MOST_REPORTED) {
            problems.add(new Problem(
                    Severity.WARNING,
                    path,
                    "The field \"" + name + "\" is not known and plays no part. It is kept when the file is saved.",
                    "Check the spelling, or delete the field if it is not needed."));
        }
    }

    /** Returns the problems in the order they were found; of very many unknown fields the first ones and a count. */
    public List<Problem> problems() {
        int more = unknownPaths.size() - MOST_REPORTED;
        if (more <= 0) {
            return List.copyOf(problems);
        }
        List<Problem> all = new ArrayList<>(problems);
        all.add(new Problem(
                Severity.WARNING,
                JsonPaths.ROOT,
                "There are " + more + " more unknown fields.",
                "Check that it is the right file."));
        return List.copyOf(all);
    }

    /** Returns the paths of the unknown fields. */
    public Set<String> unknownPaths() {
        return Set.copyOf(unknownPaths);
    }
}

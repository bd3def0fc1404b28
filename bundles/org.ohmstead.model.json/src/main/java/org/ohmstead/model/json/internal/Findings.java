// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;

/** Collects what was noticed while reading a file. For one reading, one thread. */
public final class Findings {
    private static final Messages TEXTS = Messages.of(Findings.class);
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
                    Severity.WARNING, path, TEXTS.text("fields.unknown", name), TEXTS.text("fields.unknown.remedy")));
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
                TEXTS.text("fields.more", String.valueOf(more)),
                TEXTS.text("fields.more.remedy")));
        return List.copyOf(all);
    }

    /** Returns the paths of the unknown fields. */
    public Set<String> unknownPaths() {
        return Set.copyOf(unknownPaths);
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Registration;

/** Which two readings are to be compared: the log says it, the view of two readings hears it. User interface's thread only. */
final class PairChoice {
    /** One for each desk; it goes with it. */
    private static final Map<ProjectDesk, PairChoice> OF_DESKS = new WeakHashMap<>();

    private final List<Runnable> listeners = new ArrayList<>();
    private String first = "";
    private String second = "";

    /** Returns the choice that all views of a desk share. */
    static PairChoice of(ProjectDesk desk) {
        return OF_DESKS.computeIfAbsent(desk, key -> new PairChoice());
    }

    /** Returns the id of the one; empty when none is chosen. */
    String first() {
        return first;
    }

    /** Returns the id of the other; empty when none is chosen. */
    String second() {
        return second;
    }

    /** Chooses two entries by their ids, which may be empty. */
    void choose(String newFirst, String newSecond) {
        if (!first.equals(newFirst) || !second.equals(newSecond)) {
            first = newFirst;
            second = newSecond;
            List.copyOf(listeners).forEach(Runnable::run);
        }
    }

    Registration listen(Runnable listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }
}

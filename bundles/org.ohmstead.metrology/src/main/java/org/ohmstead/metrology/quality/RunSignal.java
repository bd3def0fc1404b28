// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.units.text.Messages;

/**
 * A pattern found on a control chart.
 *
 * @param rule the pattern
 * @param firstIndex the first point that belongs to it, counted from 0
 * @param lastIndex the last point that belongs to it, counted from 0; a pattern that goes on is one signal
 */
public record RunSignal(RunRule rule, int firstIndex, int lastIndex) {
    private static final Messages TEXTS = Messages.of(RunSignal.class);

    /** Checks the order of the indices. */
    public RunSignal {
        if (firstIndex < 0 || lastIndex < firstIndex) {
            throw new IllegalArgumentException("firstIndex and lastIndex are " + firstIndex + " and " + lastIndex
                    + " but must not be negative and must ascend.");
        }
    }

    /**
     * Returns the patterns among standardised points, in the order in which they were first complete.
     *
     * @param standardised each point's distance from the centre line in sigma, finite
     * @param rules the patterns to look for
     */
    public static List<RunSignal> find(double[] standardised, Set<RunRule> rules) {
        List<RunSignal> signals = new ArrayList<>();
        Map<RunRule, Integer> open = new EnumMap<>(RunRule.class);
        RunWatch watch = new RunWatch();
        for (int index = 0; index < standardised.length; index++) {
            EnumSet<RunRule> complete = watch.accept(Checks.finite("standardised point", standardised[index]));
            complete.retainAll(rules);
            open.keySet().retainAll(complete);
            for (RunRule rule : complete) {
                Integer place = open.get(rule);
                if (place == null) {
                    open.put(rule, signals.size());
                    signals.add(new RunSignal(rule, Math.max(0, index - rule.span() + 1), index));
                } else {
                    signals.set(place, new RunSignal(rule, signals.get(place).firstIndex(), index));
                }
            }
        }
        return List.copyOf(signals);
    }

    /** Returns the signal in a whole sentence that counts readings from 1. */
    public String sentence() {
        return TEXTS.text(
                firstIndex == lastIndex ? "signal.one" : "signal.many",
                Integer.toString(firstIndex + 1),
                rule.pattern(),
                rule.meaning(),
                Integer.toString(lastIndex + 1));
    }
}

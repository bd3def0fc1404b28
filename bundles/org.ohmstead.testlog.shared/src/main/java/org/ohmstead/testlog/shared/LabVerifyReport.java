// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.ohmstead.testlog.ClockStep;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;

/**
 * What a check of the whole shared log found.
 *
 * @param guards what is wrong with what protects the tables; empty when nothing is
 * @param chains one for each chain, in the order of their labels
 */
public record LabVerifyReport(List<VerifyFault> guards, List<Part> chains) {
    /**
     * What a check of a chain found.
     *
     * @param chain what was checked
     * @param report what came of it
     */
    public record Part(LabChain chain, VerifyReport report) {
        public Part {
            Objects.requireNonNull(chain, "chain");
            Objects.requireNonNull(report, "report");
        }
    }

    public LabVerifyReport {
        guards = List.copyOf(guards);
        chains = List.copyOf(chains);
    }

    /** Returns whether no fault was found. */
    public boolean intact() {
        return faults().isEmpty();
    }

    /** Returns all faults: first those of the guards, then those of the chains in their order, the first bad entry of each first. */
    public List<VerifyFault> faults() {
        return Stream.concat(guards.stream(), chains.stream().flatMap(part -> part.report().faults().stream()))
                .toList();
    }

    /** Returns at how many places of all chains time runs backwards, which is no fault. */
    public long clockStepCount() {
        return chains.stream().mapToLong(part -> part.report().clockStepCount()).sum();
    }

    /**
     * Returns some of these places, chain by chain. Of many, each chain has its share, so that a bench whose clock is set back all the
     * time does not hide that of another one.
     *
     * @param most how many at most; no more than {@link VerifyReport#MOST_CLOCK_STEPS} are known of a chain
     */
    public List<ClockStep> clockSteps(int most) {
        List<List<ClockStep>> known =
                chains.stream().map(part -> part.report().clockSteps()).toList();
        int rounds = 0;
        while (rounds < most && shared(known, rounds + 1) <= most) {
            rounds++;
        }
        int left = most - shared(known, rounds);
        List<ClockStep> told = new ArrayList<>();
        for (List<ClockStep> steps : known) {
            int share = Math.min(rounds, steps.size());
            if (left > 0 && share < steps.size()) {
                share++;
                left--;
            }
            told.addAll(steps.subList(0, share));
        }
        return told;
    }

    private static int shared(List<List<ClockStep>> known, int rounds) {
        return known.stream().mapToInt(steps -> Math.min(rounds, steps.size())).sum();
    }

    /** Returns the number of entries that were checked. */
    public long entriesChecked() {
        return chains.stream().mapToLong(part -> part.report().entriesChecked()).sum();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
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

    /** Returns the number of entries that were checked. */
    public long entriesChecked() {
        return chains.stream().mapToLong(part -> part.report().entriesChecked()).sum();
    }
}

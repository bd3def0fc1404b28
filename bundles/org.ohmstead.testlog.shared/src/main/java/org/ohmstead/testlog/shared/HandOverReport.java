// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.List;
import java.util.Objects;
import org.ohmstead.units.text.Messages;

/**
 * What came of a hand-over.
 *
 * @param chains one for each chain of the bench's log that has entries
 */
public record HandOverReport(List<Part> chains) {
    private static final Messages TEXTS = Messages.of(HandOverReport.class);
    /**
     * What came of the hand-over of one chain.
     *
     * @param chain hash of its first entry in the bench's log
     * @param label its label in the bench's log; empty for the log's own
     * @param sharedChain id of the chain of the shared log that holds its last entry
     * @param handedOver number of entries that were handed over now
     * @param alreadyThere number of entries that were there already
     * @param sentence what was done, in whole sentences
     */
    public record Part(
            String chain, String label, String sharedChain, long handedOver, long alreadyThere, String sentence) {
        public Part {
            Objects.requireNonNull(chain, "chain");
            Objects.requireNonNull(label, "label");
            Objects.requireNonNull(sharedChain, "sharedChain");
            Objects.requireNonNull(sentence, "sentence");
        }
    }

    public HandOverReport {
        chains = List.copyOf(chains);
    }

    /** Returns the number of entries that were handed over now. */
    public long handedOver() {
        return chains.stream().mapToLong(Part::handedOver).sum();
    }

    /** Returns the number of entries that were there already. */
    public long alreadyThere() {
        return chains.stream().mapToLong(Part::alreadyThere).sum();
    }

    /** Returns what was done, in whole sentences. */
    public String sentence() {
        return chains.isEmpty()
                ? TEXTS.text("handed.none")
                : String.join(" ", chains.stream().map(Part::sentence).toList());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.ohmstead.model.Range;

/** Ranges in JSON documents: an array of the lower and the upper end. */
final class Ranges {
    private Ranges() {}

    static void put(ObjectNode node, String name, Range range) {
        node.putArray(name).add(range.low()).add(range.high());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

/**
 * An order that must be kept.
 *
 * @param earlier number of the job that has to be done some time before the other, from 0
 * @param later number of the other
 */
public record Before(int earlier, int later) {
    public Before {
        Require.index(earlier, Integer.MAX_VALUE, "earlier");
        Require.index(later, Integer.MAX_VALUE, "later");
        if (earlier == later) {
            throw new IllegalArgumentException("earlier and later are both " + later + "; a job cannot precede itself");
        }
    }
}

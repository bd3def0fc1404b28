// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.List;

/** Tells how the power of a load falls on its resistors. A service, so that who asks need not know how networks are written. */
public interface PartSharing {
    /**
     * Returns the resistors of one branch of a load from left to right with their shares; empty when it has no network, or one that cannot
     * be read.
     *
     * @param stock the parts of the bench
     * @param branch which
     */
    List<PartShare> shares(List<Part> stock, LoadBranch branch);
}

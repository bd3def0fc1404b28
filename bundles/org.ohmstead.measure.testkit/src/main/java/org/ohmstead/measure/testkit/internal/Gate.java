// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

/** What every call of a measurement to its bench, and every checkpoint, goes through. */
public interface Gate {
    void pass() throws InterruptedException;
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

/** What a listener gets when it is added; closing it takes the listener away, a second closing does nothing. */
@FunctionalInterface
public interface Registration extends AutoCloseable {
    @Override
    void close();
}

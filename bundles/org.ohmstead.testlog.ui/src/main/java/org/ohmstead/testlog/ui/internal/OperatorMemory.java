// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

/** Remembers who works at the bench, so that the name is typed once. */
interface OperatorMemory {
    /** Returns the name that was used last; may be empty. */
    String name();

    /** Keeps the name for the next time. */
    void keep(String name);

    /** Returns a memory that lasts as long as the view. */
    static OperatorMemory ofTheView() {
        return new OperatorMemory() {
            private String kept = "";

            @Override
            public String name() {
                return kept;
            }

            @Override
            public void keep(String name) {
                kept = name;
            }
        };
    }
}

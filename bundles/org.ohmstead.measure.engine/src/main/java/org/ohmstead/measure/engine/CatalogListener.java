// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

/** Hears of changes in the catalog, on the thread that made them; returns at once. */
@FunctionalInterface
public interface CatalogListener {
    /** Hears how the catalog is now. */
    void changed(CatalogView view);
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

/** One part of the picture between the axes. */
@FunctionalInterface
interface Layer {
    void draw(Stage stage);
}

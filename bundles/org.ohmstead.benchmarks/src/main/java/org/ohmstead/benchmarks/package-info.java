// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/** Measures the product beside references that do the same work; never shipped. */
package org.ohmstead.benchmarks;

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

/**
 * A label and what belongs to it.
 *
 * @param label what it is
 * @param value its text
 */
public record Item(String label, String value) {}

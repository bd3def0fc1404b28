// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.ohmstead.model.Severity;

/**
 * Something that the console says.
 *
 * @param severity how much it matters
 * @param sentence whole sentences
 */
record Message(Severity severity, String sentence) {}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import org.ohmstead.model.Severity;

/**
 * Something to be said about a cell: an icon in it and a sentence while the mouse rests on it.
 *
 * @param severity which icon
 * @param sentence what is the matter and what to do
 */
public record Mark(Severity severity, String sentence) {}

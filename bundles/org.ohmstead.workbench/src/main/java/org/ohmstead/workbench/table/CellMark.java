// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

/**
 * A mark from outside the table, such as from the checks of the whole project.
 *
 * @param rowIndex the row in the original order, from 0
 * @param columnId the column; one that the table does not have stands for the first
 * @param mark what is said
 */
public record CellMark(int rowIndex, String columnId, Mark mark) {}

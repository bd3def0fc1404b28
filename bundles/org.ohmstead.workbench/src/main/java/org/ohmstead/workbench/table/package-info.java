// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * A table of immutable records that is edited in place, by keyboard and from the clipboard. It reports each change with a name; undoing is
 * its owner's work.
 *
 * <pre>{@code
 * TableSpec<Rating> spec = TableSpec.of("ratings", "rating", "ratings", List.of(
 *                 Columns.requiredText("id", "Name", Rating::id, Rating::withId),
 *                 Columns.quantity("load", "Load", Measure.of(Unit.OHM), Rating::loadOhms, Rating::withLoadOhms)))
 *         .withNewRow(rows -> new Rating(...));
 * EditTable<Rating> table = new EditTable<>(parent, spec);
 * table.onChange((name, rows) -> session.edit(name, project -> withRatings(project, rows)));
 * table.setRows(project.amplifier().ratings());
 * }</pre>
 */
package org.ohmstead.workbench.table;

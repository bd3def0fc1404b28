// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The project that the workbench has open, without a user interface: a session with named edits, undo and redo; a desk that opens and
 * closes it, watches its files, keeps unsaved edits safe from a crash, reads its test log and finds its problems in the background; and
 * the listeners that views are. Everything is used on the user interface's thread unless it says otherwise.
 *
 * <pre>{@code
 * ProjectDesk desk = new ProjectDesk(work, Clock.systemDefaultZone());
 * Registration registration = desk.listen(new DeskListener() {
 *     public void projectChanged(Project before, Project after) {
 *         show(after);
 *     }
 * });
 * desk.startWatching();
 * desk.open(folder, Unsaved.REFUSE, session -> session.edit("Clear plan", p -> p.withPlan(List.of())), this::tell);
 * }</pre>
 */
package org.ohmstead.workbench.session;

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

/**
 * The workbench around the open project: its commands, its preferences, and how to show a place of the project. A part gets at the
 * open project by the desk:
 *
 * <pre>{@code
 * ProjectDesk desk = getSite().getService(ProjectDesk.class);
 * desk.session().ifPresent(session -> session.edit("Set place", project -> ...));
 * }</pre>
 */
package org.ohmstead.workbench;

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

/** What comes of a task: a schedule, or why there is none. */
public sealed interface ScheduleAnswer permits Schedule, Impossible {}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.nio.file.Path;
import java.util.List;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;

/** Makes out of a project what it takes to carry its plan out. */
interface Plans {
    /** Returns each step with the measurement that suits it. */
    List<PlanItem> items(Project project);

    /** Returns a plan that is ready to be carried out. */
    PlanSetup setup(Project project, String projectRevision, Path projectFolder, List<PlanItem> items, String operator);

    /** Returns how long the amplifier is to rest before each item. */
    Rests rests(Project project, List<LogEntry> entries);
}

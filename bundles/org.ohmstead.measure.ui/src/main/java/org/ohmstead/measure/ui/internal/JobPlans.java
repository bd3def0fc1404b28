// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.nio.file.Path;
import java.util.List;
import org.ohmstead.jobs.PlanRuns;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;

/** Plans as the command line carries them out too. */
record JobPlans(PartSharing sharing) implements Plans {
    @Override
    public List<PlanItem> items(Project project) {
        return PlanRuns.items(project);
    }

    @Override
    public PlanSetup setup(
            Project project, String projectRevision, Path projectFolder, List<PlanItem> items, String operator) {
        return PlanRuns.setup(project, projectRevision, projectFolder, items, operator);
    }

    @Override
    public Rests rests(Project project, List<LogEntry> entries) {
        return PlanRuns.rests(project, sharing, entries);
    }
}

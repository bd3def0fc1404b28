// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.core.runtime.ServiceCaller;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.jobs.JobProgress;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.ReplayJob;
import org.ohmstead.jobs.ReplayOutcome;
import org.ohmstead.model.PartSharing;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.WorkProgress;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.Version;

/** Carries out the open project's plan from recordings; each reading is in the log as soon as it is made. */
final class Replaying {
    private static final Messages TEXTS = Messages.of(Replaying.class);

    private Replaying() {}

    static void start(ProjectDesk desk, Path recordingsFolder) {
        ProjectSession session = desk.session().orElseThrow();
        if (session.dirty()) {
            // Readings name the revision of the project that they were made with, which must be on the disk.
            desk.save(() -> replay(desk, session, recordingsFolder), Replaying::failed);
        } else {
            replay(desk, session, recordingsFolder);
        }
    }

    private static void replay(ProjectDesk desk, ProjectSession session, Path recordingsFolder) {
        desk.work()
                .start(
                        TEXTS.text("replay.job"),
                        progress -> {
                            ProjectFolder folder = ProjectFolder.open(session.folder());
                            ServiceCaller<PartSharing> sharing =
                                    new ServiceCaller<>(Replaying.class, PartSharing.class);
                            try {
                                return new ReplayJob(folder, version())
                                        .withLockHeld()
                                        .withSharing((stock, branch) -> sharing.current()
                                                .map(known -> known.shares(stock, branch))
                                                .orElse(List.of()))
                                        .run(recordingsFolder, false, new Steps(progress, desk));
                            } finally {
                                sharing.unget();
                            }
                        },
                        outcome -> told(desk, outcome),
                        Replaying::failed);
    }

    private static void told(ProjectDesk desk, ReplayOutcome outcome) {
        desk.refreshLog();
        if (!outcome.failures().isEmpty()) {
            MessageDialog.openWarning(
                    ProjectOpening.shell(PlatformUI.getWorkbench()),
                    TEXTS.text("replay.some"),
                    String.join("\n\n", outcome.failures()));
        }
    }

    private static void failed(Exception failure) {
        MessageDialog.openError(
                ProjectOpening.shell(PlatformUI.getWorkbench()), TEXTS.text("replay.failed"), failure.getMessage());
    }

    /** Returns the version that stands in each reading. */
    static String version() {
        Version version = FrameworkUtil.getBundle(Replaying.class).getVersion();
        return version.getMajor() + "." + version.getMinor() + "." + version.getMicro();
    }

    /** Shows the steps in the Progress view and each new reading in the views. */
    private record Steps(WorkProgress progress, ProjectDesk desk) implements JobProgress {
        @Override
        public void step(int done, int total, String what) {
            progress.step(done, total, what);
            desk.work().later(desk::refreshLog);
        }

        @Override
        public boolean cancelled() {
            return progress.cancelled();
        }
    }
}

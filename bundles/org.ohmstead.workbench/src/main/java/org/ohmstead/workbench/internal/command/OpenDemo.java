// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.core.runtime.Platform;
import org.eclipse.core.runtime.URIUtil;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.service.datalocation.Location;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.jobs.DemoData;
import org.ohmstead.jobs.DemoProject;
import org.ohmstead.jobs.JobException;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProjectDesk;

/** Makes the demo project when it is not there yet, opens it, and replays its recordings. */
public final class OpenDemo extends DeskHandler {
    private static final Messages TEXTS = Messages.of(OpenDemo.class);
    private static final String OUTPUT = "OHMSTEAD_DEMO_OUTPUT";

    /** The demo's project and where its recordings lie. */
    private record Prepared(Path project, Path recordings) {}

    @Override
    boolean applies(ProjectDesk desk) {
        return true;
    }

    @Override
    void run(ProjectDesk desk) {
        desk.work()
                .start(
                        TEXTS.text("demo.job"),
                        progress -> prepare(target()),
                        prepared -> ProjectOpening.open(PlatformUI.getWorkbench(), prepared.project(), session -> {
                            if (!session.readOnly()) {
                                Replaying.start(desk, prepared.recordings());
                            }
                        }),
                        failure -> MessageDialog.openError(
                                ProjectOpening.shell(PlatformUI.getWorkbench()),
                                TEXTS.text("demo.failed"),
                                failure.getMessage()));
    }

    private static Prepared prepare(Path target) throws JobException, IOException {
        DemoData data = DemoData.find(DemoData.places(installation()));
        Path project = target.resolve(DemoProject.NAME);
        // What somebody tried out in the demo stays; the steps that are in its log already are left out.
        if (!Files.isRegularFile(project.resolve(ProjectFile.FILE_NAME))) {
            project = DemoProject.freshCopy(data, target);
        }
        return new Prepared(project, data.recordingsFolder());
    }

    private static Path target() throws IOException {
        String named = System.getenv().getOrDefault(OUTPUT, System.getProperty("ohmstead.demo.output", ""));
        return named.isBlank()
                ? folder(Platform.getInstanceLocation())
                        .orElseThrow(() -> new IOException(TEXTS.text("demo.noFolder", OUTPUT)))
                        .resolve("demo")
                : Path.of(named).toAbsolutePath();
    }

    private static Optional<Path> installation() throws IOException {
        return folder(Platform.getInstallLocation());
    }

    private static Optional<Path> folder(Location location) throws IOException {
        if (location == null || location.getURL() == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(Path.of(URIUtil.toURI(location.getURL())));
        } catch (URISyntaxException e) {
            throw new IOException(TEXTS.text("demo.badFolder", location.getURL()), e);
        }
    }
}

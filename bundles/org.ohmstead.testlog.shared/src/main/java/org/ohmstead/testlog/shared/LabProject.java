// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.SharedLog;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/**
 * A project that names a shared log: where that lies, and what is said of this project's chains in it.
 *
 * @param settings as in the project
 * @param folder of the project
 * @param title of the project
 * @param amplifier that is tested
 */
public record LabProject(SharedLog settings, Path folder, String title, String amplifier) {
    public LabProject {
        Objects.requireNonNull(settings, "settings");
        Objects.requireNonNull(folder, "folder");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(amplifier, "amplifier");
    }

    /** Returns what a project says; empty when it names no shared log. */
    public static Optional<LabProject> of(Project project, Path folder) {
        return project.sharedLog()
                .map(settings -> new LabProject(
                        settings, folder, project.title(), project.amplifier().fullName()));
    }

    /** Returns where the shared log lies. */
    public LabAddress address() throws SharedLabException {
        return LabAddress.of(settings, folder);
    }

    /** Connects, with the credentials of the environment or a password file. */
    public SharedLab connect() throws SharedLabException {
        LabAddress address = address();
        return SharedLab.connect(address, LabCredentials.find(address));
    }

    /** Returns what is said of chains that this project begins. */
    public ChainOrigin origin() {
        return new ChainOrigin(settings.bench(), title, amplifier);
    }

    /**
     * Hands over what is new in the project's log, over a connection of its own. A project without a log has nothing new.
     *
     * @param credentials with which to connect
     */
    public HandOverReport handOver(LabCredentials credentials) throws SharedLabException, TestLogException {
        Path file = folder.resolve(TestLog.FILE_NAME);
        if (!Files.exists(file)) {
            return new HandOverReport(List.of());
        }
        try (TestLog log = TestLog.openReadOnly(file);
                SharedLab lab = SharedLab.connect(address(), credentials)) {
            return new HandOver(lab, origin()).run(log.rows());
        }
    }
}

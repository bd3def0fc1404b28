// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.shared.HandOver;
import org.ohmstead.testlog.shared.LabChain;
import org.ohmstead.testlog.shared.LabProject;
import org.ohmstead.testlog.shared.SharedLab;
import org.ohmstead.testlog.shared.SharedLabException;

/** What the words about the shared log have in common. */
final class LabAccess {
    private LabAccess() {}

    /** Returns what a project says about the shared log. */
    static LabProject of(ProjectFolder folder) throws InputException {
        return LabProject.of(folder.project(), folder.folder())
                .orElseThrow(() -> new InputException(Texts.of("lab.none", folder.folder())));
    }

    /** Returns how many entries of a project's own log the shared log does not have yet. */
    static long waiting(ProjectFolder folder, LabProject project, SharedLab lab)
            throws SharedLabException, TestLogException {
        if (!Files.exists(folder.logFile())) {
            return 0;
        }
        try (TestLog log = TestLog.openReadOnly(folder.logFile())) {
            return new HandOver(lab, project.origin()).waiting(log.rows());
        }
    }

    /** Returns the chain that a label or the beginning of a hash stands for. */
    static ChainInfo chain(SharedLab lab, String name) throws SharedLabException, InputException {
        String wanted = name.strip();
        Optional<ChainInfo> found = lab.chains().stream()
                .map(LabChain::info)
                .filter(info -> info.label().equals(wanted.toUpperCase(Locale.ROOT))
                        || wanted.length() >= 8 && info.chain().startsWith(wanted.toLowerCase(Locale.ROOT)))
                .findFirst();
        return found.orElseThrow(() -> new InputException(Texts.of("lab.noChain", wanted)));
    }

    /** Returns the exit code that a failure stands for. */
    static int exitCode(SharedLabException failure) {
        return switch (failure.reason()) {
            case SETTINGS, CREDENTIALS, LOCAL_LOG, CLOSED, REFUSED -> ExitCodes.BAD_INPUT;
            case WRONG_PASSWORD, UNREACHABLE, NOT_TRUSTED, NO_DATABASE, NO_RIGHT, OTHER_VERSION, BUSY ->
                ExitCodes.OUTSIDE_FAILURE;
        };
    }
}

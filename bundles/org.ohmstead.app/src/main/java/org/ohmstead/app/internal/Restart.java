// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.core.runtime.ILog;

/**
 * Starting anew. There is no native launcher that would do it. On Linux and macOS the start script has become this process and is no
 * longer there: it is started once more and waits until this process has ended, whose folder of state it takes over. On Windows the
 * script waits for this process and starts it again when it ends with the framework's exit code for that.
 */
final class Restart {
    /** The system property by which a start script that has to be called again says where it is. */
    static final String SCRIPT = "ohmstead.start";

    private Restart() {}

    /**
     * Calls the start script again with the words of this start.
     *
     * @return whether it was called; if not, whoever started this process has to
     */
    static boolean called(String... arguments) {
        Optional<List<String>> command =
                command(System.getProperty(SCRIPT), ProcessHandle.current().pid(), arguments);
        if (command.isEmpty()) {
            return false;
        }
        try {
            new ProcessBuilder(command.get()).inheritIO().start();
            return true;
        } catch (IOException e) {
            ILog.of(Restart.class).error("Ohmstead could not be started anew.", e);
            return false;
        }
    }

    /** Returns what calls a script again once a process has ended; empty without a script. */
    static Optional<List<String>> command(String script, long process, String... arguments) {
        if (script == null || script.isBlank()) {
            return Optional.empty();
        }
        List<String> command = new ArrayList<>(List.of(script, "--after", Long.toString(process)));
        command.addAll(StartArguments.words(Stream.of(arguments)).toList());
        return Optional.of(command);
    }
}

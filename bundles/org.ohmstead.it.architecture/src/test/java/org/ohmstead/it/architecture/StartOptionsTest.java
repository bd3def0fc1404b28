// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What the start scripts ask of Java beside the application: what newer versions want to be told, and what is asked before installing. */
@EnabledOnOs(OS.LINUX)
class StartOptionsTest {
    private static final String[] TOOLS = {
        "cksum", "dirname", "find", "head", "locale", "mkdir", "mktemp", "mv", "readlink", "rm", "sed", "tr", "uname"
    };
    private static final List<String> FOR_NEWER_JAVA =
            List.of("--enable-native-access=ALL-UNNAMED", "-Djdk.console=java.base");
    private static final String ASK = "-Declipse.p2.unsignedPolicy=prompt";

    @TempDir
    private Path folder;

    private FakeMachine machine;
    private Path script;

    @BeforeEach
    void install() throws IOException {
        folder = folder.toRealPath();
        machine = new FakeMachine(folder, TOOLS);
        script = machine.install(folder.resolve("an installation"));
        machine.environment.put(
                "OHMSTEAD_STATE", Files.createDirectory(folder.resolve("state")).toString());
    }

    private List<String> options(String word) throws Exception {
        FakeMachine.Outcome outcome = machine.run(script, word);
        assertEquals(0, outcome.exitCode(), outcome.message());
        return outcome.arguments().subList(0, outcome.arguments().indexOf("-jar"));
    }

    @Test
    void newerJavasAreToldThatNativeCodeIsMeantAndOlderOnesAreNot() throws Exception {
        for (String word : new String[] {"demo", "x.ohmstead"}) {
            List<String> older = options(word);
            assertTrue(FOR_NEWER_JAVA.stream().noneMatch(older::contains), older.toString());
        }
        machine.environment.put(
                "JAVA_HOME", machine.javaHome("java-new", "25.0.1").toString());
        for (String word : new String[] {"demo", "x.ohmstead"}) {
            List<String> newer = options(word);
            assertTrue(newer.containsAll(FOR_NEWER_JAVA), newer.toString());
        }
    }

    @Test
    void whatNobodySignedIsAskedAboutBeforeItIsInstalled() throws Exception {
        assertTrue(options("x.ohmstead").contains(ASK));
        String windows = Files.readString(FakeMachine.START.resolve("windows/ohmstead.bat"));
        assertTrue(windows.contains(ASK), "the start script of Windows does not ask");
        FOR_NEWER_JAVA.forEach(option -> assertTrue(windows.contains(option), option));
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What product/ohmstead does in a checkout: which product it builds and starts on which machine, and what it leaves to the product's
 * start script. In the place of Maven stands a script that makes the product it is told to.
 */
@EnabledOnOs(OS.LINUX)
class LauncherTest {
    /** The place of the product of the machine that the tests begin with. */
    private static final String MAC = "macosx/cocoa/aarch64/Ohmstead.app/Contents/Eclipse";

    private static final String[] TOOLS = {
        "dirname", "find", "grep", "head", "id", "locale", "mkdir", "mktemp", "mv", "readlink", "rm", "sed", "uname"
    };

    @TempDir
    private Path folder;

    private FakeMachine machine;
    private Path products;
    private Path launcher;

    @BeforeEach
    void checkOut() throws IOException {
        folder = folder.toRealPath();
        machine = new FakeMachine(folder, TOOLS);
        // A machine on which no package of Debian is asked for, unless a test says otherwise.
        machine.isA("Darwin", "arm64");
        Path product = Files.createDirectories(folder.resolve("a checkout/product"));
        for (String other : List.of("bundles", "features", ".mvn")) {
            Files.createDirectory(product.resolveSibling(other));
        }
        Files.createFile(product.resolveSibling("pom.xml"));
        launcher = machine.copyBlind(Bundles.root().resolve("product/ohmstead"), product.resolve("ohmstead"));
        products = product.resolve("target/products/ohmstead");
    }

    /** Has Maven make the product of a system. */
    private void mavenMakes(String system) throws IOException {
        Path ready = folder.resolve("ready made");
        machine.install(ready);
        Path made = products.resolve(system);
        machine.program(
                "mvn",
                """
                if [ "$1" = -v ]; then echo 'Apache Maven 3.9.16 (none)'; exit 0; fi
                echo "$@" >>'%s'
                mkdir -p '%s'
                mv '%s' '%s'"""
                        .formatted(folder.resolve("maven"), made.getParent(), ready, made));
    }

    @ParameterizedTest
    @CsvSource({
        "Linux, x86_64, linux/gtk/x86_64",
        "Linux, aarch64, linux/gtk/aarch64",
        "Darwin, x86_64, macosx/cocoa/x86_64/Ohmstead.app/Contents/Eclipse",
        "Darwin, arm64, macosx/cocoa/aarch64/Ohmstead.app/Contents/Eclipse"
    })
    void knowsWhereTheProductOfTheMachineLies(String system, String processor, String place) throws Exception {
        machine.isA(system, processor);
        FakeMachine.Outcome outcome = machine.run(launcher, "--product-folder");
        assertEquals(0, outcome.exitCode(), outcome.message());
        assertEquals(List.of(products.resolve(place).toString()), outcome.arguments());
    }

    @Test
    void buildsOnceAndStartsTheProductOfTheMachine() throws Exception {
        mavenMakes(MAC);
        for (int time = 0; time < 2; time++) {
            FakeMachine.Outcome outcome = machine.run(launcher, "validate", "x y.ohmstead");
            assertEquals(0, outcome.exitCode(), outcome.message());
            assertEquals(List.of("=validate", "=x y.ohmstead"), outcome.words());
            assertTrue(
                    outcome.after("-jar")
                            .startsWith(products.resolve(MAC).resolve("plugins").toString()),
                    outcome.after("-jar"));
        }
        assertEquals(1, Files.readAllLines(folder.resolve("maven")).size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"src/main/java/X.java", "META-INF/MANIFEST.MF", "start/unix/ohmstead"})
    void buildsAgainWhenASourceIsNewer(String name) throws Exception {
        mavenMakes(MAC);
        machine.run(launcher, "demo");
        Path source = folder.resolve("a checkout/features/one").resolve(name);
        Files.createDirectories(source.getParent());
        Files.createFile(source);
        // A minute ahead, so that it is newer whatever the file system's resolution.
        Files.setLastModifiedTime(source, FileTime.from(Instant.now().plusSeconds(60)));
        machine.program("mvn", "if [ \"$1\" = -v ]; then echo 'Apache Maven 3.9.16 (none)'; else exit 1; fi");
        FakeMachine.Outcome outcome = machine.run(launcher, "demo");
        assertEquals(4, outcome.exitCode());
        assertTrue(outcome.message().contains("the build failed"), outcome.message());
    }

    @Test
    void takesNoProductOfAnotherMachine() throws Exception {
        machine.install(products.resolve("linux/gtk/x86_64"));
        mavenMakes("linux/gtk/aarch64");
        FakeMachine.Outcome outcome = machine.run(launcher, "demo");
        assertEquals(4, outcome.exitCode());
        assertEquals(List.of(), outcome.arguments(), "Java was started");
        assertTrue(outcome.message().contains("no product for this machine (Darwin, arm64)"), outcome.message());
    }

    @Test
    void theStartScriptDecidesWhichWordsOpenTheWorkbench() throws Exception {
        mavenMakes(MAC);
        FakeMachine.Outcome word = machine.run(launcher, "demo");
        Path demo = folder.resolve("a checkout/product/target/demo");
        assertTrue(word.saw("OHMSTEAD_DEMO_OUTPUT=" + demo), word.message());
        // Another start script, which opens the workbench for one word that the real one does not open it for.
        FakeMachine.executable(
                products.resolve(MAC).resolve("ohmstead"),
                """
                #!/bin/sh
                if [ "$1" = --opens-workbench ]; then [ "$2" = demo ]; exit; fi
                exec "$JAVA_HOME/bin/java" "$@"
                """);
        FakeMachine.Outcome workbench = machine.run(launcher, "demo");
        assertEquals(List.of("demo"), workbench.arguments());
        assertTrue(workbench.saw("OHMSTEAD_DEMO_OUTPUT="), workbench.message());
        assertFalse(workbench.message().contains("--opens-workbench"), workbench.message());
        assertTrue(machine.run(launcher).saw("OHMSTEAD_DEMO_OUTPUT=" + demo));
    }
}

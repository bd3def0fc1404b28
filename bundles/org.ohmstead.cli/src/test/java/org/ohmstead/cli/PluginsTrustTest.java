// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.jobs.ModuleFile;
import org.ohmstead.jobs.TrustedModules;
import org.ohmstead.units.text.Language;
import picocli.CommandLine;

class PluginsTrustTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    Path folder;

    private Path jar;

    @BeforeEach
    void makeModule() throws IOException {
        Manifest manifest = new Manifest();
        Attributes headers = manifest.getMainAttributes();
        headers.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        headers.putValue("Bundle-SymbolicName", "org.example.plain");
        headers.putValue("Bundle-Version", "1.2.3");
        jar = folder.resolve("plain.jar");
        new JarOutputStream(Files.newOutputStream(jar), manifest).close();
    }

    private int run(String typed, boolean terminal, String... words) {
        out.reset();
        err.reset();
        Console console = new Console(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                new ConsoleInput(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)), terminal));
        CommandLine command = new CommandLine(new PluginsTrustCommand(console, folder.resolve("state")));
        command.registerConverter(Path.class, Path::of);
        command.setExecutionExceptionHandler((failure, line, parsed) -> {
            console.message(failure.getMessage());
            return ExitCodes.BAD_INPUT;
        });
        return command.execute(words);
    }

    private boolean trusted() throws IOException {
        return new TrustedModules(folder.resolve("state")).trusts(ModuleFile.read(jar));
    }

    private String said() {
        return out.toString(StandardCharsets.UTF_8) + err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void aPersonSeesNameHashAndSignerAndSaysYes() throws IOException {
        assertEquals(ExitCodes.FELL_SHORT, run("perhaps\n", true, jar.toString()));
        assertFalse(trusted());
        assertEquals(ExitCodes.DONE, run("yes\n", true, jar.toString()), said());
        for (String seen : new String[] {
            "org.example.plain 1.2.3", ModuleFile.read(jar).sha256(), "Signature: not signed", "all your rights"
        }) {
            assertTrue(said().contains(seen), said());
        }
        assertTrue(trusted());
        assertEquals(ExitCodes.DONE, run("", true, jar.toString()));
        assertTrue(said().contains("said yes to it before"), said());
    }

    @Test
    void withoutAPersonOnlyTheExpectedHashLetsItRun() throws IOException {
        assertEquals(ExitCodes.WRONG_USAGE, run("yes\n", false, jar.toString()));
        assertTrue(said().contains("--sha256"), said());
        assertFalse(trusted());
        String other = "0".repeat(64);
        assertEquals(ExitCodes.BAD_INPUT, run("", false, jar.toString(), "--sha256", other));
        assertTrue(said().contains(other) && said().contains("not the file that was meant"), said());
        assertFalse(trusted());
        String hash = ModuleFile.read(jar).sha256();
        assertEquals(
                ExitCodes.DONE, run("", false, jar.toString(), "--json", "--sha256", hash.toUpperCase(Locale.ROOT)));
        assertTrue(said().contains("\"signature\" : \"none\"") && said().contains(hash), said());
        assertTrue(trusted());
    }

    @Test
    void whatIsNoModuleIsRefusedAndGermansAreAskedInGerman() throws IOException {
        Path text = Files.writeString(folder.resolve("text.jar"), "not a jar");
        assertEquals(ExitCodes.BAD_INPUT, run("yes\n", true, text.toString()));
        assertEquals(ExitCodes.DONE, Language.speaking(Locale.GERMAN, () -> run("ja\n", true, jar.toString())));
        assertTrue(said().contains("Signatur: nicht signiert"), said());
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ModuleFile;
import org.ohmstead.jobs.TrustedModules;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what a module is and who signed it, and lets it run from then on. */
@Command(
        name = "trust",
        description = {"${bundle:plugins.trust.does}", "", "${bundle:plugins.trust.more}", ""},
        footer = {"", "${bundle:plugins.trust.exit}", "${bundle:plugins.trust.example}"})
final class PluginsTrustCommand implements Callable<Integer> {
    private final Console console;
    private final Path stateFolder;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(index = "0", paramLabel = "FILE", descriptionKey = "plugins.trust.FILE")
    private Path file;

    @Option(names = "--sha256", paramLabel = "HASH", descriptionKey = "plugins.trust.sha256")
    private String expected;

    /**
     * Makes the word.
     *
     * @param console where it says what the module is
     * @param stateFolder where a yes is kept
     */
    PluginsTrustCommand(Console console, Path stateFolder) {
        this.console = console;
        this.stateFolder = stateFolder;
    }

    @Override
    public Integer call() throws Exception {
        ModuleFile module = read();
        TrustedModules trusted = new TrustedModules(stateFolder);
        boolean already = trusted.trusts(module);
        if (!json.wanted()) {
            module.description().lines().forEach(console::line);
        }
        requireFit(module);
        if (!already && !confirmed()) {
            return canAsk() ? ExitCodes.FELL_SHORT : ExitCodes.WRONG_USAGE;
        }
        trusted.trust(module);
        if (json.wanted()) {
            console.json(JsonNodeFactory.instance
                    .objectNode()
                    .put("name", module.symbolicName())
                    .put("version", module.version())
                    .put("sha256", module.sha256())
                    .put("signature", module.signature().kind().name().toLowerCase(Locale.ROOT))
                    .put("signer", module.signature().signer())
                    .put("trusted", true));
        } else {
            console.line(Texts.of(already ? "trust.already" : "trust.done"));
        }
        return ExitCodes.DONE;
    }

    private ModuleFile read() throws InputException {
        try {
            return ModuleFile.read(file);
        } catch (IOException unreadable) {
            throw new InputException(Texts.of("trust.unreadable", file, unreadable.getMessage()));
        }
    }

    private void requireFit(ModuleFile module) throws InputException {
        if (!module.refusal().isEmpty()) {
            throw new InputException(Texts.of("trust.refused", file, module.refusal()));
        }
        if (expected != null && !expected.strip().toLowerCase(Locale.ROOT).equals(module.sha256())) {
            throw new InputException(Texts.of("trust.otherHash", file, module.sha256(), expected.strip()));
        }
    }

    /** A program that wants JSON reads no description, so that a yes to it would be one to anything. */
    private boolean canAsk() {
        return console.hasPerson() && !json.wanted();
    }

    private boolean confirmed() throws InterruptedException {
        if (expected != null) {
            return true;
        }
        if (!canAsk()) {
            console.message(Texts.of("trust.nobody"));
            return false;
        }
        String yes = Texts.of("trust.yes");
        return console.ask(Texts.of("trust.ask", yes))
                .filter(yes::equalsIgnoreCase)
                .isPresent();
    }
}

// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.PackLimits;
import org.ohmstead.exchange.PackManifest;
import org.ohmstead.exchange.ProjectPack;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Unpacks a project. */
@Command(
        name = "unpack",
        description = {"${bundle:project.unpack.does}", ""},
        footer = {"", "${bundle:project.unpack.example}"})
final class ProjectUnpackCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(index = "0", paramLabel = "FILE", descriptionKey = "project.unpack.FILE")
    private Path file;

    @Parameters(index = "1", paramLabel = "FOLDER", descriptionKey = "project.unpack.FOLDER")
    private Path folder;

    ProjectUnpackCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        PackManifest manifest = ProjectPack.unpack(file, folder, PackLimits.USUAL, new ConsoleExchange(console));
        if (json.wanted()) {
            console.json(JsonNodeFactory.instance
                    .objectNode()
                    .put("folder", folder.toString())
                    .put("title", manifest.title())
                    .put("headHash", manifest.headHash())
                    .put("entries", manifest.entries())
                    .put("files", manifest.files().size()));
        } else {
            console.line(Texts.of(
                    "unpack.files",
                    manifest.title(),
                    manifest.files().size(),
                    manifest.entries(),
                    manifest.headHash()));
            console.line(Texts.of("unpack.whole", folder));
        }
        return ExitCodes.DONE;
    }
}

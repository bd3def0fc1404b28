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
        description = {
            "Take a packed project out into a new folder. Every name, size and hash in it is checked and its log verified before the"
                    + " folder is put in place; when anything is wrong, nothing is left behind.",
            ""
        },
        footer = {"", "Example: ohmstead project unpack kestrel.zip kestrel.ohmstead"})
final class ProjectUnpackCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(index = "0", paramLabel = "FILE", description = "The packed project.")
    private Path file;

    @Parameters(index = "1", paramLabel = "FOLDER", description = "The folder to be made; there must be none yet.")
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
            console.line(manifest.title() + ": " + manifest.files().size() + " files, " + manifest.entries()
                    + " entries of the log up to the head " + manifest.headHash());
            console.line("Every hash is right, and the log is whole. It lies in " + folder);
        }
        return ExitCodes.DONE;
    }
}

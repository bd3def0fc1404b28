// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.ProjectPack;
import org.ohmstead.jobs.ProjectFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Packs a project. */
@Command(
        name = "pack",
        description = {"${bundle:project.pack.does}", "", "${bundle:project.pack.more}", ""},
        footer = {"", "${bundle:project.pack.exit}", "${bundle:project.pack.example}"})
final class ProjectPackCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "FILE", descriptionKey = "project.pack.FILE")
    private Path file;

    ProjectPackCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        ProjectPack.Packed packed =
                ProjectPack.pack(folder.folder(), file, Ohmstead.version(), new ConsoleExchange(console));
        packed.leftOut().forEach(sentence -> console.message(Texts.of("pack.leftOut", sentence)));
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("file", packed.file().toString());
            root.put("sha256", packed.sha256());
            root.put("headHash", packed.manifest().headHash());
            root.put("entries", packed.manifest().entries());
            root.put("files", packed.manifest().files().size());
            ArrayNode leftOut = root.putArray("leftOut");
            packed.leftOut().forEach(leftOut::add);
            console.json(root);
        } else {
            console.line(Texts.of(
                    "pack.files",
                    packed.manifest().files().size(),
                    packed.manifest().entries(),
                    packed.manifest().headHash()));
            console.line(Texts.of("pack.file", packed.file()));
            console.line("sha256  " + packed.sha256());
        }
        return packed.leftOut().isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }
}

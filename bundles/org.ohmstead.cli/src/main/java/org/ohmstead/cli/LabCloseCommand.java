// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.concurrent.Callable;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Closes a chain of the shared log. */
@Command(
        name = "close",
        description = {"${bundle:lab.close.does}", ""},
        footer = {"", "${bundle:lab.close.example}"})
final class LabCloseCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "CHAIN", descriptionKey = "lab.close.CHAIN")
    private String name;

    @Option(names = "--reason", paramLabel = "TEXT", required = true, descriptionKey = "lab.close.reason")
    private String reason;

    @Option(names = "--reopen", descriptionKey = "lab.close.reopen")
    private boolean reopen;

    LabCloseCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ChainInfo chain;
        try (SharedLab lab = LabAccess.of(project.open()).connect()) {
            chain = LabAccess.chain(lab, name);
            if (reopen) {
                lab.reopen(chain.chain(), reason);
            } else {
                lab.close(chain.chain(), reason);
            }
        }
        if (json.wanted()) {
            console.json(JsonNodeFactory.instance
                    .objectNode()
                    .put("label", chain.label())
                    .put("chain", chain.chain())
                    .put("closed", !reopen));
        } else {
            console.line(Texts.of(reopen ? "lab.reopened" : "lab.closed", chain.label(), chain.name()));
        }
        return ExitCodes.DONE;
    }
}

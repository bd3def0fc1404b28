// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.shared.LabChain;
import org.ohmstead.testlog.shared.LabProject;
import org.ohmstead.testlog.shared.LabStatus;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Shows how the shared log stands. */
@Command(
        name = "status",
        description = {"${bundle:lab.status.does}", ""},
        footer = {"", "${bundle:lab.status.example}"})
final class LabStatusCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    LabStatusCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        LabProject named = LabAccess.of(folder);
        LabStatus status;
        List<LabChain> chains;
        long waiting;
        try (SharedLab lab = named.connect()) {
            status = lab.status();
            chains = lab.chains();
            waiting = LabAccess.waiting(folder, named, lab);
        }
        if (json.wanted()) {
            console.json(document(named, status, chains, waiting));
        } else {
            print(named, status, chains, waiting);
        }
        status.cautions().forEach(console::message);
        return ExitCodes.DONE;
    }

    private static ObjectNode document(LabProject named, LabStatus status, List<LabChain> chains, long waiting) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("host", named.settings().host())
                .put("port", named.settings().port())
                .put("database", named.settings().database())
                .put("bench", named.settings().bench())
                .put("server", status.server())
                .put("schemaVersion", status.schemaVersion())
                .put("role", status.role().word())
                .put("encryption", status.encryption())
                .put("entries", status.entries())
                .put("waiting", waiting);
        ArrayNode list = root.putArray("chains");
        for (LabChain chain : chains) {
            ObjectNode node = list.addObject();
            node.put("label", chain.info().label())
                    .put("chain", chain.info().chain())
                    .put("bench", chain.origin().bench())
                    .put("project", chain.origin().project())
                    .put("amplifier", chain.origin().amplifier())
                    .put("firstSequence", chain.info().firstSequence())
                    .put("entries", chain.info().entries())
                    .put("headHash", chain.info().headHash())
                    .put("parentHash", chain.parentHash())
                    .put("createdAt", chain.createdAt().toString())
                    .put("createdBy", chain.createdBy())
                    .put("closedBecause", chain.closedBecause().orElse(null));
        }
        ArrayNode cautions = root.putArray("cautions");
        status.cautions().forEach(cautions::add);
        return root;
    }

    private void print(LabProject named, LabStatus status, List<LabChain> chains, long waiting) {
        console.line(Texts.of(
                "labStatus.head",
                named.settings().host() + ":" + named.settings().port() + "/"
                        + named.settings().database(),
                status.server(),
                status.encryption().isEmpty() ? Texts.of("labStatus.notEncrypted") : status.encryption(),
                status.role().word()));
        TextTable table = TextTable.named("labStatus.columns");
        for (LabChain chain : chains) {
            table.row(
                    chain.info().label(),
                    chain.origin().bench(),
                    chain.origin().project(),
                    chain.origin().amplifier(),
                    Long.toString(chain.info().entries()),
                    chain.createdAt().toString(),
                    remark(chain));
        }
        table.print(console);
        console.line(waiting == 0 ? Texts.of("labStatus.all") : Texts.count("labStatus.waiting", waiting));
    }

    private static String remark(LabChain chain) {
        String parts =
                chain.forked() ? Texts.of("labStatus.forked", chain.info().firstSequence() - 1) : "";
        String closed = chain.closedBecause()
                .map(reason -> Texts.of("labStatus.closed", reason))
                .orElse("");
        return parts.isEmpty() || closed.isEmpty() ? parts + closed : parts + "; " + closed;
    }
}

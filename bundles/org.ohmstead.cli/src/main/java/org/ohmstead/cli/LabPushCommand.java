// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.shared.HandOver;
import org.ohmstead.testlog.shared.HandOverReport;
import org.ohmstead.testlog.shared.LabProject;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Hands over what is new. */
@Command(
        name = "push",
        description = {"${bundle:lab.push.does}", ""},
        footer = {"", "${bundle:lab.push.example}"})
final class LabPushCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    LabPushCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        LabProject named = LabAccess.of(folder);
        HandOverReport report;
        try (TestLog log = folder.readLog();
                SharedLab lab = named.connect()) {
            report = new HandOver(lab, named.origin()).run(log.rows());
        }
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("handedOver", report.handedOver()).put("alreadyThere", report.alreadyThere());
            ArrayNode chains = root.putArray("chains");
            for (HandOverReport.Part part : report.chains()) {
                chains.addObject()
                        .put("label", part.label())
                        .put("chain", part.chain())
                        .put("sharedChain", part.sharedChain())
                        .put("handedOver", part.handedOver())
                        .put("alreadyThere", part.alreadyThere())
                        .put("sentence", part.sentence());
            }
            console.json(root);
        } else {
            console.line(report.sentence());
        }
        return ExitCodes.DONE;
    }
}

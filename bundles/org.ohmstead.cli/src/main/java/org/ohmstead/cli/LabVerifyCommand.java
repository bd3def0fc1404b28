// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.testlog.shared.LabProject;
import org.ohmstead.testlog.shared.LabVerifyReport;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks the shared log. */
@Command(
        name = "verify",
        description = {"${bundle:lab.verify.does}", "", "${bundle:lab.verify.more}", ""},
        footer = {"", "${bundle:lab.verify.exit}", "${bundle:lab.verify.example}"})
final class LabVerifyCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(names = "--expected-head", paramLabel = "HASH", descriptionKey = "lab.verify.expected-head")
    private List<String> expectedHeads = List.of();

    LabVerifyCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        List<String> heads = expectedHeads.stream()
                .map(head -> head.strip().toLowerCase(Locale.ROOT))
                .toList();
        for (String head : heads) {
            if (!head.matches("[0-9a-f]{64}")) {
                throw new InputException(Texts.of("labVerify.head", head));
            }
        }
        ProjectFolder folder = project.open();
        LabProject named = LabAccess.of(folder);
        LabVerifyReport report;
        long waiting;
        try (SharedLab lab = named.connect()) {
            report = lab.verify(heads);
            waiting = LabAccess.waiting(folder, named, lab);
        }
        if (json.wanted()) {
            console.json(document(report, waiting));
        } else {
            print(report, waiting);
        }
        return report.intact() ? ExitCodes.DONE : ExitCodes.BAD_INPUT;
    }

    private static ObjectNode document(LabVerifyReport report, long waiting) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("entriesChecked", report.entriesChecked()).put("waiting", waiting);
        ArrayNode chains = root.putArray("chains");
        for (LabVerifyReport.Part part : report.chains()) {
            chains.addObject()
                    .put("label", part.chain().info().label())
                    .put("bench", part.chain().origin().bench())
                    .put("entriesChecked", part.report().entriesChecked())
                    .put("headHash", part.report().headHash())
                    .put("faults", part.report().faults().size())
                    .put("clockWentBack", part.report().clockStepCount());
        }
        ArrayNode faults = root.putArray("faults");
        report.faults().forEach(fault -> faults.add(fault.sentence()));
        ClockWords.fill(root, report.clockStepCount(), report.clockSteps(VerifyReport.MOST_CLOCK_STEPS));
        return root;
    }

    private void print(LabVerifyReport report, long waiting) {
        console.line(Texts.of(
                "labVerify.checked",
                Texts.count("entries", report.entriesChecked()),
                Texts.count("chains", report.chains().size())));
        report.faults().forEach(fault -> console.message(fault.sentence()));
        if (report.intact()) {
            console.line(Texts.of("labVerify.whole"));
        } else {
            console.message(Texts.of("labVerify.changed"));
        }
        ClockWords.print(console, report.clockStepCount(), report.clockSteps(ClockWords.SHOWN), "labVerify.clockMore");
        if (waiting > 0) {
            console.line(Texts.count("labVerify.waiting", waiting));
        }
    }
}

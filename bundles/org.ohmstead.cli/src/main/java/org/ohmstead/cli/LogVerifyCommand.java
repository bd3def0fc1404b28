// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.VerifyReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks the log's chain of hashes. */
@Command(
        name = "verify",
        description = {
            "Check every entry of the log against its hash and the one before it.",
            "",
            "A results sheet prints the head hash of the log it was made from; with --expected-head a log that lost its last entries"
                    + " since then shows too.",
            ""
        },
        footer = {"", "Exit code 3 when something was changed.", "Example: ohmstead log verify kestrel.ohmstead"})
final class LogVerifyCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(
            names = "--expected-head",
            paramLabel = "HASH",
            description = "Hash that must be the last, or in the chain.")
    private String expectedHead;

    LogVerifyCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        VerifyReport report;
        try (TestLog log = project.open().readLog()) {
            report = log.verify(Optional.ofNullable(expectedHead));
        }
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("entriesChecked", report.entriesChecked());
            root.put("headHash", report.headHash());
            ArrayNode faults = root.putArray("faults");
            report.faults().forEach(fault -> faults.add(fault.sentence()));
            console.json(root);
        } else {
            console.line(report.entriesChecked() + " entries checked, head " + report.headHash());
            report.faults().forEach(fault -> console.message(fault.sentence()));
            if (report.faults().isEmpty()) {
                console.line("The log is whole: nothing was changed, removed or put in between.");
            } else {
                console.message(
                        "The log was changed after it was written. Restore it from a backup; results made from it"
                                + " cannot be relied on.");
            }
        }
        return report.faults().isEmpty() ? ExitCodes.DONE : ExitCodes.BAD_INPUT;
    }
}

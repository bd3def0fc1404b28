// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.CaptureCheck;
import org.ohmstead.exchange.CaptureCheck.State;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Checks the captures of a project. */
@Command(
        name = "captures",
        description = {"${bundle:log.captures.does}", ""},
        footer = {"", "${bundle:log.captures.exit}", "${bundle:log.captures.example}"})
final class LogCapturesCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    LogCapturesCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        CaptureCheck.Report report;
        try (TestLog log = folder.readLog()) {
            report = CaptureCheck.run(folder.folder(), log, new ConsoleExchange(console));
        }
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            for (State state : State.values()) {
                root.put(state.name().toLowerCase(Locale.ROOT), report.count(state));
            }
            ArrayNode findings = root.putArray("findings");
            for (CaptureCheck.Finding finding : report.findings()) {
                findings.addObject()
                        .put("sha256", finding.sha256())
                        .put("state", finding.state().name().toLowerCase(Locale.ROOT))
                        .put("entry", finding.entryId())
                        .put("sentence", finding.sentence());
            }
            console.json(root);
        } else {
            print(report);
        }
        return report.whole() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private void print(CaptureCheck.Report report) {
        for (CaptureCheck.Finding finding : report.findings()) {
            boolean bad = finding.state() == State.MISSING || finding.state() == State.CHANGED;
            if (bad) {
                console.message(finding.sentence());
            } else {
                console.line(finding.sentence());
            }
        }
        console.line(Texts.of(
                "captures.summary",
                report.count(State.PRESENT),
                report.count(State.MISSING),
                report.count(State.CHANGED),
                report.count(State.ARCHIVED),
                report.count(State.ELSEWHERE),
                report.count(State.UNNAMED)));
    }
}

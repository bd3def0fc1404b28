// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VerifyFault;
import org.ohmstead.testlog.VerifyReport;
import org.ohmstead.testlog.search.LogIndex;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Checks the log's chain of hashes. */
@Command(
        name = "verify",
        description = {
            "${bundle:log.verify.does}",
            "",
            "${bundle:log.verify.more}",
            "",
            "${bundle:log.verify.more2}",
            ""
        },
        footer = {"", "${bundle:log.verify.exit}", "${bundle:log.verify.example}"})
final class LogVerifyCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(names = "--expected-head", paramLabel = "HASH", descriptionKey = "log.verify.expected-head")
    private String expectedHead;

    LogVerifyCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        VerifyReport report;
        List<JoinedParts> chains;
        Path file;
        try (TestLog log = project.open().readLog()) {
            file = log.file();
            report = log.verify(Optional.ofNullable(expectedHead));
            chains = chains(log, report);
        }
        boolean witness = Files.isRegularFile(LogIndex.beside(file));
        if (json.wanted()) {
            console.json(document(report, chains, witness));
        } else {
            print(file, report, chains, witness);
        }
        return report.intact() ? ExitCodes.DONE : ExitCodes.BAD_INPUT;
    }

    /**
     * A chain with what the log says of its joining.
     *
     * @param info the chain
     * @param joins entries that joined it, in their order; none for the log's own
     */
    private record JoinedParts(ChainInfo info, List<LogEntry> joins) {}

    private static List<JoinedParts> chains(TestLog log, VerifyReport report) throws TestLogException {
        LogQuery joins = new LogQuery(
                Set.of(EntryKind.JOIN),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                true,
                false);
        try {
            List<LogEntry> entries = log.entries(joins);
            return log.chains().stream()
                    .map(info -> new JoinedParts(info, joins(entries, info)))
                    .toList();
        } catch (TestLogException unreadable) {
            if (report.intact()) {
                throw unreadable;
            }
            return List.of(); // what is damaged stands in the report
        }
    }

    private static List<LogEntry> joins(List<LogEntry> entries, ChainInfo info) {
        return entries.stream()
                .filter(entry -> entry.join()
                        .filter(note -> note.chain().equals(info.chain()))
                        .isPresent())
                .toList();
    }

    private static boolean cutOff(VerifyReport report) {
        return report.faults().stream().anyMatch(fault -> fault.kind() == VerifyFault.Kind.CUT_OFF);
    }

    private static ObjectNode document(VerifyReport report, List<JoinedParts> chains, boolean witness) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("entriesChecked", report.entriesChecked());
        root.put("headHash", report.headHash());
        ArrayNode faults = root.putArray("faults");
        report.faults().forEach(fault -> faults.add(fault.sentence()));
        report.faults().stream()
                .filter(fault -> fault.sequence() > 0)
                .findFirst()
                .ifPresent(fault -> root.putObject("firstBad")
                        .put("sequence", fault.sequence())
                        .put("id", fault.entryId())
                        .put("kind", fault.kind().name()));
        ArrayNode list = root.putArray("chains");
        chains.forEach(chain -> fill(list.addObject(), chain));
        ClockWords.fill(root, report.clockStepCount(), report.clockSteps());
        root.putObject("witness").put("there", witness).put("cutOff", cutOff(report));
        return root;
    }

    private static void fill(ObjectNode node, JoinedParts chain) {
        node.put("label", chain.info().label())
                .put("name", chain.info().name())
                .put("entries", chain.info().entries())
                .put("chain", chain.info().chain())
                .put("headHash", chain.info().headHash())
                .put("firstSequence", chain.info().firstSequence());
        ArrayNode joins = node.putArray("joins");
        for (LogEntry entry : chain.joins()) {
            JoinNote note = entry.join().orElseThrow();
            joins.addObject()
                    .put("id", entry.id())
                    .put("sequence", entry.sequence())
                    .put("recordedAt", entry.recordedAt().toString())
                    .put("firstSequence", note.afterSequence() + 1)
                    .put("lastSequence", note.lastSequence())
                    .put("headHash", note.headHash())
                    .put("who", note.who());
        }
    }

    private void print(Path file, VerifyReport report, List<JoinedParts> chains, boolean witness) {
        console.line(Texts.of("verify.checked", report.entriesChecked(), report.headHash()));
        chains.stream()
                .filter(chain -> !chain.info().label().isEmpty())
                .map(LogVerifyCommand::sentence)
                .forEach(console::line);
        report.faults().forEach(fault -> console.message(fault.sentence()));
        if (report.intact()) {
            console.line(Texts.of("verify.whole"));
            console.line(witness ? Texts.of("verify.witness") : Texts.of("verify.noWitness"));
        } else {
            console.message(Texts.of("verify.changed", file));
        }
        ClockWords.print(console, report.clockStepCount(), report.clockSteps(), "verify.clockMore");
    }

    private static String sentence(JoinedParts chain) {
        String joins = chain.joins().stream().map(LogVerifyCommand::join).collect(Collectors.joining(", "));
        return Texts.of(
                joins.isEmpty() ? "verify.chain" : "verify.chain.joins",
                chain.info().label(),
                chain.info().name(),
                Texts.count("entries", chain.info().entries()),
                chain.info().headHash(),
                joins);
    }

    private static String join(LogEntry entry) {
        String who = entry.join().orElseThrow().who();
        LocalDate day = LocalDate.ofInstant(entry.recordedAt(), ZoneOffset.UTC);
        return who.isBlank()
                ? Texts.of("verify.join", entry.id(), day)
                : Texts.of("verify.join.who", entry.id(), day, who);
    }
}

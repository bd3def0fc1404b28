// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.history.quality.TypedCheck;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Logs a value of a check standard that was read off an instrument. */
@Command(
        name = "check",
        description = {"${bundle:log.check.does}", ""},
        footer = {"", "${bundle:log.check.exit}", "${bundle:log.check.example}", "${bundle:log.check.note}"})
final class LogCheckCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "STANDARD", descriptionKey = "log.check.STANDARD")
    private String id;

    @Parameters(index = "2", paramLabel = "VALUE", descriptionKey = "log.check.VALUE")
    private String value;

    @Option(names = "--operator", paramLabel = "NAME", required = true, descriptionKey = "log.check.operator")
    private String operator;

    @Option(names = "--uncertainty", paramLabel = "U", descriptionKey = "log.check.uncertainty")
    private String uncertainty;

    LogCheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        CheckStandard standard = CheckStandards.find(folder.project(), id);
        if (operator.isBlank()) {
            throw new InputException(Texts.of("standards.operator"));
        }
        TypedCheck check = new TypedCheck(
                standard,
                quantity(value, standard.unit(), "VALUE"),
                uncertainty(standard),
                operator,
                Clock.systemUTC().instant());
        LogEntry entry;
        List<LogEntry> entries;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = LogTrust.openToAdd(folder.logFile(), console::message)) {
            entry = log.append(check.figures(folder.project(), folder.loaded().revisionSha256(), Ohmstead.version()));
            entries = log.entries(LogQuery.everything());
        }
        Optional<SharingState> sharedLog = HandingOver.all(folder, 1);
        ZoneId zone = ZoneId.systemDefault();
        QualityReview review =
                QualityReview.of(folder.project(), standard, entries, LocalDate.now(Clock.system(zone)), zone);
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("id", entry.id()).put("hash", entry.hash());
            QualityJson.fill(root.putObject("standard"), review);
            HandingOver.fill(root, sharedLog);
            console.json(root);
        } else {
            console.line(Texts.of("standards.logged", entry.id(), standard.name()));
            QualityText.findings(console, List.of(review));
            HandingOver.say(console, sharedLog);
        }
        return review.mayRun() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private OptionalDouble uncertainty(CheckStandard standard) throws InputException {
        if (uncertainty == null) {
            return OptionalDouble.empty();
        }
        double found = quantity(uncertainty, standard.unit(), "--uncertainty");
        if (found < 0) {
            throw new InputException(Texts.of("standards.uncertainty", uncertainty));
        }
        return OptionalDouble.of(found);
    }

    /** A unit that the program knows may be written with a prefix; any other is left away. */
    private static double quantity(String text, String symbol, String option) throws InputException {
        Optional<Unit> unit = Arrays.stream(Unit.values())
                .filter(each -> each.symbol().equals(symbol))
                .findFirst();
        String number = text.strip();
        if (unit.isEmpty() && number.endsWith(symbol)) {
            number = number.substring(0, number.length() - symbol.length()).strip();
        }
        return Quantities.any(number, unit.orElse(Unit.NONE), option);
    }
}
